package settlemark.ui;

import java.awt.EventQueue;

/** Has the record made on another thread, and knows how far it has come. */
final class RecordMaking {
    private final DesktopHost host;
    private final Runnable changed;
    private RecordState state = RecordState.NONE;

    /** @param changed called on the event thread when it is written or has failed */
    RecordMaking(DesktopHost host, Runnable changed) {
        this.host = host;
        this.changed = changed;
    }

    void begin() {
        state = RecordState.MAKING;
        host.makeRecord(
                files -> EventQueue.invokeLater(() -> is(RecordState.written(files))),
                why -> EventQueue.invokeLater(() -> is(RecordState.failed(why))));
    }

    private void is(RecordState now) {
        state = now;
        changed.run();
    }

    RecordState state() {
        return state;
    }
}
