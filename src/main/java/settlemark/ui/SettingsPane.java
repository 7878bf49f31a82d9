package settlemark.ui;

import java.awt.EventQueue;
import java.awt.Graphics;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextField;
import javax.swing.event.DocumentEvent;
import javax.swing.event.DocumentListener;
import net.miginfocom.swing.MigLayout;
import org.jspecify.annotations.Nullable;
import settlemark.settle.SettleChoices;
import settlemark.settle.SettleKind;
import settlemark.ui.SettingsTyped.Place;
import settlemark.ui.SettingsTyped.Setting;

/**
 * What counts as settled, for one kind of channel at a time, over the strip until it is left: each setting with its unit,
 * what the job began with, and what is wrong with it said beside it while it is typed. Enter uses it, Esc leaves it.
 */
final class SettingsPane extends JPanel {
    private final transient Look look;
    private final JLabel title = new FittedLabel();
    private final JLabel keys = new FittedLabel();
    private final JPanel kinds = new JPanel();
    private final transient Map<Setting, Line> lines = new EnumMap<>(Setting.class);
    private final WordButton use;
    private final WordButton back;
    private final transient Map<Place, String> texts = new HashMap<>();
    private transient @Nullable SettingsTyped typed;
    private transient SettingsTyped.Read read = new SettingsTyped.Read(SettleChoices.NONE, Map.of());
    private SettleKind kind = SettleKind.GAS;
    private transient Consumer<SettleChoices> then = choices -> {};
    private boolean filling;

    SettingsPane(Look look) {
        super(new MigLayout(
                "insets 10 24 10 24, fillx, wrap 4, gapy 6",
                "[shrink 200,50:190][130:190,fill][40:70][grow,fill]",
                "[][fill]10" + ("[fill,26:" + look.ipx(46) + "]").repeat(Setting.values().length) + "push"));
        this.look = look;
        title.setText(Words.say("What counts as settled"));
        keys.setText(Words.say("Enter uses it from now on, Esc leaves it as it is"));
        add(title, "span 3, wmin 40, growx");
        add(keys, "wmin 40, growx");
        kinds.setOpaque(false);
        use = new PlainButton(look, Words.say("Use from now on"), this::use);
        back = new PlainButton(look, Words.say("As the job began"), this::asTheJobBegan);
        JPanel row = new JPanel(new MigLayout("insets 0, fill, gapx 10", "[grow,fill][fill][fill]", "[fill]"));
        row.setOpaque(false);
        row.add(kinds, "wmin 60");
        row.add(back, "wmin 60");
        row.add(use, "wmin 60");
        add(row, "span 4, grow");
        for (Setting setting : Setting.values()) {
            addRow(setting);
        }
        getAccessibleContext().setAccessibleName(Words.say("What counts as settled"));
        setVisible(false);
        restyle();
    }

    private void addRow(Setting setting) {
        JLabel name = new FittedLabel(name(setting));
        JTextField field = new JTextField();
        JLabel unit = new FittedLabel();
        FieldNote note = new FieldNote(look);
        name.setLabelFor(field);
        field.addActionListener(e -> use());
        field.getDocument().addDocumentListener(new DocumentListener() {
            @Override
            public void insertUpdate(DocumentEvent event) {
                typed(setting);
            }

            @Override
            public void removeUpdate(DocumentEvent event) {
                typed(setting);
            }

            @Override
            public void changedUpdate(DocumentEvent event) {
                // Fonts, not letters.
            }
        });
        lines.put(setting, new Line(name, field, unit, note));
        add(name, "wmin 40, growx");
        add(field, "wmin 60");
        add(unit, "wmin 20");
        add(note, "grow, wmin 60");
    }

    private static String name(Setting setting) {
        return switch (setting) {
            case DRIFT -> Words.say("may still move");
            case BAND -> Words.say("may swing, ±");
            case HORIZON -> Words.say("look ahead");
            case WINDOWS -> Words.say("windows looked at");
            case DWELL -> Words.say("holds for");
            case HUNTING -> Words.say("slowest hunting");
        };
    }

    static String name(SettleKind kind) {
        return switch (kind) {
            case GAS -> Words.say("Gas pressure");
            case AIR -> Words.say("Air temperature");
            case STACK -> Words.say("Stack temperature");
        };
    }

    /**
     * Shows what holds now.
     *
     * @param chosen gets the settings that are to hold from now on
     */
    void open(SettingsTyped now, Consumer<SettleChoices> chosen) {
        typed = now;
        then = chosen;
        texts.clear();
        kinds.removeAll();
        List<SettleKind> all = now.kinds();
        kinds.setLayout(
                new MigLayout("insets 0, fill, gapx 8", "[grow,fill,sg]".repeat(Math.max(1, all.size())), "[fill]"));
        for (SettleKind one : all) {
            kinds.add(new KindButton(one), "wmin 40");
            for (Setting setting : Setting.values()) {
                Place place = new Place(one, setting);
                texts.put(place, now.now(place));
            }
        }
        setVisible(true);
        all.stream().findFirst().ifPresent(this::showKind);
        revalidate();
        focus(Setting.DRIFT);
    }

