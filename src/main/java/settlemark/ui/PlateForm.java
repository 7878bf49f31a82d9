package settlemark.ui;

import java.awt.BorderLayout;
import java.awt.Color;
import java.awt.Graphics;
import java.awt.event.ActionEvent;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntConsumer;
import java.util.stream.Collectors;
import javax.swing.AbstractAction;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import net.miginfocom.swing.MigLayout;
import settlemark.job.Fuel;
import settlemark.job.JobPlan;
import settlemark.job.RatingPlate;

/**
 * The plate as it is copied from the appliance, before a job. No number stands in it beforehand: a customary number that
 * nobody has read off the plate would pass for the plate's.
 */
final class PlateForm extends JPanel {
    private final transient Look look;
    private final transient Runnable changed;
    private final transient Runnable entered;
    private final transient Runnable choosePlan;
    private final JPanel form =
            new JPanel(new MigLayout("insets 8 16 0 16, fillx", "[grow,fill,sg]24[grow,fill,sg]24[grow,fill,sg]"));
    private final PickList pick;
    private final LastPlate last;
    private final Map<String, JTextField> fields = new HashMap<>();
    private final transient PlateEntry entry;
    private final List<JLabel> labels = new ArrayList<>();
    private boolean filling;

    /**
     * @param entry what was typed before, and from now on
     * @param changed runs after each change
     * @param entered runs when Enter is pressed in a field
     * @param choosePlan opens the list of plans
     * @param visits knows the plates of former jobs
     */
    PlateForm(
            Look look,
            PlateEntry entry,
            Runnable changed,
            Runnable entered,
            Runnable choosePlan,
            LastPlate.Host visits) {
        super(new BorderLayout());
        this.look = look;
        this.entry = entry;
        this.changed = changed;
        this.entered = entered;
        this.choosePlan = choosePlan;
        pick = new PickList(look);
        last = new LastPlate(look, visits, this::take);
        form.setOpaque(false);
        add(form, BorderLayout.CENTER);
        getAccessibleContext().setAccessibleName(Words.say("rating plate and plan"));
    }

    PickList pick() {
        return pick;
    }

    Units units() {
        return entry.units();
    }

    /** Makes the fields that a plan asks for; what was typed stays. */
    void plan(JobPlan plan) {
        entry.plan(plan);
        rebuild();
    }

    String title() {
        return entry.text(PlateEntry.PLACE);
    }

    /** What is wrong or missing first, in words; empty where the plate is complete. */
    String problem() {
        return entry.problem();
    }

    Optional<RatingPlate> plate() {
        return entry.plate();
    }

    /** All that was typed, by the names of the fields. */
    Map<String, String> texts() {
        return entry.texts();
    }

    /** Puts back what was typed before. */
    void restore(Map<String, String> texts) {
        texts.forEach(entry::type);
        rebuild();
        changed.run();
    }

    /** A plate of a former job as what is typed; each number can be typed anew. */
    private void take(RatingPlate plate) {
        if (entry.plan().fuels().contains(plate.fuel())) {
            entry.fuel(plate.fuel());
        }
        restore(PlateTexts.of(plate, entry.units()));
    }

    /** What looks wrong in a plate that is complete, in words; empty where nothing does. */
    String doubts() {
        return plate().map(p -> p.doubts().stream().map(Words::told).collect(Collectors.joining(" ")))
                .orElse("");
    }

    /** Asks for the plate of the last job of this title. */
    void lookForLast() {
        last.look(title(), entry.plan());
    }

    /** Takes the last edit back, or does it again, also where the form was made anew since. */
    private void edit(boolean again) {
        (again ? entry.redo() : entry.undo()).flatMap(this::field).ifPresent(field -> {
            filling = true;
            fields.forEach((key, one) -> {
                if (!one.getText().strip().equals(entry.text(key))) {
                    one.setText(entry.text(key));
                }
            });
            filling = false;
            field.requestFocusInWindow();
            changed.run();
        });
    }

    private void undoable(JTextField field) {
        field.getInputMap().put(KeyStroke.getKeyStroke("ctrl Z"), "undo");
        field.getInputMap().put(KeyStroke.getKeyStroke("ctrl Y"), "redo");
        field.getActionMap().put("undo", new Edit(() -> edit(false)));
        field.getActionMap().put("redo", new Edit(() -> edit(true)));
    }

    private static final class Edit extends AbstractAction {
        private final transient Runnable then;

        Edit(Runnable then) {
            this.then = then;
        }

        @Override
        public void actionPerformed(ActionEvent event) {
            then.run();
        }
    }

