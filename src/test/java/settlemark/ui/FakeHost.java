package settlemark.ui;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import settlemark.job.Act;
import settlemark.job.InstrumentCard;
import settlemark.measure.Role;
import settlemark.session.RecordForm;

/** A program around the window that writes no record but says that it did, when told to. */
final class FakeHost implements DesktopHost {
    int recordsAsked;
    int closed;
    RecordForm form = RecordForm.DEFAULT;
    private Consumer<List<Path>> done = files -> {};
    private Consumer<String> failed = why -> {};

    @Override
    public void makeRecord(Consumer<List<Path>> newDone, Consumer<String> newFailed) {
        recordsAsked++;
        done = newDone;
        failed = newFailed;
    }

    @Override
    public void recordForm(Consumer<RecordForm> now) {
        now.accept(form);
    }

    @Override
    public void keepRecordForm(RecordForm newForm, Consumer<String> newFailed) {
        form = newForm;
    }

    @Override
    public void instrument(String probe, String serial, Consumer<Act> found, Consumer<String> notFound) {
        if (serial.equals("0042")) {
            InstrumentCard card = InstrumentCard.unknown("0042", "blue gauge", "");
            found.accept(new Act.Instrument(card, Map.of(Role.MANIFOLD, "p2"), false));
        } else {
            notFound.accept("the workspace has no instrument " + serial);
        }
    }

    void written(Path... files) {
        done.accept(List.of(files));
    }

    void failed(String why) {
        failed.accept(why);
    }

    @Override
    public void close() {
        closed++;
    }
}
