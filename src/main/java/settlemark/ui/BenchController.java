package settlemark.ui;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Supplier;
import settlemark.session.BenchView;
import settlemark.session.Snapshot;
import settlemark.session.SnapshotUnits;

/** Turns views of a bench into rows, and keys into the row that is chosen. Lives on the event thread and never waits. */
final class BenchController {
    private static final int TOLD_LOOKS = 200;

    private final Look look;
    private final Supplier<BenchView> bench;
    private final Runnable close;
    private final Runnable restyle;
    private BenchPane pane;
    private int selected;
    private int units = -1;
    private long revision = Long.MIN_VALUE;
    private final Looks looks = new Looks();
    private final Told told = new Told();

    /** @param close ends the log */
    BenchController(Look look, Supplier<BenchView> bench, Runnable close, Runnable restyle) {
        this.look = look;
        this.bench = bench;
        this.close = close;
        this.restyle = restyle;
        pane = new BenchPane(look, this::perform, this::select);
        show(true);
    }

    BenchPane pane() {
        return pane;
    }

    /** One look of {@link Looks}. */
    void tick() {
        long now = System.nanoTime();
        boolean news = bench.get().snapshot().revision() != revision;
        if (news) {
            looks.news();
        }
        news |= told.look();
        boolean digits = looks.digits(now);
        if (news || digits) {
            show(digits);
            if (digits) {
                looks.shown(now);
            }
        }
    }

    private List<BenchView.Row> rows(BenchView view) {
        if (units < 0) {
            return view.rows();
        }
        SnapshotUnits shown = Units.SHOWN.get(units);
        return view.rows().stream().map(shown::row).toList();
    }

    private void show(boolean digits) {
        BenchView view = bench.get();
        revision = view.snapshot().revision();
        Snapshot.Stored stored = view.snapshot().stored();
        String wrong = stored.failure().isEmpty() ? stored.warning() : stored.failure();
        String beside = !told.isEmpty() ? told.words() : wrong.isEmpty() ? stored(view) : Words.told(wrong);
        pane.show(view, rows(view), selected, digits, view.snapshot().header().title() + ".  " + beside);
        int pages = pane.rows().pages();
        List<Choice> others = new ArrayList<>();
        if (pages > 1) {
            others.add(Choice.of(
                    Deed.PAGE_NEXT, Words.say("Page {0} of {1}", pane.rows().page() + 1, pages)));
        }
        others.add(Choice.of(Deed.UNITS, Words.say("Units")));
        others.add(Choice.of(Deed.KEYS, Words.say("Keys")));
        pane.buttons()
                .show(
                        Choice.of(Deed.CLOSE, Words.say("End the log"), Words.say("what has come is stored")),
                        List.of(),
                        others);
    }

    private static String stored(BenchView view) {
        return Words.say(
                "{0} channels, {1} values stored",
                view.rows().size(), view.snapshot().stored().samples());
    }

    private void select(int index) {
        int count = bench.get().rows().size();
        selected = Math.max(0, Math.min(count - 1, index));
        pane.rows().reveal(selected);
        show(true);
    }

    void perform(Deed deed) {
        told.forget();
        switch (deed) {
            case ROW_UP -> select(selected - 1);
            case ROW_DOWN -> select(selected + 1);
            case LEFT -> select(selected - pane.rows().perColumn());
            case RIGHT -> select(selected + pane.rows().perColumn());
            case ROW_FIRST -> select(0);
            case ROW_LAST -> select(Integer.MAX_VALUE);
            case PAGE_NEXT -> select(pane.rows().firstOfPage(pane.rows().page() + 1));
            case PAGE_BEFORE -> select(pane.rows().firstOfPage(pane.rows().page() - 1));
            case UNITS -> units();
            case THEME -> {
                look.dark(!look.dark());
                restyle.run();
            }
            case LANGUAGE -> {
                Words.speak(Words.next());
                restyle.run();
            }
            case KEYS -> keys(!pane.keysShown());
            case NOW -> keys(false);
            case CLOSE -> close.run();
            default -> {
                // Keys of another place.
            }
        }
    }

    private void keys(boolean wanted) {
        pane.keys(wanted, KeyList.of(Deed.Place.BENCH));
    }

    /** As the profiles say, and then what a job can be shown in. */
    private void units() {
        units = units + 1 < Units.SHOWN.size() ? units + 1 : -1;
        String words = units < 0
                ? Words.say("Shown as the profiles say; stored as before")
                : Words.say(
                        "Shown in {0} and {1}; stored as before",
                        Units.SHOWN.get(units).pressure().symbol(),
                        Units.SHOWN.get(units).temperature().symbol());
        told.say(words, TOLD_LOOKS);
        show(true);
    }

    /**
     * Makes all that shows words anew; the chosen row stays.
     *
     * @param shown puts the new pane into the window
     */
    void speakAnew(Consumer<BenchPane> shown) {
        boolean listed = pane.keysShown();
        pane = new BenchPane(look, this::perform, this::select);
        keys(listed);
        shown.accept(pane);
        pane.rows().reveal(selected);
        show(true);
        pane.requestFocusInWindow();
    }

    void restyled() {
        pane.repaint();
    }
}