    private void rebuild() {
        form.removeAll();
        fields.clear();
        labels.clear();
        form.add(column(entry.job(), true), "top");
        form.add(column(entry.gas(), false), "top");
        form.add(column(entry.air(), false), "top");
        form.revalidate();
        form.repaint();
    }

    private JPanel column(List<PlateEntry.Asked> asked, boolean first) {
        JPanel column = new JPanel(new MigLayout("insets 0, fillx, gapy 1, wrap 2", "[grow,fill][]"));
        column.setOpaque(false);
        if (first) {
            // The focus ring of a button stands outside of its box.
            String under = "span 2, h " + look.ipx(58) + "!, gapleft -" + WordButton.ringPx() + ", gapright -"
                    + WordButton.ringPx();
            column.add(choice(Words.say("Plan"), Words.told(entry.plan().title()), choosePlan), under);
            column.add(choice(Words.say("Gas"), Words.told(entry.fuel().words()), this::chooseFuel), under);
            column.add(choice(Words.say("Units"), Words.told(entry.units().title()), this::chooseUnits), under);
        }
        for (PlateEntry.Asked one : asked) {
            add(column, one);
        }
        if (first) {
            column.add(
                    last,
                    "span 2, hidemode 3, gaptop 8, h " + look.ipx(58) + "!, gapleft -" + WordButton.ringPx()
                            + ", gapright -" + WordButton.ringPx());
        }
        return column;
    }

    private void add(JPanel column, PlateEntry.Asked asked) {
        JLabel label = label(asked.label(), Look.AXIS);
        JTextField field = new JTextField(entry.text(asked.key()));
        label.setLabelFor(field);
        field.getAccessibleContext()
                .setAccessibleName(asked.label() + (asked.unit().isEmpty() ? "" : ", " + asked.unit()));
        field.setFont(look.regular(Look.NAME));
        // Or it would grow with what is typed, and push the others about.
        field.setColumns(6);
        InlineRow.style(field, look);
        field.getDocument().addDocumentListener(new Typed(() -> {
            if (!filling) {
                entry.type(asked.key(), field.getText());
                changed.run();
            }
        }));
        undoable(field);
        field.addActionListener(e -> entered.run());
        fields.put(asked.key(), field);
        column.add(label, "span 2, wmin 40");
        column.add(field, "h " + look.ipx(38) + "!, wmin " + look.ipx(80));
        column.add(label(asked.unit(), Look.BODY));
    }

    private JLabel label(String words, double size) {
        JLabel label = new FittedLabel(words);
        label.setFont(look.regular(size));
        label.setForeground(look.theme().ink2());
        labels.add(label);
        return label;
    }

    private WordButton choice(String what, String chosen, Runnable pressed) {
        WordButton button = new WordButton(look, pressed) {
            @Override
            void words(Pen pen, Color ink, Color second) {
                double room = getWidth() - look.px(34);
                pen.fit(what, look.regular(Look.AXIS), second, look.px(17), getHeight() / 2.0 - look.px(6), room);
                pen.fit(chosen, look.semiBold(Look.NAME), ink, look.px(17), getHeight() / 2.0 + look.px(15), room);
            }
        };
        button.getAccessibleContext().setAccessibleName(what + ": " + chosen);
        return button;
    }

    private void chooseFuel() {
        List<Fuel> fuels = entry.plan().fuels();
        choose(
                Words.say("Which gas does the plate name?"),
                fuels.stream().map(Fuel::words).map(Words::told).toList(),
                i -> entry.fuel(fuels.get(i)));
    }

    private void chooseUnits() {
        choose(
                Words.say("Which units is the job done in?"),
                Units.ALL.stream().map(Units::title).map(Words::told).toList(),
                i -> entry.units(Units.ALL.get(i)));
    }

    void choose(String question, List<String> titles, IntConsumer chosen) {
        remove(form);
        add(pick, BorderLayout.CENTER);
        pick.ask(
                question,
                titles.stream().map(t -> new PickList.Option(t, "")).toList(),
                i -> {
                    chosen.accept(i);
                    rebuild();
                    changed.run();
                },
                () -> {
                    remove(pick);
                    add(form, BorderLayout.CENTER);
                    revalidate();
                    repaint();
                    changed.run();
                });
        revalidate();
        repaint();
        changed.run();
        pick.choices().requestFocusInWindow();
    }

    /** Puts the cursor where the first text is missing. */
    void focusFirst() {
        entry.firstMissing().map(fields::get).ifPresent(JTextField::requestFocusInWindow);
    }

    Optional<JTextField> field(String key) {
        return Optional.ofNullable(fields.get(key));
    }

    void restyle() {
        pick.restyle();
        rebuild();
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        graphics.setColor(look.theme().sheet());
        graphics.fillRect(0, 0, getWidth(), getHeight());
    }
}
