package settlemark.ui;

import java.awt.EventQueue;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import settlemark.job.JobPlan;
import settlemark.job.PlanStep;
import settlemark.job.RatingPlate;
import settlemark.job.StepKind;
import settlemark.session.DeviceList;
import settlemark.session.JobStart;
import settlemark.session.OpenJob;

/**
 * Turns what is found into pages, and what the person does into choices. Lives on the event thread and never waits. Longer
 * than most: the pages share the plate, the probes and the line to type.
 */
final class StartController {
    private static final int TOLD_LOOKS = 60;
    /** Between the end of a look and the next by itself. */
    private static final double REST_SECONDS = 4;
    /** Ages are said in whole seconds. */
    private static final int AGE_LOOKS = 10;

    /** Every key that does something here, those of the faces' own boxes among them. */
    static List<KeyList.Line> keys() {
        return List.of(
                new KeyList.Line(Words.say("Space"), Words.say("the large button")),
                new KeyList.Line(Words.say("Tab, Shift Tab"), Words.say("to the next box, to the one before")),
                new KeyList.Line(Words.say("Enter"), Words.say("open the box, choose in a list")),
                new KeyList.Line(Words.say("Up, Down"), Words.say("in a list, and between the rows")),
                new KeyList.Line(Words.say("1 to 3"), Words.say("the numbered choice")),
                new KeyList.Line("L", Deed.LOOK.words()),
                new KeyList.Line("O", Deed.PORT.words()),
                new KeyList.Line("P", Deed.PAIR.words()),
                new KeyList.Line(Words.say("Left, Right"), Words.say("column to the left, to the right")),
                new KeyList.Line(Words.say("Esc"), Words.say("leave the list, the question or the field")),
                new KeyList.Line("T", Deed.THEME.words()),
                new KeyList.Line("W", Deed.WORKSHOP.words()),
                new KeyList.Line("Z", Deed.SIZE.words()),
                new KeyList.Line(Deed.LANGUAGE.label(), Deed.LANGUAGE.words()),
                new KeyList.Line("F10", Deed.MENU.words()),
                new KeyList.Line(Deed.KEYS.label(), Deed.KEYS.words()),
                new KeyList.Line(Words.say("Ctrl W"), Deed.CLOSE.words()));
    }

