package settlemark.ui;

import java.awt.Container;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.CompletableFuture;
import java.util.function.BiConsumer;
import java.util.function.UnaryOperator;
import settlemark.job.JobState;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;
import settlemark.session.DeviceList;
import settlemark.session.DeviceView;
import settlemark.session.OpenJob;
import settlemark.session.OtherLimit;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeHost.FoundProbe;
import settlemark.session.ProbeView.Health;
import settlemark.session.ProbeView.HealthClass;
import settlemark.session.Reception;
import settlemark.session.Snapshot;

/** Every view of the window, made without a screen, laid out in a size and walked through. */
public final class WalkedScenes {
    private final int width;
    private final int height;
    private final Look look;
    private final BiConsumer<String, Container> seen;

    private WalkedScenes(int width, int height, Look look, BiConsumer<String, Container> seen) {
        this.width = width;
        this.height = height;
        this.look = look;
        this.seen = seen;
    }

    /** Walks through all of them in the language of now. */
    static void all(int width, int height, double textScale, BiConsumer<String, List<String>> seen) {
        WalkedScenes scenes = new WalkedScenes(
                width, height, Painting.look(textScale), (name, pane) -> seen.accept(name, WindowWalk.findings(pane)));
        DeskPaneTest.onEdt(() -> {
            Shots.all().forEach((name, room) -> scenes.job(name, room.get().snapshot()));
            scenes.other();
            return 0;
        });
    }

    private void other() {
        start();
        pairing();
        workshop();
        review();
        reviewed();
        bench();
    }

    /** Every view but those of a job, in a look. */
    static void others(int width, int height, Look look, BiConsumer<String, Container> seen) {
        new WalkedScenes(width, height, look, seen).other();
    }

    /** A moment of a job in a look, and what one of the keys makes of it. */
    static void moment(
            String name,
            Snapshot snapshot,
            Deed deed,
            int width,
            int height,
            Look look,
            BiConsumer<String, Container> seen) {
        WalkedScenes scenes = new WalkedScenes(width, height, look, (n, pane) -> {});
        Controller controller = scenes.faces(name, snapshot);
        if (deed != Deed.NOW) {
            scenes.perform(name, controller, deed);
        }
        seen.accept(name, controller.pane());
    }

    /** Walks through one moment of a job, in a language. */
    public static void moment(
            Language language, Snapshot snapshot, int width, int height, double textScale, List<String> findings) {
        Words.speak(language);
        try {
            DeskPaneTest.onEdt(() -> {
                new WalkedScenes(
                                width,
                                height,
                                Painting.look(textScale),
                                (name, pane) -> WindowWalk.findings(pane).forEach(f -> findings.add(name + ": " + f)))
                        .faces(language.code() + " " + snapshot.timeNanos() / 1_000_000_000L, snapshot);
                return 0;
            });
        } finally {
            Words.speak(Language.ENGLISH);
        }
    }

    private void walk(String name, Container pane) {
        pane.setSize(width, height);
        // The first round tells wrapped texts their width.
        Painting.layOut(pane);
        Painting.layOut(pane);
        WindowWalk.texts(pane);
        Painting.layOut(pane);
        seen.accept(name, pane);
    }

    private Controller controller(FakeDesk desk) {
        return new Controller(
                look, desk, Optional.of(new FakeHands()), Optional.empty(), new FakeHost(), () -> {}, () -> {});
    }

    private Controller faces(String name, Snapshot snapshot) {
        FakeDesk desk = new FakeDesk(snapshot);
        Controller controller = controller(desk);
        controller.pane().setSize(width, height);
        controller.show(snapshot, true);
        Painting.layOut(controller.pane());
        controller.show(snapshot, true);
        walk(name, controller.pane());
        return controller;
    }

