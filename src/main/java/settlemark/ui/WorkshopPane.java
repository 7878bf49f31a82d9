package settlemark.ui;

import java.awt.Color;
import java.awt.Component;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;

/** The profile workshop: frames and what their bytes mean at the left, the profile's text at the right. */
final class WorkshopPane extends FramePane {
    private static final double TEXT_SHARE = 0.36;
    private final StepBar step;
    private final FrameStack stack;
    private final JPanel form = new JPanel(new MigLayout("insets 4 16 8 16, fillx", "[grow,fill]"));
    final JTextField name = new JTextField();
    final JTextField kind = new JTextField();
    final JTextField scale = new JTextField();
    final JTextField unit = new JTextField();
    private final DraftText text;
    private final InlineRow inline;

    WorkshopPane(
            Look look,
            Consumer<Deed> perform,
            Consumer<FrameStack.Picked> picked,
            Consumer<String> edited,
            Runnable entered) {
        super(look, Deed.Place.WORKSHOP, Words.say("profile workshop"), perform);
        step = new StepBar(look);
        step.plain(true);
        stack = new FrameStack(look, picked);
        text = new DraftText(look, edited);
        inline = new InlineRow(look);
        field(Words.say("Name of the field"), name, entered);
        field(Words.say("Type: int, uint or float, and le for the low byte first"), kind, entered);
        field(Words.say("Scale"), scale, entered);
        field(Words.say("Unit, UCUM"), unit, entered);
        form.setOpaque(false);
        between(step, inline, stack, form, text);
        restyle();
    }

    private void field(String words, JTextField field, Runnable entered) {
        JLabel label = new FittedLabel(words.contains(":") ? words.substring(0, words.indexOf(':')) : words);
        label.setLabelFor(field);
        label.setFont(look.regular(Look.AXIS));
        label.setForeground(look.theme().ink2());
        field.getAccessibleContext().setAccessibleName(words);
        field.setToolTipText(words);
        field.addActionListener(e -> entered.run());
        JPanel column = new JPanel(new MigLayout("insets 0, wrap 1, gapy 2, fillx", "[grow,fill]"));
        column.setOpaque(false);
        column.add(label);
        column.add(field, "h " + look.ipx(38) + "!");
        form.add(column, "growx");
    }

    void restyle() {
        for (JTextField field : List.of(name, kind, scale, unit)) {
            field.setFont(look.regular(Look.NAME - 1));
            InlineRow.style(field, look);
        }
        text.restyle();
        inline.restyle();
        repaint();
    }

    /** What is typed of a field, by the names under which it is kept. */
    Map<String, JTextField> fields() {
        return Map.of("name", name, "kind", kind, "scale", scale, "unit", unit);
    }

    FrameStack stack() {
        return stack;
    }

    DraftText text() {
        return text;
    }

    InlineRow inline() {
        return inline;
    }

    @Override
    List<Component> underKeys() {
        return List.of(stack, form, text);
    }

    @Override
    Color ground() {
        return look.theme().sheet();
    }

    void say(String words, String told) {
        title().say(false, Words.say("Profile workshop"));
        step.show(
                words,
                Words.say("A profile describes bytes only. Nothing is sent to a device while the workshop is open."),
                told);
        revalidate();
    }

    @Override
    public void doLayout() {
        int width = getWidth();
        int y = layHead();
        int stepHeight = step.heightFor(width);
        step.setBounds(0, y, width, stepHeight);
        y += stepHeight;
        int bottom = inline.above(layFoot(), width);
        int right = (int) (width * TEXT_SHARE);
        int high = Math.max(1, bottom - y);
        int low = Math.min(look.ipx(82), high / 2);
        stack.setBounds(0, y, width - right - 2, high - low);
        form.setBounds(0, y + high - low, width - right - 2, low);
        text.setBounds(width - right, y, right, high);
        layKeys(y, bottom);
    }
}