    private final StartHost host;
    private final Look look;
    private final Runnable review;
    private final Runnable workshop;
    private final Runnable restyle;
    private final SetUp setUp;
    private final ProbePicks picks;
    private final PlateEntry entry = new PlateEntry();
    private StartPane pane;
    private ChoiceFace first;
    private PlateForm plate;
    private FoundFace found;
    private List<OpenJob> left = List.of();
    private StartPage page = StartPage.FIRST;
    private DeviceList seen = new DeviceList(List.of(), List.of());
    private long seenAtNanos = System.nanoTime();
    private boolean looked;
    private boolean connecting;
    private String told = "";
    private int toldLooks;
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
        pane = new StartPane(look, this::perform, this::open);
        first = new ChoiceFace(look, this::begin);
        plate = plateForm();
        found = foundFace();
        picks = new ProbePicks(host, setUp, () -> found, new Around());
        plate.plan(setUp.plan());
        pages();
        open(StartPage.FIRST);
        host.openJobs(OpenJobOffer.MOST, jobs -> EventQueue.invokeLater(() -> offer(jobs)));
    }

    private PlateForm plateForm() {
        return new PlateForm(look, entry, this::show, this::entered, this::choosePlan, host::lastPlate);
    }

    private FoundFace foundFace() {
        return new FoundFace(
                look, r -> picks().chooseProbe(r), d -> picks().chooseRole(d), () -> picks().chooseAmongAll());
    }

    private void pages() {
        found.pairing().whenLeft(this::show);
        pane.page(StartPage.FIRST, first);
        pane.page(StartPage.PLATE, plate);
        pane.page(StartPage.PROBES, found);
    }

    /** Offers to go on with jobs that were left. */
    void offer(List<OpenJob> jobs) {
        left = jobs;
        offer();
    }

    private void offer() {
        OpenJobOffer.of(left).on(first, this::goOn);
    }

    /**
     * Makes all that shows words anew; what was chosen, typed and found stays, and the page that is open.
     *
     * @param shown puts the new pane into the window
     */
    void speakAnew(Consumer<StartPane> shown) {
        StartPane before = pane;
        TakenOver kept = new TakenOver(before);
        boolean ruled = first.ruled();
        pane = new StartPane(look, this::perform, this::open);
        first = new ChoiceFace(look, this::begin);
        plate = plateForm();
        found = foundFace();
        plate.plan(setUp.plan());
        pages();
        offer();
        first.ruler(ruled);
        told = "";
        pane.open(page, setUp.plan(), plate.plate().isPresent());
        pane.keys(before.keysShown(), keys());
        show();
        shown.accept(pane);
        pane.inline().goOn(before.inline());
        kept.into(pane);
    }

    private void goOn(OpenJob job) {
        if (!connecting) {
            connecting = true;
            tell(Words.say("Connecting the probes of {0}", job.title()));
            host.goOn(job, why -> EventQueue.invokeLater(() -> failed(why)));
        }
    }

    StartPane pane() {
        return pane;
    }

    private ProbePicks picks() {
        return picks;
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
        if (page == StartPage.PROBES
                && !connecting
                && !picks.isPairing()
                && rested
                && !host.finder().isLooking()) {
            looked = true;
            host.finder().look();
        }
        if (toldLooks > 0 && --toldLooks == 0) {
            told = "";
            news = true;
        }
        if (news || looks % AGE_LOOKS == 0 && page == StartPage.PROBES) {
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
        if (newPage == StartPage.PROBES && plate.plate().isEmpty()) {
            tell(plate.problem());
            return;
        }
        page = newPage;
        told = "";
        pane.open(page, setUp.plan(), plate.plate().isPresent());
        show();
        EventQueue.invokeLater(this::focus);
    }

    private void focus() {
        switch (page) {
            case FIRST -> first.focus(0);
            case PLATE -> plate.focusFirst();
            case PROBES -> pane.requestFocusInWindow();
        }
    }

    /** Enter in a field. */
    private void entered() {
        if (plate.plate().isPresent()) {
            open(StartPage.PROBES);
        } else {
            tell(plate.problem());
            plate.focusFirst();
        }
    }

    private void show() {
        boolean simulated = page != StartPage.FIRST && setUp.simulated();
        String what = plate.title().isEmpty() ? "Settlemark" : plate.title();
        switch (page) {
            case FIRST ->
                pane.say(
                        Words.say("How would you like to begin?"),
                        Words.say("Everything is stored as it happens; nothing leaves this computer."),
                        told,
                        simulated,
                        "");
            case PLATE -> {
                plate.lookForLast();
                String doubts = told.isEmpty() ? plate.doubts() : "";
                String words = Words.say("Copy every number from the rating plate");
                say(StepKind.PLATE, words, doubts.isEmpty() ? told : doubts, simulated, what);
            }
            case PROBES -> {
                found.show(setUp, plate.units(), sinceSeconds());
                say(StepKind.PROBES, Words.say("Give each channel its probe"), told, simulated, what);
            }
        }
        buttons();
    }

    private void say(StepKind kind, String words, String beside, boolean simulated, String what) {
        String caution = setUp.plan().steps().stream()
                .filter(s -> s.kind() == kind)
                .map(PlanStep::caution)
                .map(Words::told)
                .findFirst()
                .orElse("");
        pane.say(words, caution, beside, simulated, what);
    }

    private void buttons() {
        boolean asking =
                page == StartPage.PROBES ? found.isAsking() : plate.pick().isVisible();
        Choice primary = StartChoices.primary(page, plate.problem(), setUp, connecting);
        pane.buttons()
                .show(
                        asking
                                ? Choice.no(Deed.PRIMARY, primary.title(), Words.say("choose or answer first, or Esc"))
                                : primary,
                        List.of(),
                        StartChoices.others(page, setUp, picks.isPairing()));
        pane.buttons().primary().setVisible(page != StartPage.FIRST);
    }

    /** Does what a key or a button asks for. */
    void perform(Deed deed) {
        if (deed == Deed.NOW) {
            leave();
        } else if (deed == Deed.CLOSE) {
            host.close();
        } else if (deed == Deed.KEYS) {
            pane.keys(!pane.keysShown(), keys());
        } else if (deed == Deed.LANGUAGE && !found.pairing().isVisible() && !picks.isPairing()) {
            found.pick().leave();
            plate.pick().leave();
            language();
        } else if (!found.isAsking() && !plate.pick().isVisible()) {
            act(deed);
        }
    }

    private void act(Deed deed) {
        told = "";
        boolean probes = page == StartPage.PROBES && !connecting;
        switch (deed) {
            case PRIMARY -> primary();
            case THEME -> theme();
            case SIZE -> size();
            case LANGUAGE -> tell(Words.say("choose or answer first, or Esc"));
            case WORKSHOP -> workshop.run();
            case LEFT -> neighbour(-1);
            case RIGHT -> neighbour(1);
            case LOOK -> lookAgain(probes);
            case PORT -> picks.namePort(probes);
            case PAIR -> picks.pair(probes);
            case SCREW_UP -> move(-1);
            case SCREW_DOWN -> move(1);
            case TICK_1 -> number(0);
            case TICK_2 -> number(1);
            case TICK_3 -> number(2);
            default -> {
                // Keys of a job.
            }
        }
    }

    private void leave() {
        if (pane.inline().isVisible()) {
            first.ruler(false);
            pane.inline().leave();
            pane.requestFocusInWindow();
        } else if (pane.keysShown()) {
            pane.keys(false, keys());
        } else if (found.pick().isVisible()) {
            found.pick().leave();
        } else if (found.pairing().isVisible()) {
            found.pairing().answer("");
        } else if (plate.pick().isVisible()) {
            plate.pick().leave();
        } else {
            pane.requestFocusInWindow();
        }
    }

    private void neighbour(int by) {
        int at = page.ordinal() + by;
        if (at >= 0 && at < StartPage.values().length && !connecting) {
            open(StartPage.values()[at]);
        }
    }

    private void number(int index) {
        if (page == StartPage.FIRST) {
            begin(index);
        } else if (page == StartPage.PROBES) {
            picks.chooseProbe(setUp.roles().get(index));
        }
    }

    private void move(int by) {
        if (page == StartPage.FIRST) {
            first.focus(by);
        } else if (page == StartPage.PROBES) {
            int at = by > 0 ? -1 : 1;
            List<RoleRow> rows = found.rows();
            for (int i = 0; i < rows.size(); i++) {
                at = rows.get(i).box().isFocusOwner() ? i : at;
            }
            rows.get(Math.max(0, Math.min(rows.size() - 1, at + by))).box().requestFocusInWindow();
        }
    }

    private void primary() {
        Choice choice = StartChoices.primary(page, plate.problem(), setUp, connecting);
        if (page == StartPage.FIRST) {
            begin(0);
        } else if (!choice.available()) {
            List<String> missing = setUp.missing();
            tell(
                    page == StartPage.PROBES && !connecting && !missing.isEmpty()
                            ? Words.say("{0}. Choose a probe for it, or a plan that needs less", missing.get(0))
                            : choice.why());
            if (page == StartPage.PLATE) {
                plate.focusFirst();
            }
        } else if (page == StartPage.PLATE) {
            open(StartPage.PROBES);
        } else {
            start();
        }
    }

    private void start() {
        Optional<RatingPlate> copied = plate.plate();
        if (copied.isEmpty()) {
            open(StartPage.PLATE);
            return;
        }
        connecting = true;
        show();
        host.begin(
                new JobStart(
                        plate.title(),
                        setUp.plan(),
                        copied.get(),
                        plate.units().pressure(),
                        plate.units().temperature(),
                        setUp.choice().setups()),
                why -> EventQueue.invokeLater(() -> failed(why)));
    }

    /** What went wrong stays until something is done. */
    private void failed(String why) {
        connecting = false;
        tell(Words.told(why));
        toldLooks = Integer.MAX_VALUE;
    }

    private void choosePlan() {
        List<JobPlan> plans = host.plans();
        plate.choose(
                Words.say("Which plan?"),
                plans.stream().map(JobPlan::title).map(Words::told).toList(),
                i -> {
                    setUp.plan(plans.get(i));
                    plate.plan(plans.get(i));
                    pane.open(page, setUp.plan(), plate.plate().isPresent());
                });
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
        if (page != StartPage.FIRST) {
            tell(Words.say("The screen is measured on the first page"));
            return;
        }
        first.ruler(true);
        pane.inline().ask(() -> Words.say("How many millimetres long is the line, by a ruler?"), text -> {
            first.ruler(false);
            double measured = millimetres(text);
            if (measured > 0) {
                look.pixelsPerMm(first.rulerPx() / measured);
                restyle.run();
                tell(Words.say("Digits are 20 mm high from now on"));
            } else {
                tell(Words.say("The line is 5 to 500 mm long, got \"{0}\"", text));
            }
            pane.requestFocusInWindow();
        });
    }

    private void language() {
        Words.speak(Words.next());
        restyle.run();
    }

    private static double millimetres(String text) {
        boolean number = text.matches("\\d{1,3}(\\.\\d{1,2})?");
        double value = number ? Double.parseDouble(text) : 0;
        return value >= 5 && value <= 500 ? value : 0;
    }

    /** Puts back a plate that was not finished. */
    void restore(Map<String, String> texts) {
        plate.restore(texts);
    }

    /** What was typed of a plate. */
    Map<String, String> texts() {
        return plate.texts();
    }

    private void theme() {
        look.dark(!look.dark());
        restyle.run();
    }

    void restyled() {
        plate.restyle();
        found.restyle();
        pane.restyle();
        show();
    }

    /** The window goes: whatever is asked is a no. */
    void closed() {
        found.pairing().answer("");
    }

    private void tell(String words) {
        told = words;
        toldLooks = TOLD_LOOKS;
        show();
    }

    /** What the questions of the page of probes need of the rest. */
    private final class Around implements ProbePicks.Window {
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
            pane.requestFocusInWindow();
        }

        @Override
        public InlineRow inline() {
            return pane.inline();
        }

        @Override
        public double sinceSeconds() {
            return StartController.this.sinceSeconds();
        }
    }
}