    /** The kind of channel that is shown. */
    SettleKind kind() {
        return kind;
    }

    /** Shows the settings of another kind of channel; of one that the job has not, nothing changes. */
    void kind(SettleKind wanted) {
        SettingsTyped now = typed;
        if (now != null && now.kinds().contains(wanted)) {
            showKind(wanted);
        }
    }

    /** Shows what was typed in another pane. */
    void goOn(SettingsPane before) {
        texts.putAll(before.texts);
        showKind(before.kind);
    }

    /** Later, or the letter of the key that asked would be the first in the field. */
    private void focus(Setting setting) {
        EventQueue.invokeLater(() -> field(setting).requestFocusInWindow());
    }

    JTextField field(Setting setting) {
        return line(setting).field();
    }

    private Line line(Setting setting) {
        Line line = lines.get(setting);
        if (line == null) {
            throw new IllegalStateException("no field for " + setting);
        }
        return line;
    }

    private void showKind(SettleKind shown) {
        SettingsTyped now = typed;
        if (now == null) {
            return;
        }
        kind = shown;
        filling = true;
        for (Setting setting : Setting.values()) {
            Place place = new Place(shown, setting);
            JTextField field = field(setting);
            field.setText(texts.getOrDefault(place, ""));
            String unit = now.unit(place);
            line(setting).unit().setText(unit);
            String name = name(shown) + ", " + name(setting) + ", " + unit;
            field.getAccessibleContext().setAccessibleName(name);
        }
        filling = false;
        look(now);
    }

    private void typed(Setting setting) {
        SettingsTyped now = typed;
        if (!filling && now != null) {
            texts.put(new Place(kind, setting), field(setting).getText());
            look(now);
        }
    }

    /** Says at each field what is wrong with it or, where nothing is, what the job began with. */
    private void look(SettingsTyped now) {
        read = now.read(texts);
        for (Setting setting : Setting.values()) {
            Place place = new Place(kind, setting);
            String wrong = read.problems().get(place);
            String planned = now.planned(place);
            String usual = planned.isEmpty()
                    ? Words.say("the job began with none")
                    : Words.say("the job began with {0}", planned + " " + now.unit(place));
            String words = wrong == null ? usual : Words.told(wrong);
            line(setting).note().say(words, wrong != null);
            field(setting).getAccessibleContext().setAccessibleDescription(words);
        }
        use.setEnabled(read.problems().isEmpty());
        repaint();
    }

    private void asTheJobBegan() {
        SettingsTyped now = typed;
        if (now != null) {
            texts.replaceAll((place, text) -> now.planned(place));
            showKind(kind);
        }
        focus(Setting.DRIFT);
    }

    private void use() {
        if (read.problems().isEmpty()) {
            then.accept(read.choices());
            return;
        }
        Place wrong = read.problems().keySet().stream()
                .min(Comparator.comparing((Place p) -> p.kind() != kind)
                        .thenComparing(Place::kind)
                        .thenComparing(Place::setting))
                .orElseThrow();
        showKind(wrong.kind());
        focus(wrong.setting());
    }

    /** Fonts and colours after a change of theme. */
    void restyle() {
        title.setFont(look.semiBold(Look.LABEL));
        title.setForeground(look.theme().ink());
        keys.setFont(look.regular(Look.BODY));
        keys.setForeground(look.theme().ink2());
        lines.values().forEach(line -> {
            for (JLabel label : List.of(line.name(), line.unit())) {
                label.setFont(look.regular(Look.BODY));
                label.setForeground(look.theme().ink());
            }
            line.field().setFont(look.regular(Look.NAME));
            InlineRow.style(line.field(), look);
        });
        repaint();
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        graphics.setColor(look.theme().sheet());
        graphics.fillRect(0, 0, getWidth(), getHeight());
    }

    /** One setting. */
    private record Line(JLabel name, JTextField field, JLabel unit, FieldNote note) {}

    /** A kind of channel; filled while its settings are shown, and it says where something of it is wrong. */
    private final class KindButton extends PlainButton {
        private final SettleKind of;

        KindButton(SettleKind of) {
            super(SettingsPane.this.look, name(of), () -> {
                showKind(of);
                focus(Setting.DRIFT);
            });
            this.of = of;
        }

        @Override
        boolean filled() {
            return of == kind;
        }

        @Override
        String said() {
            boolean wrong = read.problems().keySet().stream().anyMatch(p -> p.kind() == of);
            return wrong ? Words.say("{0}: not possible", super.said()) : super.said();
        }
    }
}
