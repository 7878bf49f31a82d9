package settlemark.ui;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import settlemark.job.JobPlan;
import settlemark.job.PlanStep;
import settlemark.job.RatingPlate;
import settlemark.job.StepKind;
import settlemark.session.OpenJob;

/** The pages before a job and the pane that they lie in, in one language: what each of them says, and where its focus is. */
final class StartPages {
    /** Beside the fields of a plate, the plan that was chosen for it. */
    private static final String PLAN = "plan";

    private final SetUp setUp;
    private final StartPane pane;
    private final ChoiceFace first;
    private final PlateForm plate;
    private final FoundFace found;
    private StartPage page = StartPage.FIRST;

    /** What the person does on the pages. */
    interface Heard {
        void perform(Deed deed);

        void open(StartPage page);

        /** @param choice of the first page, from 0 */
        void begin(int choice);

        /** Enter in a field of the plate. */
        void entered();

        void choosePlan();

        /** Something was typed or answered. */
        void show();

        ProbePicks picks();
    }

    /** @param visits knows the plates of former jobs */
    StartPages(Look look, SetUp setUp, PlateEntry entry, LastPlate.Host visits, Heard heard) {
        this.setUp = setUp;
        pane = new StartPane(look, heard::perform, heard::open);
        first = new ChoiceFace(look, heard::begin);
        plate = new PlateForm(look, entry, heard::show, heard::entered, heard::choosePlan, visits);
        found = new FoundFace(
                look,
                r -> heard.picks().chooseProbe(r),
                d -> heard.picks().chooseRole(d),
                () -> heard.picks().chooseAmongAll());
        found.pairing().whenLeft(heard::show);
        pane.page(StartPage.FIRST, first);
        pane.page(StartPage.PLATE, plate);
        pane.page(StartPage.PROBES, found);
        plate.plan(setUp.plan());
    }

    StartPane pane() {
        return pane;
    }

    PlateForm plate() {
        return plate;
    }

    FoundFace found() {
        return found;
    }

    ChoiceFace first() {
        return first;
    }

    StartPage page() {
        return page;
    }

    boolean is(StartPage one) {
        return page == one;
    }

    void open(StartPage newPage) {
        page = newPage;
        pane.open(page, setUp.plan(), plate.plate().isPresent());
    }

    /** Follows another plan. */
    void plan(JobPlan plan) {
        setUp.plan(plan);
        plate.plan(plan);
        open(page);
    }

    /** What was typed of a plate, and the key of its plan where that is not the first of all. */
    Map<String, String> texts(List<JobPlan> plans) {
        Map<String, String> texts = new HashMap<>(plate.texts());
        if (!setUp.plan().equals(plans.get(0))) {
            texts.put(PLAN, setUp.plan().key());
        }
        return texts;
    }

    /** Puts back what {@link #texts} gave. */
    void restore(Map<String, String> texts, List<JobPlan> plans) {
        plans.stream().filter(p -> p.key().equals(texts.get(PLAN))).findFirst().ifPresent(this::plan);
        Map<String, String> typed = new HashMap<>(texts);
        typed.remove(PLAN);
        plate.restore(typed);
    }

    /** Offers to go on with jobs that were left. */
    void offer(List<OpenJob> jobs, Consumer<OpenJob> goOn) {
        OpenJobOffer.of(jobs).on(first, goOn);
    }

    /** The focus goes to where the page that is open begins. */
    void focus() {
        switch (page) {
            case FIRST -> first.focus(0);
            case PLATE -> plate.focusFirst();
            case PROBES -> pane.requestFocusInWindow();
        }
    }

    /** The focus goes to the box before or after the one that has it. */
    void move(int by) {
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

    /** Whether a list to choose from, or a question of a device, is open. */
    boolean isAsking() {
        return found.isAsking() || plate.pick().isVisible();
    }

    /** Leaves the lists to choose from. */
    void leaveLists() {
        found.pick().leave();
        plate.pick().leave();
    }

    /** Leaves what lies uppermost: a line to type, the list of keys, a list to choose from or a question of a device. */
    void leave() {
        if (pane.inline().isVisible()) {
            first.ruler(false);
            pane.inline().leave();
            pane.requestFocusInWindow();
        } else if (pane.keysShown()) {
            pane.keys(false, StartChoices.keys());
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

    /** What is open, asked and typed in the pages of another language, which these take the place of once they are shown. */
    void goOn(StartPages before) {
        first.ruler(before.first.ruled());
        open(before.page);
        pane.keys(before.pane.keysShown(), StartChoices.keys());
    }

    /**
     * Says what is to be done on the page that is open.
     *
     * @param told an answer to what was done, or empty
     * @param since seconds since the last look for devices
     */
    void say(String told, double since) {
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
                found.show(setUp, plate.units(), since);
                say(StepKind.PROBES, Words.say("Give each channel its probe"), told, simulated, what);
            }
        }
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

    /** What can be pressed now. */
    void buttons(boolean connecting, boolean pairing) {
        boolean asking =
                page == StartPage.PROBES ? found.isAsking() : plate.pick().isVisible();
        Choice primary = primary(connecting);
        Choice shown = asking
                ? Choice.no(Deed.PRIMARY, primary.title(), Words.say("choose or answer first, or Esc"))
                : primary;
        pane.buttons().show(shown, List.of(), StartChoices.others(page, setUp, pairing));
        pane.buttons().primary().setVisible(page != StartPage.FIRST);
    }

    Choice primary(boolean connecting) {
        return StartChoices.primary(page, plate.problem(), setUp, connecting);
    }

    Optional<RatingPlate> copied() {
        return plate.plate();
    }

    void restyle() {
        plate.restyle();
        found.restyle();
        pane.restyle();
    }
}
