package settlemark.app;

import java.io.PrintWriter;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import settlemark.cli.Program;
import settlemark.link.SerialFarEnd;
import settlemark.measure.Chunk;
import settlemark.rig.DemoInstrument;
import settlemark.rig.DemoRig;
import settlemark.session.DemoHands;
import settlemark.session.LinkException;

/** {@code rig}: the simulated instruments on real serial devices and Bluetooth adapters, in real time. */
final class RigRun {
    private static final long PAUSE_MILLIS = 10;

    private final Program.Rig request;
    private final PrintWriter err;
    private final CountDownLatch stop = new CountDownLatch(1);
    private final DemoRig rig;
    private final Radio radio;
    private final List<RigRadio> radios = new ArrayList<>();

    RigRun(Program.Rig request, Radio radio, PrintWriter err) {
        this.radio = radio;
        this.request = request;
        this.err = err;
        this.rig = new DemoRig(new DemoRig.Settings(request.seed(), request.dropOuts()));
    }

    int run(PrintWriter out) throws LinkException, InterruptedException {
        Map<DemoInstrument, SerialFarEnd> ends = new LinkedHashMap<>();
        List<RigVoice> voices = new ArrayList<>();
        List<Thread> writers = new ArrayList<>();
        CountDownLatch ended = new CountDownLatch(1);
        Runtime.getRuntime()
                .addShutdownHook(new Thread(
                        () -> {
                            stop.countDown();
                            try {
                                ended.await(3, TimeUnit.SECONDS);
                            } catch (InterruptedException e) {
                                Thread.currentThread().interrupt();
                            }
                        },
                        "shutdown"));
        try {
            for (Program.Tty tty : request.ttys()) {
                if (tty.profile().isPresent()) {
                    RigVoice voice = RigVoice.open(
                            tty.instrument(), tty.path(), tty.profile().get(), rig::truth, RigRun::thread);
                    voices.add(voice);
                    writers.add(speaker(voice));
                    continue;
                }
                DemoInstrument instrument =
                        DemoInstrument.ofKey(tty.instrument()).orElseThrow();
                SerialFarEnd end = SerialFarEnd.open(tty.path(), RigRun::thread, Duration.ofSeconds(2));
                ends.put(instrument, end);
                writers.add(writer(instrument, end));
            }
            for (Program.OnAir onAir : request.onAir()) {
                RigRadio served = RigRadio.open(onAir, rig, radio);
                radios.add(served);
                out.println(served.words());
                out.flush();
            }
            rig.call(DemoHands.Call.LOW);
            // Hoses on the taps, so that there is something to read.
            rig.portsOpen(false);
            writers.forEach(Thread::start);
            long start = System.nanoTime();
            long limit =
                    request.seconds().isPresent() ? Math.round(request.seconds().getAsDouble() * 1e9) : Long.MAX_VALUE;
            long now = 0;
            while (now < limit && !stop.await(PAUSE_MILLIS, TimeUnit.MILLISECONDS)) {
                now = System.nanoTime() - start;
                rig.advanceTo(Math.min(now, limit));
                speak(Math.min(now, limit));
            }
        } finally {
            ends.values().forEach(SerialFarEnd::close);
            voices.forEach(RigVoice::close);
            radios.forEach(RigRadio::close);
        }
        ends.keySet()
                .forEach(i -> out.println("sent " + i.key() + " " + rig.sentFrames(i) + " frames, lost "
                        + rig.lostFrames(i) + " on the way"));
        voices.forEach(v -> out.println("spoke " + v.name() + " " + v.writes() + " times"));
        radios.forEach(r -> out.println(r.summary()));
        out.flush();
        ended.countDown();
        return Program.DONE;
    }

    private void speak(long nowNanos) {
        for (RigRadio served : radios) {
            String trouble = served.at(nowNanos, rig);
            if (!trouble.isEmpty()) {
                err.println("settlemark: " + trouble);
                err.flush();
            }
        }
    }

    private static Thread thread(Runnable work) {
        Thread thread = new Thread(work, "far-end");
        thread.setDaemon(true);
        return thread;
    }

    private Thread speaker(RigVoice voice) {
        return thread(() -> {
            try {
                voice.run();
            } catch (LinkException e) {
                broken(voice.name(), e);
            }
        });
    }

    private void broken(String name, LinkException e) {
        if (stop.getCount() > 0) {
            err.println("settlemark: " + name + ": " + e.getMessage());
            err.flush();
            stop.countDown();
        }
    }

    /** Nobody listening must not stop the furnace: each instrument has a writer and a queue of its own. */
    private Thread writer(DemoInstrument instrument, SerialFarEnd end) {
        BlockingQueue<Chunk> queue = new LinkedBlockingQueue<>();
        rig.connect(instrument, queue::add);
        return thread(() -> {
            try {
                while (true) {
                    end.write(queue.take().bytes());
                }
            } catch (LinkException e) {
                broken(instrument.key(), e);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        });
    }
}
