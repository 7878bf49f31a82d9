package settlemark.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import settlemark.cli.Program;
import settlemark.cli.Program.JobPerson;
import settlemark.job.Act;
import settlemark.job.RatingPlate;
import settlemark.measure.Unit;
import settlemark.rig.DemoRig;
import settlemark.rig.RigHost;
import settlemark.session.LinkException;
import settlemark.session.LiveSession;
import settlemark.session.ProbeKeys;
import settlemark.session.ProbeSetup;
import settlemark.session.RawBytes;
import settlemark.session.SessionEvent;
import settlemark.session.SessionHeader;
import settlemark.session.StoreException;
import settlemark.session.TakenUp;
import settlemark.store.SqliteStore;

/** {@code job new} and {@code job resume}: a job that a person does by typing, on the rig or on real probes, to its seal. */
final class TypedJob {
    private final SqliteStore store;
    private final Optional<Path> folder;
    private final JobPerson person;
    private final PrintWriter out;
    private final PrintWriter err;

    TypedJob(SqliteStore store, Optional<Path> folder, JobPerson person, PrintWriter out, PrintWriter err) {
        this.store = store;
        this.folder = folder;
        this.person = person;
        this.out = out;
        this.err = err;
    }

    /** A new one. */
    int begin(Program.NewJob request, Hosts hosts)
            throws StoreException, LinkException, IOException, InterruptedException {
        Optional<String> wrong = request.bench().flatMap(DemoScene::wrongFault);
        Optional<RatingPlate> plate = wrong.isPresent() ? Optional.empty() : plate(request);
        List<String> misfits = plate.map(p -> request.plan().misfits(p)).orElse(List.of());
        wrong.ifPresent(w -> err.println("settlemark: " + w));
        misfits.forEach(m -> err.println("settlemark: " + m));
        if (plate.isEmpty() || !misfits.isEmpty()) {
            return Program.USAGE;
        }
        plate.get().doubts().forEach(d -> err.println("settlemark: the plate: " + d));
        return request.bench().isPresent()
                ? onRig(request, header(request, plate.get(), DemoScene.within(), Instant.now()))
                : onProbes(request, plate.get(), hosts);
    }

    private Optional<RatingPlate> plate(Program.NewJob request) throws StoreException {
        Optional<RatingPlate> found = request.plate().isPresent()
                ? request.plate()
                : Visits.lastPlate(store, request.title(), request.plan());
        if (found.isEmpty() && request.bench().isPresent()) {
            found = Optional.of(DemoScene.plate(request.plan()));
        }
        if (found.isEmpty()) {
            err.println("settlemark: no earlier job is called \"" + request.title()
                    + "\" whose plate this plan could use; copy the plate: settlemark job plate "
                    + request.plan().key() + " > plate.yaml, fill it in, and say --plate plate.yaml");
        }
        return found;
    }

    private SessionHeader header(Program.NewJob request, RatingPlate plate, List<ProbeSetup> probes, Instant wall)
            throws StoreException {
        Instant now = wall.truncatedTo(ChronoUnit.MILLIS);
        ZoneId zone = ZoneId.systemDefault();
        return new SessionHeader(
                        DemoScene.key(now, zone, "job"),
                        request.title(),
                        now,
                        zone,
                        Unit.INCH_OF_WATER,
                        Unit.FAHRENHEIT,
                        probes,
                        Optional.of(request.plan()),
                        Optional.of(plate),
                        Program.VERSION)
                .begunWith(DetectorSettings.of(store));
    }

    private int onRig(Program.NewJob request, SessionHeader header)
            throws StoreException, LinkException, IOException, InterruptedException {
        InstrumentLinks instruments = links(request.instruments());
        if (!DetectorSettings.fit(header, err) || !reads(header) || !instruments.fit(header)) {
            return Program.USAGE;
        }
        Optional<Act.Former> former = Visits.left(store, header.title());
        long number = store.begin(header);
        return onRig(
                begun(header, ProbeKeys.NONE, former, instruments),
                number,
                0,
                request.bench().orElseThrow());
    }

    private int onRig(LiveSession session, long number, long fromNanos, Program.Bench bench)
            throws StoreException, LinkException, IOException, InterruptedException {
        DemoRig rig = new DemoRig(new DemoRig.Settings(
                bench.seed(),
                true,
                DemoScene.faults(bench.faults()),
                DemoScene.appliance(session.header().plan().orElseThrow())));
        session.job().ifPresent(job -> RigAsLeft.stands(rig, job));
        RigFloor floor = new RigFloor(session, store, number, rig, new WireWiring(rig), fromNanos, nanos -> {});
        begun(number, session.header());
        boolean complete = person.work(floor);
        if (!complete) {
            floor.leave();
            InstrumentLinks.keepUse(store, session);
            return left(number);
        }
        floor.end();
        InstrumentLinks.keepUse(store, session);
        return hand(number, ProbeKeys.NONE);
    }

