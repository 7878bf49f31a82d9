package settlemark.ui;

import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import settlemark.job.Act;
import settlemark.session.RecordForm;

/** What the window asks of the program around it. Called on the event thread; every answer may come from any thread. */
public interface DesktopHost {
    /**
     * Writes the record of the session, on another thread, after every act sent so far has been taken in.
     *
     * @param done gets the files, the one for people first
     * @param failed gets what went wrong and the remedy
     */
    void makeRecord(Consumer<List<Path>> done, Consumer<String> failed);

    /** In which form records are made; {@code now} hears it. */
    void recordForm(Consumer<RecordForm> now);

    /** Makes records in this form from now on. */
    void keepRecordForm(RecordForm form, Consumer<String> failed);

    /**
     * Looks for an instrument of the workspace by its serial number.
     *
     * @param probe the probe that it is, by its name in the session
     * @param found gets what to say in the job
     * @param failed gets why there is none and the remedy
     */
    void instrument(String probe, String serial, Consumer<Act> found, Consumer<String> failed);

    /** Where sounds go. */
    default Tones tones() {
        return Tones.NONE;
    }

    /** The person closed the window: end the session and the program. */
    void close();
}
