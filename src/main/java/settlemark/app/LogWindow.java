package settlemark.app;

import java.io.PrintWriter;
import java.util.List;
import java.util.Optional;
import settlemark.cli.Program;
import settlemark.session.Bench;
import settlemark.session.BenchView;
import settlemark.session.LiveSession;
import settlemark.session.SessionHeader;
import settlemark.ui.DesktopOptions;
import settlemark.ui.DesktopStart;

/** The window of a log: the pipeline publishes what a bench of many channels shows, the window looks at the newest. */
final class LogWindow {
    private final DesktopStart start;
    private final Bench bench;
    private volatile BenchView view;

    private LogWindow(DesktopStart start, SessionHeader header) {
        this.start = start;
        this.bench = new Bench(header);
        this.view = bench.view(new LiveSession(header).snapshot(header.startedAt()));
    }

    /** Empty where there is no display; the log then goes on without. */
    static Optional<LogWindow> open(Program.Log.Shown shown, SessionHeader header, PrintWriter err) {
        DesktopOptions options = new DesktopOptions(shown.dark(), Optional.empty(), shown.widthPx(), shown.heightPx());
        return DemoRun.open(options, header.title(), err).map(s -> new LogWindow(s, header));
    }

    /** Before the pipeline starts. @param ended the person ended the log in the window */
    void watch(LiveSession live, Pipeline pipeline, Runnable ended) {
        live.watchedBy(bench);
        pipeline.watch(snapshot -> {
            view = bench.view(snapshot);
            return List.of();
        });
        start.bench(() -> view, ended);
    }

    void close() {
        start.close();
    }
}
