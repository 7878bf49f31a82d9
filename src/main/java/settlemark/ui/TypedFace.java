package settlemark.ui;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.accessibility.AccessibleRole;
import javax.swing.JLabel;
import javax.swing.JTextField;
import settlemark.job.Act;
import settlemark.job.StepState;
import settlemark.job.TypedValue;
import settlemark.job.Verdict;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.session.ChannelView;

/**
 * Values of the flue gas or of the air's static pressures: each from its probe where there is one, else typed from an
 * instrument that is named.
 */
final class TypedFace extends Face {
    private static final double ROW = 64;
    private static final double LABEL = 240;
    private static final double FIELD = 130;

    private final List<Row> rows = new ArrayList<>();
    private final JLabel instrumentLabel = new FittedLabel(Words.say("Instrument, its number"));
    private final JTextField instrument = new JTextField();
    private final Results results;
    private final transient Runnable entered;
    private List<Role> roles = List.of();
    private String shown = "";

    /** One value: its name, what is typed, and what is known of it. */
    private record Row(Role role, JLabel label, JTextField field, JLabel known) {}

    /** @param entered Enter in a field */
    TypedFace(Look look, Runnable entered) {
        super(look, Words.say("values from probes, or typed"));
        this.entered = entered;
        results = new Results(look);
        instrumentLabel.setLabelFor(instrument);
        instrument.getAccessibleContext().setAccessibleName(Words.say("instrument and its number"));
        instrument.addActionListener(e -> entered.run());
        add(instrumentLabel);
        add(instrument);
        add(results);
        restyle();
    }

    static String name(Role role) {
        return switch (role) {
            case OXYGEN -> Words.say("Oxygen, O\u2082");
            case CARBON_DIOXIDE -> Words.say("Carbon dioxide, CO\u2082");
            case CARBON_MONOXIDE -> Words.say("Carbon monoxide, CO");
            case ROOM_CARBON_MONOXIDE -> Words.say("CO in the room");
            case STACK -> Words.say("Stack");
            case SUPPLY_STATIC -> Words.say("Supply static");
            case RETURN_STATIC -> Words.say("Return static");
            case INLET, MANIFOLD, SUPPLY, RETURN -> Numbers.capital(Words.told(role.word()));
        };
    }

    @Override
    int neededWidth() {
        return look.ipx(770);
    }

    Optional<JTextField> field(Role role) {
        return rows.stream().filter(r -> r.role() == role).map(Row::field).findFirst();
    }

    JTextField instrument() {
        return instrument;
    }

    @Override
    void show(Scene scene, boolean digits) {
        List<Role> wanted = scene.open().step().required();
        if (!wanted.equals(roles) || !scene.open().key().equals(shown)) {
            roles = wanted;
            shown = scene.open().key();
            rebuild(scene);
        }
        boolean types = scene.live() && !scene.armed();
        for (Row row : rows) {
            Optional<ChannelView> channel = scene.snapshot().channel(row.role());
            String now = channel.map(c -> Words.say(
                            "{0} {1} by its probe",
                            Numbers.fixed(c.value(), 2), c.unit().symbol()))
                    .orElseGet(() -> typed(scene.open(), row.role()));
            row.known().setText(now);
            row.field().setEditable(types);
        }
        instrument.setEditable(types);
        results.show(scene.open());
    }

    private static String typed(StepState open, Role role) {
        TypedValue value = open.typed().get(role);
        return value == null
                ? Words.say("no probe: type it")
                : Words.say(
                        "{0} {1}, typed from {2}",
                        Numbers.plain(value.value()), value.unit().symbol(), value.instrument());
    }

    private void rebuild(Scene scene) {
        for (Row row : rows) {
            remove(row.label());
            remove(row.field());
            remove(row.known());
        }
        rows.clear();
        for (Role role : roles) {
            String words =
                    name(role) + ", " + scene.snapshot().header().unit(role).symbol();
            Row row = new Row(role, new FittedLabel(words), new JTextField(), new FittedLabel());
            row.label().setLabelFor(row.field());
            row.field().getAccessibleContext().setAccessibleName(words);
            row.field().addActionListener(e -> entered.run());
            rows.add(row);
            add(row.label());
            add(row.field());
            add(row.known());
        }
        restyle();
        revalidate();
    }

    /**
     * What has been typed and is not known yet.
     *
     * @throws IllegalArgumentException in words, where something typed is no value
     */
    List<Act> typed(Scene scene) {
        List<Act> acts = new ArrayList<>();
        for (Row row : rows) {
            String text = row.field().getText().strip();
            if (!text.isEmpty()) {
                acts.add(act(scene, row.role(), text));
            }
        }
        return acts;
    }