    private void job(String name, Snapshot snapshot) {
        Controller controller = faces(name, snapshot);
        if (name.contains("visits")) {
            perform(name + " shown", controller, Deed.VISITS);
            controller.perform(Deed.NOW);
        }
        if (name.contains("armed")) {
            perform(name + " far", controller, Deed.FAR_VIEW);
            controller.perform(Deed.FAR_VIEW);
            perform(name + " skip", controller, Deed.SKIP);
            controller.perform(Deed.NOW);
            perform(name + " take now", controller, Deed.TAKE_NOW);
            controller.perform(Deed.NOW);
            perform(name + " note", controller, Deed.NOTE);
            controller.perform(Deed.NOW);
            perform(name + " keys", controller, Deed.KEYS);
            controller.perform(Deed.NOW);
            perform(name + " settings", controller, Deed.SETTINGS);
            controller.perform(Deed.NOW);
            perform(name + " back", controller, Deed.LEFT);
            perform(name + " first", controller, Deed.FIRST);
            perform(name + " last", controller, Deed.LAST);
        }
    }

    private void perform(String name, Controller controller, Deed deed) {
        controller.perform(deed);
        walk(name, controller.pane());
    }

    private void start() {
        FakeStart host = new FakeStart();
        host.finds(new DeviceList(
                List.of(
                        radio(1, "Gauge A", "demo-gauge-ble", Optional.empty()),
                        radio(
                                2,
                                "Air probes",
                                "demo-air-ble",
                                Optional.of(new Health(
                                        HealthClass.MAINTENANCE_REQUIRED,
                                        "its battery has 14 %: charge or change it"))),
                        port()),
                List.of()));
        StartController controller = new StartController(look, host, () -> {}, () -> {}, () -> {});
        controller.tick();
        walk("start first", controller.pane());
        host.open = List.of(left(7, false));
        walk("start with a job that was left", left(host).pane());
        host.open = List.of(left(9, true), left(8, false), left(7, true), left(6, false), left(5, false));
        walk("start with five jobs that were left", left(host).pane());
        controller.perform(Deed.KEYS);
        walk("start keys", controller.pane());
        controller.perform(Deed.KEYS);
        controller.perform(Deed.SIZE);
        walk("start size", controller.pane());
        controller.perform(Deed.NOW);
        controller.perform(Deed.RIGHT);
        walk("start plate", controller.pane());
        controller.perform(Deed.PRIMARY);
        walk("start plate, something missing", controller.pane());
        controller.restore(Map.ofEntries(
                Map.entry("place", "Quarry Rise 3"),
                Map.entry("appliance", "two stage furnace"),
                Map.entry("manifold.low", "1.7"),
                Map.entry("tolerance.low", "0.17"),
                Map.entry("manifold.high", "3.5"),
                Map.entry("tolerance.high", "0.35"),
                Map.entry("inlet.least", "4.5"),
                Map.entry("inlet.most", "10.5"),
                Map.entry("rise.least", "30"),
                Map.entry("rise.most", "60")));
        controller.perform(Deed.RIGHT);
        controller.tick();
        walk("start probes", controller.pane());
        controller.perform(Deed.PORT);
        walk("start port", controller.pane());
        controller.perform(Deed.NOW);
        controller.perform(Deed.TICK_1);
        walk("start choice of a probe", controller.pane());
    }

    /** Its offer comes in an event of its own. */
    private StartController left(FakeStart host) {
        StartController controller = new StartController(look, host, () -> {}, () -> {}, () -> {});
        controller.offer(host.open);
        return controller;
    }

    private static OpenJob left(int number, boolean simulated) {
        return new OpenJob(
                number,
                "Quarry Rise 3, two-stage furnace",
                Instant.parse("2026-03-14T09:31:00Z").atZone(ZoneOffset.UTC),
                "Supply at lock-up",
                3,
                10,
                simulated);
    }

    private void pairing() {
        for (boolean typed : new boolean[] {false, true}) {
            PairingPanel panel = new PairingPanel(look);
            CompletableFuture<String> answer = new CompletableFuture<>();
            String question = typed
                    ? Words.say("Type the number that {0} shows", "Air probes")
                    : Words.say(
                            "{0} has neither keys nor display, so nobody can check that it is the one that you mean. Pair with it?",
                            "Air probes");
            panel.open(question, typed ? "" : "004711", typed, answer);
            walk(typed ? "pairing, typed" : "pairing", panel);
            panel.answer("");
        }
    }

