package settlemark.ui;

import java.awt.CardLayout;
import java.awt.Graphics;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.JPanel;
import settlemark.job.SafetyNotice;

/**
 * The whole window inside its frame: head, step, strip, a line to type where one is asked for, and the buttons; or the
 * far view over all of it.
 */
final class DeskPane extends JPanel {
    private static final String DESK = "desk";
    private static final String FAR = "far";
    private final transient Look look;
    private final CardLayout cards = new CardLayout();
    private final Head head;
    private final StepBar step;
    private final Strip strip;
    private final OpenColumn open;
    private final transient OverStrip over;
    private final InlineRow inline;
    private final ButtonRow buttons;
    private final FarView far;
    private boolean farShown;

    /**
     * @param perform gets what is to be done
     * @param opener gets the key of a folded column that was picked
     * @param person gets a name that was typed
     */
    DeskPane(Look look, Consumer<Deed> perform, Consumer<String> opener, Consumer<String> person) {
        this.look = look;
        head = new Head(look);
        step = new StepBar(look);
        open = new OpenColumn(
                look, person, i -> perform.accept(Deed.valueOf("TICK_" + (i + 1))), () -> perform.accept(Deed.PRIMARY));
        strip = new Strip(look, open, opener);
        over = new OverStrip(look, strip, this::requestFocusInWindow);
        inline = new InlineRow(look);
        buttons = new ButtonRow(look, perform);
        far = new FarView(look);
        setLayout(cards);
        add(new Desk(), DESK);
        add(far, FAR);
        setFocusable(true);
        Keys.bind(this, Deed.Place.JOB, perform);
    }

    /** @param told an answer to a key that could do nothing, or empty */
    void show(Scene scene, String told, boolean digits) {
        if (farShown) {
            far.show(scene, digits);
            return;
        }
        head.show(scene);
        Optional<SafetyNotice> alarm = scene.job().alarm();
        step.alarm(alarm.isPresent());
        alarm.ifPresentOrElse(
                n -> step.show(Words.told(n.words()), Words.told(n.caution()), age(scene, n)),
                () -> step.show(StepWords.of(scene), StepWords.beneath(scene), told));
        strip.show(scene, digits);
        over.show(scene);
        List<Gap> gaps = Choices.gaps(scene).stream()
                .map(c -> Gap.of(c, scene.snapshot().timeNanos()))
                .toList();
        buttons.show(Choices.primary(scene), gaps, Choices.others(scene));
    }

    private static String age(Scene scene, SafetyNotice notice) {
        String since = Words.say("{0} ago", Numbers.age(scene.snapshot().timeNanos() - notice.sinceNanos()));
        return notice.cured() ? Words.say("{0}, over now", since) : since;
    }

    void farView(boolean shown) {
        farShown = shown;
        cards.show(this, shown ? FAR : DESK);
        requestFocusInWindow();
    }

    boolean farShown() {
        return farShown;
    }

    OverStrip over() {
        return over;
    }

    InlineRow inline() {
        return inline;
    }

    OpenColumn open() {
        return open;
    }

    Strip strip() {
        return strip;
    }

    ButtonRow buttons() {
        return buttons;
    }

    FarView far() {
        return far;
    }

    StepBar step() {
        return step;
    }

    /** After a change of theme. */
    void restyle() {
        inline.restyle();
        over.restyle();
        open.restyle();
        repaint();
    }

    /**
     * Head, step, strip and buttons, from the top. A line to type stands above the buttons; where that would cost digits
     * their height, it takes the buttons' place until it is done.
     */
    private final class Desk extends JPanel {
        Desk() {
            super(null);
            add(head);
            add(step);
            over.into(this);
            add(strip);
            add(inline);
            add(buttons);
        }

        @Override
        public void doLayout() {
            int width = getWidth();
            look.windowPx(getHeight());
            int y = look.ipx(Head.HEIGHT);
            head.setBounds(0, 0, width, y);
            int stepHeight = step.heightFor(width);
            step.setBounds(0, y, width, stepHeight);
            y += stepHeight;
            int bottom = buttons.atFoot(width, getHeight());
            boolean covers = look.tight();
            if (inline.isVisible()) {
                int asked = covers ? getHeight() - bottom : inline.getPreferredSize().height;
                bottom -= covers ? 0 : asked;
                inline.setBounds(0, bottom, width, asked);
            }
            buttons.setVisible(!covers || !inline.isVisible());
            strip.setBounds(0, y, width, Math.max(1, bottom - y));
            over.layOut();
        }

        @Override
        protected void paintComponent(Graphics graphics) {
            graphics.setColor(look.theme().window());
            graphics.fillRect(0, 0, getWidth(), getHeight());
        }
    }
}