    /** A value, or a value and what it may be off by: {@code 6.4} or {@code 6.4 +- 0.2}. */
    private Act act(Scene scene, Role role, String text) {
        if (instrument.getText().isBlank()) {
            throw new IllegalArgumentException("say which instrument the values are from, and its number");
        }
        String[] parts = text.replace("\u00b1", "+-").split("\\s*\\+-\\s*", 2);
        try {
            return new Act.Entered(
                    scene.open().key(),
                    role,
                    Double.parseDouble(parts[0].replace(Numbers.MINUS, "-")),
                    scene.snapshot().header().unit(role),
                    parts.length > 1 ? Double.parseDouble(parts[1]) : Double.NaN,
                    instrument.getText().strip());
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException(
                    name(role) + ": type a number such as 6.4, or 6.4 +- 0.2 with what it may be off by; got \"" + text
                            + "\"",
                    e);
        }
    }

    @Override
    void restyle() {
        for (Row row : rows) {
            label(row.label(), Look.NAME - 2);
            label(row.known(), Look.BODY);
            row.field().setFont(look.regular(Look.NAME));
            InlineRow.style(row.field(), look);
        }
        label(instrumentLabel, Look.NAME - 2);
        instrument.setFont(look.regular(Look.NAME));
        InlineRow.style(instrument, look);
    }

    private void label(JLabel label, double size) {
        label.setFont(look.regular(size));
        label.setForeground(look.theme().ink());
    }

    @Override
    public void doLayout() {
        int x = look.ipx(16);
        int row = look.ipx(ROW);
        int high = look.ipx(44);
        int labelWide = look.ipx(LABEL);
        int fieldWide = look.ipx(FIELD);
        int y = look.ipx(12);
        for (Row one : rows) {
            one.label().setBounds(x, y, labelWide, high);
            one.field().setBounds(x + labelWide, y, fieldWide, high);
            int left = x + labelWide + fieldWide + look.ipx(14);
            one.known().setBounds(left, y, Math.max(0, getWidth() - left - x), high);
            y += row;
        }
        instrumentLabel.setBounds(x, y, labelWide, high);
        instrument.setBounds(x + labelWide, y, Math.min(look.ipx(420), getWidth() - labelWide - 2 * x), high);
        y += row;
        results.setBounds(x, y, getWidth() - 2 * x, Math.max(0, getHeight() - y));
    }

    /** What the values say, once they are taken. */
    private static final class Results extends Painted {
        private List<Verdict> verdicts = List.of();
        private List<String> remarks = List.of();

        Results(Look look) {
            super(look, AccessibleRole.LIST);
            sentence(Words.say("not taken"));
        }

        void show(StepState step) {
            if (!step.verdicts().equals(verdicts) || !step.remarks().equals(remarks)) {
                verdicts = step.verdicts();
                remarks = step.remarks();
                List<String> said = remarks.stream().map(Words::told).toList();
                boolean nothing = verdicts.isEmpty() && remarks.isEmpty();
                sentence(
                        nothing
                                ? Words.say("not taken")
                                : String.join(
                                                "; ",
                                                verdicts.stream()
                                                        .map(Results::words)
                                                        .toList()) + " " + String.join(" ", said));
                repaint();
            }
        }

        private static String words(Verdict verdict) {
            Unit unit = verdict.limit().unit();
            String range =
                    VerdictBox.range(verdict.limit().lower(), verdict.limit().upper());
            int decimals = Numbers.decimals(Math.max(verdict.expandedUncertainty(), 1e-3));
            return Words.say(
                    "{0} {1} {2} {3}, {4} ({5}): {6}",
                    Numbers.capital(Words.told(verdict.subject())),
                    Numbers.fixed(verdict.value(), decimals),
                    Numbers.plusMinus(verdict.expandedUncertainty(), decimals),
                    unit.symbol(),
                    range,
                    Words.told(verdict.limit().source()),
                    Words.told(verdict.outcome().word()));
        }

        @Override
        void draw(Pen pen) {
            double y = look.px(20);
            for (Verdict verdict : verdicts) {
                VerdictBox.of(verdict.outcome()).draw(pen.g, 0, y - look.px(15), look.px(20), pen.theme());
                y = pen.paragraph(
                        words(verdict),
                        look.semiBold(Look.BODY),
                        pen.theme().ink(),
                        look.px(30),
                        y,
                        getWidth() - look.px(30));
                y += look.px(6);
            }
            for (String remark : remarks) {
                y = pen.paragraph(
                        Words.told(remark), look.regular(Look.BODY), pen.theme().ink2(), 0, y, getWidth());
                y += look.px(4);
            }
        }
    }
}
