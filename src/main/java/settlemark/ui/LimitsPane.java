package settlemark.ui;

import java.awt.Dimension;
import java.awt.EventQueue;
import java.awt.Graphics;
import java.awt.Rectangle;
import java.awt.event.FocusAdapter;
import java.awt.event.FocusEvent;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.BorderFactory;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextField;
import javax.swing.Scrollable;
import net.miginfocom.swing.MigLayout;
import org.jspecify.annotations.Nullable;
import settlemark.job.Verdict;
import settlemark.session.OtherLimit;
import settlemark.session.Rejudging;
import settlemark.session.Rejudging.Place;
import settlemark.ui.LimitsTyped.Ends;
import settlemark.ui.LimitsTyped.Field;
import settlemark.ui.LimitsTyped.Row;

/**
 * Other limits for the verdicts of a stored job, over the strip until they are left: every figure that was judged with its
 * value, two fields for its limit, and beside them, while it is typed, what becomes of the verdict or what is wrong. Enter
 * keeps them for the word on the record, Esc leaves them as they were.
 */
final class LimitsPane extends JPanel {
    private static final double ROW = 40;

    private final transient Look look;
    private final JLabel title = new FittedLabel();
    private final JLabel keys = new FittedLabel();
    private final PlainButton keep;
    private final PlainButton day;
    private final JPanel body;
    private final transient List<Line> lines = new ArrayList<>();
    private final List<JLabel> heads = new ArrayList<>();
    private transient @Nullable LimitsTyped typed;
    private transient LimitsTyped.Read read = new LimitsTyped.Read(List.of(), Map.of(), Map.of());
    private transient Consumer<List<OtherLimit>> then = limits -> {};
    private boolean filling;

    /** One figure. */
    private record Line(
            Row row,
            JLabel step,
            JLabel figure,
            JLabel value,
            JTextField low,
            JTextField high,
            JLabel unit,
            VerdictBox box,
            FieldNote note) {
        List<JLabel> labels() {
            return List.of(step, figure, value, unit);
        }
    }

    LimitsPane(Look look) {
        super(new MigLayout(
                "insets 10 24 10 24, fill, wrap 4, gapy 8",
                "[shrink 50][grow,fill][fill][fill]",
                "[" + look.ipx(50) + "!,fill][grow,fill]"));
        this.look = look;
        body = new Body(look);
        JScrollPane scroll = new JScrollPane(body);
        title.setText(Words.say("Other limits"));
        keys.setText(Words.say("Enter keeps them for your word, Esc leaves them as they were"));
        keep = new PlainButton(look, Words.say("Keep for your word"), this::keep);
        day = new PlainButton(look, Words.say("As on the day"), this::asOnTheDay);
        add(title, "wmin 40");
        add(keys, "wmin 40, growx");
        add(day, "wmin 60");
        add(keep, "wmin 60");
        scroll.setBorder(BorderFactory.createEmptyBorder());
        scroll.setOpaque(false);
        scroll.getViewport().setOpaque(false);
        add(scroll, "span 4, grow, hmin 0");
        getAccessibleContext().setAccessibleName(Words.say("Other limits"));
        setVisible(false);
        restyle();
    }

    /**
     * Shows what is kept now.
     *
     * @param step whose first field gets the cursor, empty for the first of all
     * @param chosen gets the limits that are others
     */
    void open(LimitsTyped now, String step, Consumer<List<OtherLimit>> chosen) {
        typed = now;
        then = chosen;
        lines.clear();
        heads.clear();
        body.removeAll();
        head(Words.say("step"), "");
        head(Words.say("figure"), "");
        head(Words.say("measured"), "");
        head(Words.say("at least"), "");
        head(Words.say("at most"), "");
        head("", "");
        head(Words.say("verdict"), "span 2");
        String before = "";
        for (Row row : now.rows()) {
            add(row, row.title().equals(before) ? "" : Words.told(row.title()));
            before = row.title();
        }
        restyle();
        look();
        setVisible(true);
        revalidate();
        lines.stream()
                .filter(l -> l.row().place().step().equals(step))
                .findFirst()
                .or(() -> lines.stream().findFirst())
                .ifPresent(l -> focus(l.low()));
    }

