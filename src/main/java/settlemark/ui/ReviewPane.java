package settlemark.ui;

import java.awt.Graphics;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.IntConsumer;
import javax.accessibility.AccessibleRole;
import javax.swing.JPanel;
import settlemark.session.OtherLimit;
import settlemark.settle.SettleChoices;

/** The whole window of a review: head, the list of sessions, the strip of the open one, its bar, and the buttons. */
final class ReviewPane extends JPanel {
    /** Below this width the list gives way to the session that is open. */
    private static final double WIDE = 1500;

    private static final double NARROW = 1200;

    private final transient Look look;
    private final TitleBar title;
    private final SessionList sessions;
    private final ReviewColumn column;
    private final ReviewStrip strip;
    private final SessionBar bar;
    private final Empty empty;
    private final KeyList keys;
    private final VisitsView visits;
    private final LimitsPane limits;
    private final PickList pick;
    private final InlineRow inline;
    private final ButtonRow buttons;
    private boolean listWanted = true;
    private boolean open;

    /** What the window hears. */
    interface Heard extends SessionBar.Scrubbed {
        void perform(Deed deed);

        void find(String text);

        void choose(SessionLine line);

        void step(String key);

        void rule(SettleChoices choices);
    }

    ReviewPane(Look look, Heard heard) {
        super(null);
        this.look = look;
        title = new TitleBar(look);
        sessions = new SessionList(look, heard::find, heard::choose);
        Consumer<SettleChoices> run = heard::rule;
        column = new ReviewColumn(look, heard, run);
        strip = new ReviewStrip(look, column, heard::step);
        bar = new SessionBar(look, heard);
        empty = new Empty(look);
        keys = new KeyList(look);
        keys.setVisible(false);
        visits = new VisitsView(look);
        limits = new LimitsPane(look);
        pick = new PickList(look);
        inline = new InlineRow(look);
        buttons = new ButtonRow(look, heard::perform);
        add(title);
        add(keys);
        add(visits);
        add(limits);
        add(pick);
        add(sessions);
        add(strip);
        add(bar);
        add(empty);
        add(inline);
        add(buttons);
        strip.setVisible(false);
        bar.setVisible(false);
        setFocusable(true);
        Keys.bind(this, Deed.Place.REVIEW, heard::perform);
        getAccessibleContext().setAccessibleName(Words.say("review"));
    }

    /** Looks as the one did that it takes the place of; what it shows is shown after this. */
    void goOn(ReviewPane before, List<KeyList.Line> lines) {
        open = before.open;
        listWanted = before.listWanted;
        sessions.goOn(before.sessions);
        keys(before.keysShown(), lines);
        visits.setVisible(before.visits.isVisible());
        limits.goOn(before.limits);
    }

    void show(ReviewScene scene) {
        if (!open) {
            open = true;
            listWanted = getWidth() >= look.px(WIDE);
            revalidate();
        }
        covered();
        strip.show(scene);
        bar.show(scene);
        if (visits.isVisible()) {
            visits.show(scene.session().job(), scene.session().summary().simulated());
        }
    }

    void say(boolean simulated, String what, String told) {
        // A month cut short ends with a point already.
        String between = what.isEmpty() ? "" : what.endsWith(".") ? "  " : ".  ";
        title.say(simulated, told.isEmpty() ? what : what + between + told);
        empty.say(told.isEmpty() ? Words.say("Choose a session") : told);
    }

    /** What lies over the strip hides it. */
    private void covered() {
        boolean covered = pick.isVisible() || keys.isVisible() || visits.isVisible() || limits.isVisible();
        strip.setVisible(open && !covered);
        bar.setVisible(open);
        empty.setVisible(!open && !covered);
    }

    /** Too narrow for every button. */
    boolean narrow() {
        return getWidth() < look.px(NARROW);
    }

    void list(boolean shown) {
        listWanted = shown;
        revalidate();
        doLayout();
    }

    /** Puts the list away where it only came because it was called for. */
    void putListAway() {
        if (open && getWidth() < look.px(WIDE)) {
            list(false);
        }
    }

    boolean listShown() {
        return sessions.isVisible();
    }

    void keys(boolean shown, List<KeyList.Line> lines) {
        keys.list(lines);
        keys.setVisible(shown);
        covered();
    }

    void visits(boolean shown) {
        visits.setVisible(shown);
        covered();
    }

    VisitsView visits() {
        return visits;
    }

    boolean keysShown() {
        return keys.isVisible();
    }

    void ask(String question, List<PickList.Option> options, IntConsumer chosen) {
        ask(question, options, "", chosen);
    }

    /** @param more what is to be known before it is answered; may be empty */
    void ask(String question, List<PickList.Option> options, String more, IntConsumer chosen) {
        pick.ask(question, options, more, chosen, () -> {
            covered();
            requestFocusInWindow();
        });
        covered();
        revalidate();
    }

    /** Asks for other limits. */
    void limits(LimitsTyped typed, String step, Consumer<List<OtherLimit>> chosen) {
        limits.open(typed, step, chosen);
        covered();
    }

    LimitsPane limits() {
        return limits;
    }

    PickList pick() {
        return pick;
    }

    InlineRow inline() {
        return inline;
    }

    SessionList sessions() {
        return sessions;
    }

    ReviewColumn column() {
        return column;
    }

    ReviewStrip strip() {
        return strip;
    }

    SessionBar bar() {
        return bar;
    }

    ButtonRow buttons() {
        return buttons;
    }

    void restyle() {
        sessions.restyle();
        column.restyle();
        limits.restyle();
        pick.restyle();
        inline.restyle();
        repaint();
    }

    @Override
    public void doLayout() {
        int width = getWidth();
        look.windowPx(getHeight());
        int y = look.ipx(Head.HEIGHT);
        title.setBounds(0, 0, width, y);
        int bottom = inline.above(buttons.atFoot(width, getHeight()), width);
        boolean list = listWanted || !open;
        sessions.setVisible(list);
        int left = list ? Math.min(look.ipx(SessionList.WIDTH), width / 2) : 0;
        sessions.setBounds(0, y, left, Math.max(1, bottom - y));
        int line = Math.min(look.ipx(SessionBar.HEIGHT), (bottom - y) / 3);
        int wide = width - left;
        strip.setBounds(left, y, wide, Math.max(1, bottom - y - line));
        bar.setBounds(left, bottom - line, wide, line);
        empty.setBounds(left, y, wide, Math.max(1, bottom - y));
        keys.setBounds(left, y, wide, Math.max(1, bottom - y - (open ? line : 0)));
        visits.setBounds(keys.getBounds());
        limits.setBounds(keys.getBounds());
        pick.setBounds(keys.getBounds());
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        graphics.setColor(look.theme().window());
        graphics.fillRect(0, 0, getWidth(), getHeight());
    }

    /** Where no session is open. */
    private static final class Empty extends Painted {
        private String words = "";

        Empty(Look look) {
            super(look, AccessibleRole.LABEL);
        }

        void say(String newWords) {
            words = newWords;
            sentence(words);
            repaint();
        }

        @Override
        void draw(Pen pen) {
            pen.fill(pen.theme().sheet(), 0, 0, getWidth(), getHeight());
            pen.paragraph(
                    words,
                    look.semiBold(Look.LABEL),
                    pen.theme().ink2(),
                    look.px(40),
                    look.px(70),
                    getWidth() - look.px(80));
        }
    }
}
