package settlemark.ui;

import java.awt.Dimension;
import java.awt.Graphics;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextArea;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;
import settlemark.job.SettleForm;
import settlemark.measure.Unit;
import settlemark.session.WhatIfReport;
import settlemark.settle.SettleAdjustment;
import settlemark.settle.SettleChoices;
import settlemark.settle.SettleKind;
import settlemark.settle.SettleSettings;

/** What if the settled rule were another: limits and how far ahead is looked, and in words what that changes. */
final class RuleAsked extends JPanel {
    private static final double LEAST_SECONDS = 0.05;
    private static final Pattern NUMBER = Pattern.compile("[-+]?\\d+(\\.\\d+)?");

    private final transient Look look;
    private final List<JLabel> labels = new ArrayList<>();
    private final List<Asked> asked = new ArrayList<>();
    private final JTextArea answer = new JTextArea();
    private final JLabel title = new FittedLabel();
    private final transient Consumer<SettleChoices> run;

    private record Asked(SettleKind kind, boolean drift, JTextField field) {}

    /** @param run gets other settings when Enter is pressed */
    RuleAsked(Look look, Consumer<SettleChoices> run) {
        super(new MigLayout(
                "insets 6 12 2 14, fillx, wrap 3, gapy 3",
                "[" + look.ipx(44)
                        + "::,fill,shrinkprio 50]8[grow,fill,sg,shrinkprio 200]8[grow,fill,sg,shrinkprio 200]",
                "[][][" + look.ipx(34) + "!][" + look.ipx(34) + "!][grow,fill]"));
        this.look = look;
        this.run = run;
        setOpaque(false);
        title.setText(Words.say("What if the rule were"));
        add(title, "span 3, wmin 40, growx");
        add(label(""));
        add(label(Words.say("limit")), "wmin 20");
        add(label(Words.say("look ahead")), "wmin 20");
        add(label(Words.say("Gas")), "wmin 20");
        ask(Words.say("Limit, gas"), SettleKind.GAS, true);
        ask(Words.say("Look ahead, gas"), SettleKind.GAS, false);
        add(label(Words.say("Air")), "wmin 20");
        ask(Words.say("Limit, air"), SettleKind.AIR, true);
        ask(Words.say("Look ahead, air"), SettleKind.AIR, false);
        answer.setEditable(false);
        answer.setLineWrap(true);
        answer.setWrapStyleWord(true);
        answer.setOpaque(false);
        answer.getAccessibleContext().setAccessibleName(Words.say("what the other rule changes"));
        add(answer, "span 3, grow, push, wmin 40, hmin 0");
        getAccessibleContext().setAccessibleName(Words.say("What if the rule were"));
        restyle();
    }

    private void ask(String words, SettleKind kind, boolean drift) {
        SettleSettings usual = SettleSettings.defaults(kind);
        String before = drift
                ? Numbers.plain(usual.driftLimit()) + (kind == SettleKind.GAS ? " inH\u2082O" : " \u00b0F")
                : Numbers.plain(usual.horizonSeconds()) + " s";
        JTextField field = new JTextField();
        field.putClientProperty("JTextField.placeholderText", before);
        field.getAccessibleContext().setAccessibleName(words);
        field.getAccessibleContext().setAccessibleDescription(Words.say("usually {0}", before));
        field.addActionListener(e -> enter());
        asked.add(new Asked(kind, drift, field));
        add(field, "wmin 40");
    }

    private JLabel label(String words) {
        JLabel label = new FittedLabel(words);
        labels.add(label);
        return label;
    }

    void restyle() {
        title.setFont(look.semiBold(Look.NAME));
        title.setForeground(look.theme().ink());
        labels.forEach(l -> {
            l.setFont(look.regular(Look.AXIS));
            l.setForeground(look.theme().ink2());
        });
        asked.forEach(a -> {
            a.field().setFont(look.regular(Look.BODY));
            InlineRow.style(a.field(), look);
        });
        answer.setFont(look.regular(Look.BODY));
        answer.setForeground(look.theme().ink());
    }

    void focus() {
        asked.get(0).field().requestFocusInWindow();
    }

    void say(String words) {
        if (!answer.getText().equals(words)) {
            answer.setText(words);
        }
    }

    String said() {
        return answer.getText();
    }