    /** A new session that knows what the last visit left. */
    private static LiveSession begun(
            SessionHeader header, ProbeKeys keys, Optional<Act.Former> former, InstrumentLinks instruments) {
        LiveSession session = new LiveSession(header, keys);
        former.ifPresent(f -> session.take(new SessionEvent.Done(0, f)));
        instruments.named(header).forEach(a -> session.take(new SessionEvent.Done(0, a)));
        return session;
    }

    /** Every channel that the plan reads has a probe, or is typed. */
    private boolean reads(SessionHeader header) {
        List<String> missing = MissingProbes.of(header);
        missing.forEach(m -> err.println("settlemark: " + m));
        return missing.isEmpty();
    }

    private int onProbes(Program.NewJob request, RatingPlate plate, Hosts hosts)
            throws StoreException, LinkException, IOException, InterruptedException {
        LaterTicker ticker = new LaterTicker();
        List<ProbeSetup> probes = ProbeBinding.setups(request.log(), hosts, store, err::println);
        SessionHeader header = header(request, plate, probes, ticker.wall());
        InstrumentLinks instruments = links(request.instruments());
        if (!DetectorSettings.fit(header, err) || !reads(header) || !instruments.fit(header)) {
            return Program.USAGE;
        }
        try (ProbeFloor floor = new ProbeFloor(header, hosts, ticker, err)) {
            ProbeKeys keys = request.log().keys();
            Optional<Act.Former> former = Visits.left(store, header.title());
            long number = store.begin(header, RawBytes.KEPT);
            return onProbes(floor, begun(header, keys, former, instruments), number, keys, instruments);
        }
    }

    private int onProbes(
            ProbeFloor floor, LiveSession session, long number, ProbeKeys keys, InstrumentLinks instruments)
            throws StoreException, LinkException, IOException, InterruptedException {
        floor.begin(session, store, number, instruments);
        begun(number, session.header());
        boolean complete = false;
        try {
            complete = person.work(floor);
        } finally {
            floor.leave(complete);
            InstrumentLinks.keepUse(store, session);
        }
        return complete ? hand(number, keys) : left(number);
    }

    /** One that was left or cut off. */
    int resume(long number, Program.ResumeJob request, Hosts hosts)
            throws StoreException, LinkException, IOException, InterruptedException {
        LaterTicker ticker = new LaterTicker();
        TakenUp taken = TakenUp.of(store, number, request.keys(), ticker.wall());
        SessionHeader header = taken.session().header();
        boolean rig =
                header.probes().stream().allMatch(p -> p.address().scheme().equals(RigHost.SCHEME));
        Optional<String> wrong = request.bench().flatMap(DemoScene::wrongFault);
        if (wrong.isPresent() || rig != request.bench().isPresent()) {
            err.println("settlemark: "
                    + wrong.orElse(
                            rig
                                    ? "the probes of session " + number + " are the rig's: say --rig"
                                    : "the probes of session " + number + " are real: leave --rig out"));
            return Program.USAGE;
        }
        InstrumentLinks instruments = links(request.instruments());
        if (!instruments.fit(header)) {
            return Program.USAGE;
        }
        instruments.named(header).forEach(a -> taken.session().take(new SessionEvent.Done(taken.fromNanos(), a)));
        store.reopen(number);
        if (rig) {
            return onRig(
                    taken.session(), number, taken.fromNanos(), request.bench().get());
        }
        ProbeBinding.requireSame(header.probes(), hosts);
        ticker.from(taken.fromNanos());
        try (ProbeFloor floor = new ProbeFloor(header, hosts, ticker, err)) {
            return onProbes(floor, taken.session(), number, request.keys(), instruments);
        }
    }

    private InstrumentLinks links(Map<String, String> named) throws StoreException {
        return new InstrumentLinks(store.instruments().all(), named, words -> {
            err.println("settlemark: " + words);
            err.flush();
        });
    }

    private void begun(long number, SessionHeader header) {
        err.println("session " + number + " " + header.key() + (header.simulated() ? " (SIMULATED)" : ""));
        err.flush();
    }

    private int left(long number) {
        err.println(
                "the job is not complete; everything so far is stored. Go on with: settlemark job resume " + number);
        err.flush();
        return Program.FAULT;
    }

    private int hand(long number, ProbeKeys keys) throws StoreException, IOException {
        return Handover.hand(
                store,
                number,
                RecordMaking.make(
                        store, number, keys, Sealing.fingerprint(store, number), Workspaces.records(store, folder)),
                out,
                err);
    }
}
