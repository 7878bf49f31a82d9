package settlemark.ui;

import java.awt.EventQueue;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import settlemark.job.JobPlan;
import settlemark.job.RatingPlate;
import settlemark.session.DeviceList;
import settlemark.session.JobStart;
import settlemark.session.OpenJob;

/** Turns what the person does before a job into choices. Lives on the event thread and never waits. */
final class StartController {
    private static final int TOLD_LOOKS = 60;
    /** Between the end of a look and the next by itself. */
    private static final double REST_SECONDS = 4;
    /** Ages are said in whole seconds. */
    private static final int AGE_LOOKS = 10;

    private final StartHost host;
    private final Look look;
    private final Runnable review;
    private final Runnable workshop;
    private final Runnable restyle;
    private final SetUp setUp;
    private final ProbePicks picks;
    private final PlateEntry entry = new PlateEntry();
    private StartPages pages;
    private List<OpenJob> left = List.of();
    private DeviceList seen = new DeviceList(List.of(), List.of());
    private long seenAtNanos = System.nanoTime();
    private boolean looked;
    private boolean connecting;
    private final Told told = new Told();
    private int looks;

    /**
     * @param review opens the stored sessions in this window
     * @param workshop opens the profile workshop in it
     */
    StartController(Look look, StartHost host, Runnable review, Runnable workshop, Runnable restyle) {
        this.look = look;
        this.host = host;
        this.review = review;
        this.workshop = workshop;
        this.restyle = restyle;
        List<JobPlan> plans = host.plans();
        setUp = new SetUp(plans.get(0));
        Hands hands = new Hands();
        pages = new StartPages(look, setUp, entry, host::lastPlate, hands);
        picks = new ProbePicks(host, setUp, () -> pages.found(), hands);
        open(StartPage.FIRST);
        host.openJobs(OpenJobOffer.MOST, jobs -> EventQueue.invokeLater(() -> offer(jobs)));
    }

    /** Offers to go on with jobs that were left. */
    void offer(List<OpenJob> jobs) {
        left = jobs;
        pages.offer(left, this::goOn);
    }

    /**
     * Makes all that shows words anew; what was chosen, typed and found stays, and the page that is open.
     *
     * @param shown puts the new pane into the window
     */
    void speakAnew(Consumer<StartPane> shown) {
        StartPages before = pages;
        TakenOver kept = new TakenOver(before.pane());
        pages = new StartPages(look, setUp, entry, host::lastPlate, new Hands());
        pages.offer(left, this::goOn);
        pages.goOn(before);
        told.forget();
        show();
        shown.accept(pages.pane());
        pages.pane().inline().goOn(before.pane().inline());
        kept.into(pages.pane());
    }

    private void goOn(OpenJob job) {
        if (!connecting) {
            connecting = true;
            tell(Words.say("Connecting the probes of {0}", job.title()));
            host.goOn(job, why -> EventQueue.invokeLater(() -> failed(why)));
        }
    }

    StartPane pane() {
        return pages.pane();
    }

    /** Looks at what was found since the last time. */
    void tick() {
        looks++;
        DeviceList now = host.finder().devices();
        boolean news = now != seen;
        if (news) {
            seen = now;
            seenAtNanos = System.nanoTime();
            setUp.found(now);
        }
        boolean rested = sinceSeconds() > REST_SECONDS || !looked;
        if (pages.is(StartPage.PROBES)
                && !connecting
                && !picks.isPairing()
                && rested
                && !host.finder().isLooking()) {
            looked = true;
            host.finder().look();
        }
        news |= told.look();
        if (news || looks % AGE_LOOKS == 0 && pages.is(StartPage.PROBES)) {
            show();
        }
    }

    private double sinceSeconds() {
        return (System.nanoTime() - seenAtNanos) / 1e9;
    }

    private void begin(int index) {
        if (index == 0) {
            tell(Words.say("Preparing the demo rig"));
            host.demo();
        } else if (index == 1) {
            open(StartPage.PLATE);
        } else {
            review.run();
        }
    }

    private void open(StartPage newPage) {
        if (newPage == StartPage.PROBES && pages.copied().isEmpty()) {
            tell(pages.plate().problem());
            return;
        }
        told.forget();
        pages.open(newPage);
        show();
        EventQueue.invokeLater(() -> pages.focus());
    }

    /** Enter in a field. */
    private void entered() {
        if (pages.copied().isPresent()) {
            open(StartPage.PROBES);
        } else {
            tell(pages.plate().problem());
            pages.plate().focusFirst();
        }
    }

    private void show() {
        pages.say(told.words(), sinceSeconds());
        pages.buttons(connecting, picks.isPairing());
    }

    /** Does what a key or a button asks for. */
    void perform(Deed deed) {
        if (deed == Deed.NOW) {
            pages.leave();
        } else if (deed == Deed.CLOSE) {
            host.close();
        } else if (deed == Deed.KEYS) {
            pages.pane().keys(!pages.pane().keysShown(), StartChoices.keys());
        } else if (deed == Deed.LANGUAGE && !pages.found().pairing().isVisible() && !picks.isPairing()) {
            pages.leaveLists();
            Words.speak(Words.next());
            restyle.run();
        } else if (!pages.isAsking()) {
            act(deed);
        }
    }

