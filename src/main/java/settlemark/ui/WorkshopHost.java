package settlemark.ui;

import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import settlemark.measure.Chunk;
import settlemark.profile.SerialLine;

/** What the profile workshop asks of the program. Called on the event thread; every answer comes from another one. */
public interface WorkshopHost {
    /** Chunks of a capture, or of a text file with a line of hexadecimal pairs a frame. */
    void frames(Path file, Consumer<List<Chunk>> done, Consumer<String> failed);

    /**
     * Listens to a serial port, without sending anything, until the next call of {@link #stop}.
     *
     * @param heard gets each chunk
     */
    void listen(String port, SerialLine line, Consumer<Chunk> heard, Consumer<String> failed);

    void stop();

    /** Writes a profile into a new file among the person's profiles. */
    void save(String id, String text, Consumer<Path> done, Consumer<String> failed);
}
