package settlemark.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import settlemark.job.JobPlan;
import settlemark.job.RatingPlate;
import settlemark.measure.Role;
import settlemark.profile.Profile;
import settlemark.session.CaptureReading;
import settlemark.session.CaptureSink;
import settlemark.session.DeviceList;
import settlemark.session.JobFloor;
import settlemark.session.LinkException;
import settlemark.session.PairingPerson;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeKeys;
import settlemark.session.RawBytes;
import settlemark.session.StoreException;
import settlemark.session.StoreTools;
import settlemark.settle.SettleChoices;

/**
 * What the commands ask the program to do. Each returns an exit code; data goes to {@code out}, messages to {@code
 * err}.
 */
public interface Program {
    String VERSION = "0.1.0";

    /** Exit codes that every command shares. */
    int DONE = 0;

    int FAULT = 1;
    int USAGE = 2;
    int CHECK_FAILED = 3;
    int NO_PROBE = 4;
    int DAMAGED = 5;

    /** @param quiet libraries keep their own stack traces to themselves; our message says what is wrong */
    void quiet(boolean quiet);

    /**
     * The language of the windows that are opened from now on.
     *
     * @param code such as {@code de}
     * @return false where there is no such language, and nothing has changed
     */
    boolean speaks(String code);

    int demo(Demo request, PrintWriter out, PrintWriter err)
            throws StoreException, LinkException, IOException, InterruptedException;

    /** The window, which begins with the choice of demo, probes or session. */
    int desktop(Desk request, PrintWriter out, PrintWriter err)
            throws StoreException, LinkException, InterruptedException;

    int log(Log request, PrintWriter out, PrintWriter err) throws StoreException, LinkException, InterruptedException;

    int rig(Rig request, PrintWriter out, PrintWriter err) throws LinkException, InterruptedException;

    /** What can be opened now, and what was used before. What cannot be looked for is a remark. */
    DeviceList devices(Look request);

    /**
     * Pairs with a Bluetooth device, asking the person.
     *
     * @throws LinkException where it did not come to a bond, with the reason
     */
    void pair(ProbeAddress address, PairingPerson person) throws LinkException;

    /** Removes what this computer knows of a Bluetooth device. */
    void forget(ProbeAddress address) throws LinkException;

    /** Writes what probes say into a new file, until the time is over or the person interrupts. */
    int capture(Capture request, PrintWriter out, PrintWriter err)
            throws LinkException, IOException, InterruptedException;

    /** Reads a capture to its end; what is wrong with it the sink hears. */
    CaptureReading readCapture(Path file, CaptureSink sink) throws IOException;

    /**
     * A whole job from its plan, done by a person who types; ends with the record and its seal.
     *
     * @param person does what the steps ask, until the job is complete or is left
     */
    int newJob(NewJob request, JobPerson person, PrintWriter out, PrintWriter err)
            throws StoreException, LinkException, IOException, InterruptedException;

    /** Takes a job up again that was left or cut off. */
    int resumeJob(ResumeJob request, JobPerson person, PrintWriter out, PrintWriter err)
            throws StoreException, LinkException, IOException, InterruptedException;

    /** Begins work beside everything else, which ends with the program at the latest. */
    void beside(String name, Runnable work);

    /** Somebody who does a job. */
    @FunctionalInterface
    interface JobPerson {
        /** Returns whether the job is complete; else it is left and can be taken up again. */
        boolean work(JobFloor floor) throws StoreException, LinkException, InterruptedException;
    }

    /**
     * The simulated furnace.
     *
     * @param seed of its instruments
     * @param faults what is wrong with it, by their keys
     */
    record Bench(long seed, List<String> faults) {
        public Bench {
            faults = List.copyOf(faults);
        }
    }

    /**
     * @param title of the place and the appliance; the last job of that title lends its plate
     * @param plan what is done
     * @param plate empty for that of the last visit
     * @param bench the rig in place of probes, empty for probes
     * @param log the probes, and where the session goes
     * @param folder for the record, empty for the one beside the workspace
     * @param instruments serial number of the instrument by the name of the probe, as far as the person says
     */
    record NewJob(
            String title,
            JobPlan plan,
            Optional<RatingPlate> plate,
            Optional<Bench> bench,
            Log log,
            Optional<Path> folder,
            Map<String, String> instruments) {}

    /**
     * @param session number or key, {@code latest} for the newest
     * @param bench the rig as it is now, empty where the session's probes are real
     * @param workspace empty for the person's own, or the demo's where the rig is named
     * @param folder for the record, empty for the one beside the workspace
     * @param keys of probes whose frames are protected
     * @param instruments serial number of the instrument by the name of the probe, as far as the person says it anew
     */
    record ResumeJob(
            String session,
            Optional<Bench> bench,
            Optional<Path> workspace,
            Optional<Path> folder,
            ProbeKeys keys,
            Map<String, String> instruments) {}

    /** What is asked about stored sessions. */
    StoredDesk stored();

    /** Keys, reviews, papers, and the way to another computer. */
    SessionDesk sessions();