    private void act(Deed deed) {
        told.forget();
        boolean probes = pages.is(StartPage.PROBES) && !connecting;
        switch (deed) {
            case PRIMARY -> primary();
            case THEME -> {
                look.dark(!look.dark());
                restyle.run();
            }
            case SIZE -> size();
            case LANGUAGE -> tell(Words.say("choose or answer first, or Esc"));
            case WORKSHOP -> workshop.run();
            case LEFT -> neighbour(-1);
            case RIGHT -> neighbour(1);
            case LOOK -> lookAgain(probes);
            case PORT -> picks.namePort(probes);
            case PAIR -> picks.pair(probes);
            case SCREW_UP -> pages.move(-1);
            case SCREW_DOWN -> pages.move(1);
            case TICK_1 -> number(0);
            case TICK_2 -> number(1);
            case TICK_3 -> number(2);
            default -> {
                // Keys of a job.
            }
        }
    }

    private void neighbour(int by) {
        int at = pages.page().ordinal() + by;
        if (at >= 0 && at < StartPage.values().length && !connecting) {
            open(StartPage.values()[at]);
        }
    }

    private void number(int index) {
        if (pages.is(StartPage.FIRST)) {
            begin(index);
        } else if (pages.is(StartPage.PROBES)) {
            picks.chooseProbe(setUp.roles().get(index));
        }
    }

    private void primary() {
        Choice choice = pages.primary(connecting);
        if (pages.is(StartPage.FIRST)) {
            begin(0);
        } else if (!choice.available()) {
            List<String> missing = setUp.missing();
            tell(
                    pages.is(StartPage.PROBES) && !connecting && !missing.isEmpty()
                            ? Words.say("{0}. Choose a probe for it, or a plan that needs less", missing.get(0))
                            : choice.why());
            if (pages.is(StartPage.PLATE)) {
                pages.plate().focusFirst();
            }
        } else if (pages.is(StartPage.PLATE)) {
            open(StartPage.PROBES);
        } else {
            start();
        }
    }

    private void start() {
        Optional<RatingPlate> copied = pages.copied();
        if (copied.isEmpty()) {
            open(StartPage.PLATE);
            return;
        }
        connecting = true;
        show();
        host.begin(
                new JobStart(
                        pages.plate().title(),
                        setUp.plan(),
                        copied.get(),
                        pages.plate().units().pressure(),
                        pages.plate().units().temperature(),
                        setUp.choice().setups()),
                why -> EventQueue.invokeLater(() -> failed(why)));
    }

    /** What went wrong stays until something is done. */
    private void failed(String why) {
        connecting = false;
        told.stay(Words.told(why));
        show();
    }

    private void choosePlan() {
        List<JobPlan> plans = host.plans();
        pages.plate()
                .choose(
                        Words.say("Which plan?"),
                        plans.stream().map(JobPlan::title).map(Words::told).toList(),
                        i -> pages.plan(plans.get(i)));
    }

    private void lookAgain(boolean possible) {
        if (possible) {
            tell(
                    host.finder().isLooking()
                            ? Words.say("It is looking already")
                            : Words.say("Looking for some three seconds"));
            host.finder().look();
        }
    }

    /** A ruler says how long the line on the first page is. */
    private void size() {
        if (!pages.is(StartPage.FIRST)) {
            tell(Words.say("The screen is measured on the first page"));
            return;
        }
        ScreenRuler.ask(
                pages.first(),
                pages.pane().inline(),
                measured -> {
                    look.pixelsPerMm(measured);
                    restyle.run();
                    tell(Words.say("Digits are 20 mm high from now on"));
                    pages.pane().requestFocusInWindow();
                },
                typed -> {
                    tell(Words.say("The line is 5 to 500 mm long, got \"{0}\"", typed));
                    pages.pane().requestFocusInWindow();
                });
    }

    /** Puts back a plate that was not finished. */
    void restore(Map<String, String> texts) {
        pages.restore(texts, host.plans());
    }

    /** The page that is open, in a word. */
    String page() {
        return pages.page().word();
    }

    /** Opens a page by its word; what is not to be opened yet leaves the first one. */
    void openAgain(String word) {
        StartPage.of(word)
                .filter(p -> p != StartPage.PROBES || pages.copied().isPresent())
                .ifPresent(this::open);
    }

    /** What was typed of a plate, and the plan where it is not the first. */
    Map<String, String> texts() {
        return pages.texts(host.plans());
    }

    void restyled() {
        pages.restyle();
        show();
    }

    /** The window goes: whatever is asked is a no. */
    void closed() {
        pages.found().pairing().answer("");
    }

    private void tell(String words) {
        told.say(words, TOLD_LOOKS);
        show();
    }

    /** What is done on the pages, and what the questions of the page of probes need of the rest. */
    private final class Hands implements StartPages.Heard, ProbePicks.Window {
        @Override
        public void perform(Deed deed) {
            StartController.this.perform(deed);
        }

        @Override
        public void open(StartPage page) {
            StartController.this.open(page);
        }

        @Override
        public void begin(int choice) {
            StartController.this.begin(choice);
        }

        @Override
        public void entered() {
            StartController.this.entered();
        }

        @Override
        public void choosePlan() {
            StartController.this.choosePlan();
        }

        @Override
        public ProbePicks picks() {
            return picks;
        }

        @Override
        public void tell(String words) {
            StartController.this.tell(words);
        }

        @Override
        public void show() {
            StartController.this.show();
        }

        @Override
        public void focus() {
            pages.pane().requestFocusInWindow();
        }

        @Override
        public InlineRow inline() {
            return pages.pane().inline();
        }

        @Override
        public double sinceSeconds() {
            return StartController.this.sinceSeconds();
        }
    }
}
