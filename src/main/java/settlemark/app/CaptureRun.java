package settlemark.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.jspecify.annotations.Nullable;
import settlemark.cli.Program;
import settlemark.link.CaptureWriter;
import settlemark.measure.Chunk;
import settlemark.session.CaptureHeader;
import settlemark.session.LinkChange;
import settlemark.session.LinkException;
import settlemark.session.LinkListener;
import settlemark.session.ProbeLink;
import settlemark.session.SessionEvent;

/** {@code capture}: what probes say into a file, by the thread that runs the command. */
final class CaptureRun {
    private static final int QUEUE = 10_000;
    private static final long WAIT_MILLIS = 100;
    private static final long FLUSH_NANOS = 500_000_000;
    private static final long HOOK_LIMIT_SECONDS = 5;

    private final Program.Capture request;
    private final Hosts hosts;
    private final PrintWriter err;
    private final SystemTicker ticker = new SystemTicker();
    private final BlockingQueue<SessionEvent> queue = new ArrayBlockingQueue<>(QUEUE);
    private final CountDownLatch ended = new CountDownLatch(1);
    private final long[] bytes;
    private volatile boolean stopped;

    CaptureRun(Program.Capture request, Hosts hosts, PrintWriter err) {
        this.request = request;
        this.hosts = hosts;
        this.err = err;
        this.bytes = new long[request.probes().size()];
    }

    int run(PrintWriter out) throws LinkException, IOException, InterruptedException {
        CaptureHeader header = header();
        List<ProbeLink> links = new ArrayList<>();
        Thread hook = new Thread(this::interrupted, "shutdown");
        try {
            // The links first: a port that cannot be opened must not leave an empty file behind.
            open(links);
            Runtime.getRuntime().addShutdownHook(hook);
            write(header, links);
            report(out);
        } finally {
            links.forEach(ProbeLink::close);
            ended.countDown();
            forget(hook);
        }
        return Program.DONE;
    }

    private void report(PrintWriter out) {
        for (int i = 0; i < bytes.length; i++) {
            out.println("captured " + request.probes().get(i).name() + " " + bytes[i] + " bytes");
        }
        out.flush();
    }

    private void write(CaptureHeader header, List<ProbeLink> links) throws IOException, InterruptedException {
        SleepGuard guard = SleepGuard.hold("capturing probes", err::println);
        try (CaptureWriter writer = CaptureWriter.create(request.file(), header, remarks())) {
            // From here on, for a probe by radio takes its time to be found.
            long start = ticker.nanos();
            long limit = request.seconds().isPresent()
                    ? start + Math.round(request.seconds().getAsDouble() * 1e9)
                    : Long.MAX_VALUE;
            long flushed = start;
            while (!stopped && ticker.nanos() < limit) {
                take(writer, queue.poll(WAIT_MILLIS, TimeUnit.MILLISECONDS));
                if (ticker.nanos() - flushed > FLUSH_NANOS) {
                    writer.flush();
                    flushed = ticker.nanos();
                }
            }
            links.forEach(ProbeLink::close);
            List<SessionEvent> left = new ArrayList<>();
            queue.drainTo(left);
            for (SessionEvent event : left) {
                take(writer, event);
            }
            writer.end(ticker.nanos());
        } finally {
            guard.close();
        }
    }

    private void take(CaptureWriter writer, @Nullable SessionEvent event) throws IOException {
        if (event == null) {
            return;
        }
        writer.write(event);
        if (event instanceof SessionEvent.Bytes arrived) {
            bytes[arrived.probe()] += arrived.chunk().bytes().length;
        }
    }

    private void open(List<ProbeLink> links) throws LinkException {
        for (int i = 0; i < request.probes().size(); i++) {
            Program.Probe probe = request.probes().get(i);
            links.add(
                    hosts.of(probe.address()).open(probe.address(), probe.profile(), ticker, new Ear(i, probe.name())));
        }
    }

    private CaptureHeader header() {
        return new CaptureHeader(
                Optional.of(ticker.wall().minusNanos(ticker.nanos()).atZone(ZoneId.systemDefault())),
                request.probes().stream()
                        .map(p -> new CaptureHeader.Probe(
                                p.name(),
                                p.profile().id(),
                                p.profile().digest(),
                                p.address().toString()))
                        .toList());
    }

    private List<String> remarks() {
        return request.probes().stream()
                .filter(p -> p.profile().simulated())
                .map(p -> "SIMULATED: " + p.name() + " is an invented device")
                .toList();
    }

    private void interrupted() {
        stopped = true;
        try {
            ended.await(HOOK_LIMIT_SECONDS, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static void forget(Thread hook) {
        try {
            Runtime.getRuntime().removeShutdownHook(hook);
        } catch (IllegalStateException e) {
            // The program is being shut down: the hook is running and about to end.
        }
    }

    /** Never waits: what the full queue does not take is marked as an overrun as soon as there is room. */
    private final class Ear implements LinkListener {
        private final int probe;
        private final String name;
        private final AtomicBoolean overrun = new AtomicBoolean();

        Ear(int probe, String name) {
            this.probe = probe;
            this.name = name;
        }

        @Override
        public void arrived(Chunk chunk) {
            if (overrun.get() && queue.offer(missing(chunk.timeNanos()))) {
                overrun.set(false);
            }
            if (overrun.get() || !queue.offer(new SessionEvent.Bytes(probe, chunk))) {
                overrun.set(true);
            }
        }

        private SessionEvent missing(long timeNanos) {
            return new SessionEvent.Link(
                    probe,
                    timeNanos,
                    LinkChange.OVERRUN,
                    "the file did not take the bytes fast enough; some are missing");
        }

        @Override
        public void changed(long timeNanos, LinkChange change, String words) {
            if (change != LinkChange.UP && change != LinkChange.ENDED) {
                err.println(name + ": " + words);
                err.flush();
            }
            if (!queue.offer(new SessionEvent.Link(probe, timeNanos, change, words))) {
                overrun.set(true);
            }
        }
    }
}
