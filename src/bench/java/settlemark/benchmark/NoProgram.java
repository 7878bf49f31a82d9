package settlemark.benchmark;

import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import settlemark.job.Act;
import settlemark.session.RecordForm;
import settlemark.ui.DesktopHost;

/** Nothing around the window. */
final class NoProgram implements DesktopHost {
    @Override
    public void makeRecord(Consumer<List<Path>> done, Consumer<String> failed) {
        failed.accept("this is a benchmark");
    }

    @Override
    public void recordForm(Consumer<RecordForm> now) {
        now.accept(RecordForm.DEFAULT);
    }

    @Override
    public void keepRecordForm(RecordForm form, Consumer<String> failed) {
        failed.accept("this is a benchmark");
    }

    @Override
    public void instrument(String probe, String serial, Consumer<Act> found, Consumer<String> failed) {
        failed.accept("this is a benchmark");
    }

    @Override
    public void close() {
        // It ends by itself.
    }
}