    private void head(String words, String constraints) {
        JLabel label = new FittedLabel(words);
        heads.add(label);
        body.add(label, constraints.isEmpty() ? "wmin 20" : constraints + ", wmin 20");
    }

    private void add(Row row, String step) {
        Verdict verdict = row.verdict();
        var to = verdict.limit().unit().to(row.unit());
        double u = Math.abs(to.slope()) * verdict.expandedUncertainty();
        int decimals = Numbers.decimals(u);
        String value = Numbers.fixed(to.apply(verdict.value()), decimals) + " " + Numbers.plusMinus(u, decimals);
        String figure = Numbers.capital(Words.told(verdict.subject()));
        Line line = new Line(
                row,
                new FittedLabel(step),
                new FittedLabel(figure),
                new FittedLabel(value),
                field(row.kept().low()),
                field(row.kept().high()),
                new FittedLabel(row.unit().symbol()),
                new VerdictBox(look),
                new FieldNote(look));
        String name = Words.told(row.title()) + ", " + figure + ", ";
        line.low()
                .getAccessibleContext()
                .setAccessibleName(
                        name + Words.say("at least") + ", " + row.unit().symbol());
        line.high()
                .getAccessibleContext()
                .setAccessibleName(
                        name + Words.say("at most") + ", " + row.unit().symbol());
        line.figure().setLabelFor(line.low());
        line.unit().setLabelFor(line.high());
        lines.add(line);
        body.add(line.step(), "wmin 40, growx");
        body.add(line.figure(), "wmin 40, growx");
        body.add(line.value(), "wmin 40, growx");
        body.add(line.low(), "wmin 50, growx");
        body.add(line.high(), "wmin 50, growx");
        body.add(line.unit(), "wmin 20");
        int box = look.ipx(18);
        body.add(line.box(), "w " + box + "!, h " + box + "!");
        body.add(line.note(), "wmin 60, grow");
    }

    private JTextField field(String text) {
        JTextField field = new JTextField(text);
        // Who goes to a limit means to type another.
        field.putClientProperty("JTextField.selectAllOnFocusPolicy", "always");
        field.addActionListener(e -> keep());
        field.getDocument().addDocumentListener(new Typed(this::look));
        field.addFocusListener(new FocusAdapter() {
            @Override
            public void focusGained(FocusEvent event) {
                Rectangle place = field.getBounds();
                place.grow(0, look.ipx(8));
                body.scrollRectToVisible(place);
            }
        });
        return field;
    }

    /** Shows what was typed in another pane. */
    void goOn(LimitsPane before) {
        LimitsTyped now = before.typed;
        if (before.isVisible() && now != null) {
            open(now, "", before.then);
            filling = true;
            for (int i = 0; i < lines.size(); i++) {
                lines.get(i).low().setText(before.lines.get(i).low().getText());
                lines.get(i).high().setText(before.lines.get(i).high().getText());
            }
            filling = false;
            look();
        }
    }

    void leave() {
        setVisible(false);
    }

    /** Later, or the letter of the key that asked would be the first in the field. */
    private static void focus(JTextField field) {
        EventQueue.invokeLater(field::requestFocusInWindow);
    }

    /** Says at each row what becomes of its verdict, or what is wrong with its limit. */
    private void look() {
        LimitsTyped now = typed;
        if (filling || now == null) {
            return;
        }
        Map<Place, Ends> texts = new LinkedHashMap<>();
        lines.forEach(l ->
                texts.put(l.row().place(), new Ends(l.low().getText(), l.high().getText())));
        read = now.read(texts);
        for (Line line : lines) {
            Place place = line.row().place();
            Optional<String> wrong = Optional.ofNullable(read.problems().get(new Field(place, false)))
                    .or(() -> Optional.ofNullable(read.problems().get(new Field(place, true))));
            String words = wrong.orElseGet(() -> became(line.row()));
            boolean told =
                    wrong.isPresent() || !outcome(line.row()).equals(line.row().before());
            line.note().say(words, told);
            line.low().getAccessibleContext().setAccessibleDescription(words);
            line.high().getAccessibleContext().setAccessibleDescription(words);
            Verdict verdict = read.verdicts().getOrDefault(place, line.row().verdict());
            line.box().show(VerdictBox.of(verdict.outcome()), words);
            line.box().setVisible(wrong.isEmpty());
        }
        keep.setEnabled(read.problems().isEmpty());
        repaint();
    }