    /** What measures, by serial number. */
    InstrumentDesk instruments();

    /** What is done to a workspace as a file. */
    StoreTools tools();

    /** Where the person's own workspace lies, whether or not there is one. */
    Path ownWorkspace();

    /** Wall clock. */
    Instant now();

    /**
     * @param headless no window even where there is a display
     * @param seed of the simulated instruments
     * @param workspace empty for the demo's own file
     * @param folder for the record, empty for the one beside the workspace
     * @param dark the window begins dark
     * @param widthPx 0 for as large as the screen
     * @param heightPx 0 for as large as the screen
     * @param speed times real time in the window
     * @param air by radio through two Bluetooth adapters, empty for instruments within the program; headless only
     * @param plan of the job, empty for the two-stage job
     * @param faults what is wrong with the furnace or its instruments, by their keys
     */
    record Demo(
            boolean headless,
            long seed,
            Optional<Path> workspace,
            Optional<Path> folder,
            boolean dark,
            int widthPx,
            int heightPx,
            int speed,
            Optional<Air> air,
            Optional<JobPlan> plan,
            List<String> faults) {
        public Demo {
            faults = List.copyOf(faults);
        }
    }

    /**
     * @param workspace empty for the person's own file
     * @param folder for the record, empty for the one beside the workspace
     * @param profiles that may fit a device, or be chosen for it
     * @param adapter Bluetooth adapter, empty for the first
     * @param dark the window begins dark
     * @param widthPx 0 for as large as the screen
     * @param heightPx 0 for as large as the screen
     */
    record Desk(
            Optional<Path> workspace,
            Optional<Path> folder,
            List<Profile> profiles,
            Optional<String> adapter,
            boolean dark,
            int widthPx,
            int heightPx) {
        public Desk {
            profiles = List.copyOf(profiles);
        }
    }

    /**
     * Two Bluetooth adapters, by name or address.
     *
     * @param serving where the instruments are
     * @param reading where they are read, empty for the first other one
     */
    record Air(String serving, Optional<String> reading) {}

    /**
     * @param probes what to stream
     * @param workspace empty for the person's own file
     * @param seconds empty until it is interrupted
     * @param title of the session
     * @param anotherDevice names of the probes that may be another device than the last time
     * @param rememberRoles whether a probe without roles has those that its device had the last time
     * @param keys of probes whose frames are protected
     * @param bytes whether the probes' bytes are kept
     * @param settings of settled detection, over the workspace's
     * @param shown the window that shows it, empty where none does
     */
    record Log(
            List<Probe> probes,
            Optional<Path> workspace,
            OptionalDouble seconds,
            String title,
            Set<String> anotherDevice,
            boolean rememberRoles,
            ProbeKeys keys,
            RawBytes bytes,
            SettleChoices settings,
            Optional<Shown> shown) {
        /** A window; widths and heights of 0 leave its size to the screen. */
        public record Shown(boolean dark, int widthPx, int heightPx) {}

        /** With nothing but its probes' own roles. */
        public Log(
                List<Probe> probes,
                Optional<Path> workspace,
                OptionalDouble seconds,
                String title,
                Set<String> anotherDevice) {
            this(
                    probes,
                    workspace,
                    seconds,
                    title,
                    anotherDevice,
                    true,
                    ProbeKeys.NONE,
                    RawBytes.KEPT,
                    SettleChoices.NONE,
                    Optional.empty());
        }
    }

    /**
     * @param profiles that may fit a device
     * @param workspace whose devices are remembered, empty for the person's own
     * @param adapter Bluetooth adapter, empty for the first
     */
    record Look(List<Profile> profiles, Optional<Path> workspace, Optional<String> adapter) {}

    /**
     * @param probes what to listen to; their roles do not matter
     * @param file a new one
     * @param seconds empty until it is interrupted
     */
    record Capture(List<Probe> probes, Path file, OptionalDouble seconds) {}

    /**
     * @param port as the person wrote it
     * @param roles channel name to role, as pairs
     */
    record Probe(String name, String port, Profile profile, List<RoleOf> roles) {
        public ProbeAddress address() {
            return ProbeAddress.written(port);
        }
    }

    record RoleOf(String channel, Role role) {}

    /**
     * @param ttys instrument and device that it speaks into
     * @param onAir instruments as Bluetooth devices
     * @param seconds empty until it is interrupted
     * @param seed of the instruments
     * @param dropOuts whether frames are lost now and then
     */
    record Rig(List<Tty> ttys, List<OnAir> onAir, OptionalDouble seconds, long seed, boolean dropOuts) {}

    /**
     * @param instrument {@code set} for both of the demo's in one device
     * @param adapter name or address of the Bluetooth adapter
     * @param profile of a device that is none of the demo's, empty for a demo instrument
     */
    record OnAir(String instrument, String adapter, Optional<Profile> profile) {}

    /** @param profile of a device that is none of the demo's, empty for a demo instrument */
    record Tty(String instrument, String path, Optional<Profile> profile) {}
}