    /** A session with a job that was run through again: folded, with a step open, with another rule, in the list. */
    private void reviewed() {
        Snapshot snapshot = Objects.requireNonNull(Shots.all().get("08-left-high-armed"))
                .get()
                .snapshot();
        for (String step : List.of("", "left-low")) {
            for (boolean asked : new boolean[] {false, true}) {
                ReviewPane pane = new ReviewPane(look, new NothingHeard());
                pane.setSize(width, height);
                ReviewScene scene = StoredScenes.scene(snapshot, step, asked);
                pane.say(true, Words.say("Review: {0}", scene.session().header().title()), "");
                pane.sessions().show(StoredScenes.lines(), Words.say("{0} of {1} sessions", 3, 3));
                pane.buttons()
                        .show(
                                ReviewChoices.primary(true, false, 10, pane.getWidth() < look.px(1480)),
                                List.of(),
                                ReviewChoices.others(true, false, asked, pane.narrow()));
                pane.show(scene);
                Painting.layOut(pane);
                pane.show(scene);
                walk("review " + (step.isEmpty() ? "whole" : step) + (asked ? ", another rule" : ""), pane);
                if (asked && !step.isEmpty()) {
                    limits(pane, snapshot.job().orElseThrow());
                }
                if (asked && step.isEmpty()) {
                    pane.list(true);
                    walk("review with its list", pane);
                }
            }
        }
    }

    /** Other limits typed, one of them wrong, then what is asked with what came of them. */
    private void limits(ReviewPane pane, JobState job) {
        OtherLimit kept = OtherLimit.of("left-low.manifold=1.9..2.1 [in_i'H2O]");
        LimitsTyped typed = new LimitsTyped(job, job, UnaryOperator.identity(), List.of(kept));
        pane.limits(typed, "left-low", others -> {});
        walk("review, other limits", pane);
        pane.limits().leave();
        pane.ask(
                Words.say("What is your word on the sealed record?"),
                List.of(
                        new PickList.Option(Words.say("Accept it"), Words.say("signed, with what is said above")),
                        new PickList.Option(
                                Words.say("Hold it against other limits first"),
                                Words.say("L; they are signed with your word"))),
                Words.say("It is judged again under {0}", kept.text()) + "\n" + Words.say("1 verdict becomes another"),
                i -> {});
        walk("review, the word on it", pane);
        pane.pick().leave();
    }

    private void bench() {
        for (int probes : new int[] {2, 8}) {
            BenchController controller = BenchScenes.controller(look, probes);
            controller.pane().setSize(width, height);
            Painting.layOut(controller.pane());
            controller.perform(Deed.ROW_DOWN);
            walk("bench of " + 8 * probes, controller.pane());
        }
        BenchController controller = BenchScenes.controller(look, 8);
        controller.perform(Deed.KEYS);
        walk("bench keys", controller.pane());
    }

    private static DeviceView radio(int number, String name, String profile, Optional<Health> health) {
        Profile fitting = ProfileLibrary.get(profile);
        String address = "C0:FF:EE:00:00:0" + number;
        Reception reception = new Reception(OptionalInt.of(-60), 0.5, false, false, 81, Map.of(), Map.of());
        return new DeviceView(
                new FoundProbe(
                        new ProbeAddress(ProbeAddress.BLE, address),
                        name,
                        Optional.empty(),
                        address,
                        Optional.of(reception)),
                List.of(fitting),
                Optional.empty(),
                new DeviceView.Battery(81, false),
                health);
    }

    private static DeviceView port() {
        return new DeviceView(
                new FoundProbe(new ProbeAddress(ProbeAddress.SERIAL, "/dev/ttyUSB1"), "Port ttyUSB1"),
                List.of(),
                Optional.empty(),
                DeviceView.Battery.UNKNOWN,
                Optional.empty());
    }

    private void workshop() {
        WorkshopController controller = new WorkshopController(look, new FakeWorkshop(), () -> {}, () -> {}, () -> {});
        walk("workshop empty", controller.pane());
        controller.perform(Deed.LISTEN);
        walk("workshop asks", controller.pane());
        controller.perform(Deed.NOW);
        controller.frames(FakeWorkshop.made());
        walk("workshop frames", controller.pane());
        controller.perform(Deed.KEYS);
        walk("workshop keys", controller.pane());
    }

    private void review() {
        ReviewController controller = new ReviewController(look, new FakeReview(), () -> {}, () -> {}, () -> {});
        walk("review empty", controller.pane());
        controller.perform(Deed.KEYS);
        walk("review keys", controller.pane());
    }
}