    private String outcome(Row row) {
        return read.verdicts()
                .getOrDefault(row.place(), row.verdict())
                .outcome()
                .word();
    }

    private String became(Row row) {
        String now = outcome(row);
        return now.equals(row.before())
                ? Words.told(now)
                : Words.say("{0} (was {1})", Words.told(now), said(row.before()));
    }

    /** An outcome, or that there is none. */
    static String said(String outcome) {
        return outcome.equals(Rejudging.NO_VERDICT) ? Words.say("no verdict") : Words.told(outcome);
    }

    private void asOnTheDay() {
        filling = true;
        lines.forEach(l -> {
            l.low().setText(l.row().day().low());
            l.high().setText(l.row().day().high());
        });
        filling = false;
        look();
        lines.stream().findFirst().ifPresent(l -> focus(l.low()));
    }

    /** Keeps what is typed where nothing is wrong about it, else goes to what is; says whether it was kept. */
    boolean keep() {
        for (Line line : lines) {
            Place place = line.row().place();
            if (read.problems().containsKey(new Field(place, false))) {
                focus(line.low());
                return false;
            }
            if (read.problems().containsKey(new Field(place, true))) {
                focus(line.high());
                return false;
            }
        }
        setVisible(false);
        then.accept(read.limits());
        return true;
    }

    /** Fonts and colours after a change of theme. */
    void restyle() {
        title.setFont(look.semiBold(Look.LABEL));
        title.setForeground(look.theme().ink());
        keys.setFont(look.regular(Look.BODY));
        keys.setForeground(look.theme().ink2());
        heads.forEach(h -> {
            h.setFont(look.regular(Look.AXIS));
            h.setForeground(look.theme().ink2());
        });
        lines.forEach(line -> {
            line.labels().forEach(label -> {
                label.setFont(look.regular(Look.BODY));
                label.setForeground(look.theme().ink());
            });
            line.step().setFont(look.semiBold(Look.BODY));
            for (JTextField field : List.of(line.low(), line.high())) {
                field.setFont(look.regular(Look.NAME));
                InlineRow.style(field, look);
            }
        });
        repaint();
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        graphics.setColor(look.theme().sheet());
        graphics.fillRect(0, 0, getWidth(), getHeight());
    }

    /** As wide as there is room, as high as it needs. */
    private static final class Body extends JPanel implements Scrollable {
        private final transient Look look;

        Body(Look look) {
            super(new MigLayout(
                    "insets 2 4 8 12, fillx, wrap 8, gapy 5",
                    "[fill,50:pref]10[fill,50:pref]10[fill,50:pref]12[50:110,fill]6[50:110,fill]6[30:pref]12[]8[grow,fill,60:300]",
                    "[]4[fill," + look.ipx(ROW) + "!]"));
            this.look = look;
            setOpaque(false);
        }

        @Override
        public Dimension getPreferredScrollableViewportSize() {
            return getPreferredSize();
        }

        @Override
        public int getScrollableUnitIncrement(Rectangle visible, int orientation, int direction) {
            return look.ipx(ROW + 5);
        }

        @Override
        public int getScrollableBlockIncrement(Rectangle visible, int orientation, int direction) {
            return Math.max(1, visible.height - look.ipx(ROW + 5));
        }

        @Override
        public boolean getScrollableTracksViewportWidth() {
            return true;
        }

        @Override
        public boolean getScrollableTracksViewportHeight() {
            return false;
        }
    }
}
