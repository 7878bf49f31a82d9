package settlemark.ui;

import java.nio.file.Path;
import java.util.List;

/**
 * How far the making of the record has come.
 *
 * @param making while it is being written
 * @param files what was written, empty before
 * @param failure why it could not be written, empty otherwise
 */
record RecordState(boolean making, List<Path> files, String failure) {
    static final RecordState NONE = new RecordState(false, List.of(), "");
    static final RecordState MAKING = new RecordState(true, List.of(), "");

    RecordState {
        files = List.copyOf(files);
    }

    static RecordState written(List<Path> files) {
        return new RecordState(false, files, "");
    }

    static RecordState failed(String why) {
        return new RecordState(false, List.of(), why);
    }
}