    private void enter() {
        Map<SettleKind, SettleAdjustment> all = new EnumMap<>(SettleKind.class);
        try {
            for (Asked one : asked) {
                String text = one.field().getText().strip();
                if (!text.isEmpty()) {
                    if (!NUMBER.matcher(text).matches()) {
                        throw new NumberFormatException(text);
                    }
                    double number = Double.parseDouble(text);
                    double none = Double.NaN;
                    SettleAdjustment set = new SettleAdjustment(
                            one.drift() ? number : none, none, one.drift() ? none : number, List.of(), none, none);
                    all.merge(one.kind(), set, (before, after) -> after.over(before));
                }
            }
        } catch (NumberFormatException e) {
            say(Words.say("A limit and a look ahead are numbers with a point, such as 0.01 and 60."));
            return;
        } catch (IllegalArgumentException e) {
            say(Words.told(String.valueOf(e.getMessage())));
            return;
        }
        SettleChoices choices = new SettleChoices(all);
        List<String> problems = SettleForm.problems(choices);
        if (problems.isEmpty()) {
            run.accept(choices);
        } else {
            say(problems.stream().map(Words::told).collect(Collectors.joining("; ")));
        }
    }

    /**
     * What another rule changes, for the open step where there is one.
     *
     * @param units that values are said in
     */
    static String words(WhatIfReport report, String step, ReviewUnits units) {
        List<WhatIfReport.Line> lines = report.lines().stream()
                .filter(l -> step.isEmpty() || l.step().equals(step))
                // Read by the way, while the screw was still turned.
                .filter(l -> !l.purpose().equals("adjusted"))
                .toList();
        List<String> said = new ArrayList<>();
        lines.stream().filter(WhatIfReport.Line::changed).limit(6).forEach(l -> said.add(line(l, report.job(), units)));
        long changed = lines.stream().filter(WhatIfReport.Line::changed).count();
        if (changed > 6) {
            said.add(Words.say("and {0} more", changed - 6));
        }
        long all = report.lines().stream()
                .filter(WhatIfReport.Line::changed)
                .filter(l -> !l.purpose().equals("adjusted"))
                .count();
        said.add(
                changed > 0
                        ? Words.say("What is stored is not changed.")
                        : all == 0
                                ? Words.say("Nothing changes.")
                                : Words.say("Nothing changes in this step; {0} readings of others do.", all));
        return String.join("\n", said);
    }

    private static String line(WhatIfReport.Line line, boolean job, ReviewUnits units) {
        String name = Numbers.capital(Words.told(line.role().word()));
        Optional<WhatIfReport.Value> before = line.before();
        Optional<WhatIfReport.Value> after = line.after();
        if (after.isEmpty()
                || !after.get().settled()
                        && before.map(WhatIfReport.Value::settled).orElse(false)) {
            return Words.say("{0} never settles in time.", name);
        }
        if (before.isEmpty()) {
            return Words.say("{0} settles, at {1}.", name, value(after.get(), units));
        }
        double later = (after.get().timeNanos() - before.get().timeNanos()) / 1e9;
        if (Math.abs(later) < LEAST_SECONDS) {
            return Words.say(
                    "{0} is read at {1} (was {2}).", name, value(after.get(), units), value(before.get(), units));
        }
        String when = Numbers.fixed(Math.abs(later), Math.abs(later) < 10 ? 1 : 0) + " s";
        String how = later < 0 ? Words.say("earlier") : Words.say("later");
        return Words.say(
                job ? "{0} is read {1} {2}, at {3} (was {4})." : "{0} settles {1} {2}, at {3} (was {4}).",
                name,
                when,
                how,
                value(after.get(), units),
                value(before.get(), units));
    }

    private static String value(WhatIfReport.Value value, ReviewUnits units) {
        Unit unit = units.of(value.unit());
        return Numbers.fixed(value.unit().to(unit).apply(value.value()), decimals(unit)) + " " + unit.symbol();
    }

    private static int decimals(Unit unit) {
        return switch (unit.code()) {
            case "[in_i'H2O]", "mbar" -> 2;
            case "kPa" -> 3;
            case "Pa" -> 0;
            default -> 1;
        };
    }

    /** Height in which its answer can be read. */
    int neededHeight() {
        return look.ipx(240);
    }

    /** A label that was made smaller in a narrower panel asks for its whole room again. */
    @Override
    public void setBounds(int x, int y, int width, int height) {
        if (width != getWidth()) {
            labels.forEach(l -> l.setText(l.getText()));
        }
        super.setBounds(x, y, width, height);
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(look.ipx(280), look.ipx(320));
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        graphics.setColor(look.theme().sheet());
        graphics.fillRect(0, 0, getWidth(), getHeight());
    }
}
