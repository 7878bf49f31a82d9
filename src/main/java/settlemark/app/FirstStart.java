package settlemark.app;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import settlemark.cli.Program;
import settlemark.job.JobPlan;
import settlemark.job.RatingPlate;
import settlemark.link.BleHost;
import settlemark.profile.Profile;
import settlemark.session.DeviceFinder;
import settlemark.session.JobStart;
import settlemark.session.LinkException;
import settlemark.session.OpenJob;
import settlemark.session.PairingPerson;
import settlemark.session.ProbeAddress;
import settlemark.session.StoreException;
import settlemark.store.SqliteStore;
import settlemark.ui.DesktopStart;
import settlemark.ui.ReviewHost;
import settlemark.ui.StartHost;
import settlemark.ui.WorkshopHost;

/**
 * The window before there is a session. What can wait is done on threads of its own; what was decided, the program's own
 * thread carries out.
 */
final class FirstStart implements StartHost {
    private final Program.Desk request;
    private final DeviceWatch watch;
    private final PrintWriter err;
    private final List<JobPlan> plans;
    private final BlockingQueue<Decision> decisions = new LinkedBlockingQueue<>();
    private final AtomicBoolean connecting = new AtomicBoolean();

    /**
     * @param job that has its probes, null for the demo and for nothing
     * @param rigJob number of a job on the rig that is gone on with, -1 for none
     */
    private record Decision(boolean demo, @Nullable DesktopJob job, long rigJob) {
        Decision(boolean demo, @Nullable DesktopJob job) {
            this(demo, job, -1);
        }
    }

    FirstStart(Program.Desk request, Hosts hosts, PrintWriter err) {
        this.request = request;
        this.err = err;
        this.plans = OwnPlans.withShipped(OwnPlans.folder(Workspaces.file(request.workspace())), err);
        this.watch = new DeviceWatch(hosts, new DeviceSearch(hosts, request.workspace(), request.profiles()));
    }

    /** What the person does in the window decides what runs in it. */
    interface Demo {
        int run(DesktopStart start) throws StoreException, LinkException, InterruptedException;
    }

    int run(DesktopStart start, Demo demo, PrintWriter out) throws StoreException, LinkException, InterruptedException {
        start.choose(this);
        Decision decision = decisions.take();
        if (decision.demo()) {
            return demo.run(start);
        }
        if (decision.rigJob() >= 0) {
            try (SqliteStore store = Workspaces.existing(request.workspace())) {
                return DesktopDemo.resume(decision.rigJob(), store, request.folder(), err)
                        .run(start);
            }
        }
        DesktopJob job = decision.job();
        if (job == null) {
            return Program.DONE;
        }
        try (job) {
            return job.run(start, request.folder(), out);
        }
    }

    @Override
    public ReviewHost review() {
        return new ReviewRun(ReviewRun.places(request.workspace()), request.folder(), err);
    }

    @Override
    public WorkshopHost workshop() {
        Path folder = Workspaces.file(request.workspace()).toAbsolutePath().resolveSibling("profiles");
        return new WorkshopRun(watch.hosts(), folder);
    }

    @Override
    public DeviceFinder finder() {
        return watch;
    }

    @Override
    public List<Profile> profiles() {
        return request.profiles();
    }

    @Override
    public List<JobPlan> plans() {
        return plans;
    }

    @Override
    public void demo() {
        decisions.add(new Decision(true, null));
    }

    @Override
    public void begin(JobStart start, Consumer<String> failed) {
        if (connecting.compareAndSet(false, true)) {
            work(() -> connect(
                    () -> DesktopJob.open(start, watch.hosts(), Workspaces.person(request.workspace()), err), failed));
        }
    }

    @FunctionalInterface
    private interface Opening {
        DesktopJob job() throws LinkException, StoreException;
    }

    private void connect(Opening opening, Consumer<String> failed) {
        try {
            decisions.add(new Decision(false, opening.job()));
        } catch (LinkException | StoreException e) {
            connecting.set(false);
            failed.accept(String.valueOf(e.getMessage()));
        } catch (RuntimeException e) {
            connecting.set(false);
            e.printStackTrace(err);
            failed.accept("a fault of the program: " + e);
        }
    }

    @Override
    public void openJobs(int most, Consumer<List<OpenJob>> found) {
        looked("jobs that were left", store -> found.accept(OpenJobs.of(store, most)));
    }

    @Override
    public void goOn(OpenJob open, Consumer<String> failed) {
        if (open.simulated()) {
            decisions.add(new Decision(false, null, open.number()));
        } else if (connecting.compareAndSet(false, true)) {
            work(() -> connect(
                    () -> DesktopJob.resume(
                            open.number(), watch.hosts(), Workspaces.existing(request.workspace()), err),
                    failed));
        }
    }

    @Override
    public void lastPlate(String title, JobPlan plan, Consumer<RatingPlate> found) {
        looked("a former plate", store -> Visits.lastPlate(store, title, plan).ifPresent(found));
    }

    @FunctionalInterface
    private interface Looking {
        void in(SqliteStore store) throws StoreException;
    }

    /** Nothing is told where there is no workspace yet; what cannot be read is told beside the window. */
    private void looked(String what, Looking looking) {
        if (Files.exists(Workspaces.file(request.workspace()))) {
            work(() -> {
                try (SqliteStore store = Workspaces.reading(request.workspace())) {
                    looking.in(store);
                } catch (StoreException | RuntimeException e) {
                    err.println("settlemark: " + what + " cannot be looked for: " + e.getMessage());
                }
            });
        }
    }

    @Override
    public void pair(ProbeAddress address, PairingPerson person, Consumer<String> done) {
        work(() -> {
            try {
                if (watch.hosts().of(address) instanceof BleHost host) {
                    host.pair(address.device(), person);
                    done.accept("paired with " + address.words());
                } else {
                    done.accept(address.words() + " is on a wire: there is nothing to pair");
                }
            } catch (LinkException e) {
                done.accept(String.valueOf(e.getMessage()));
            }
        });
    }

    private static void work(Runnable work) {
        Thread thread = new Thread(work, "work");
        thread.setDaemon(true);
        thread.start();
    }

    @Override
    public void close() {
        decisions.add(new Decision(false, null));
    }
}
