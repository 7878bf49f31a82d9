package settlemark.ui;

import java.awt.Color;
import java.awt.EventQueue;
import java.util.function.Supplier;
import javax.swing.JPanel;
import org.jspecify.annotations.Nullable;
import settlemark.session.RecordForm;

/** Paper and units of the record, each a button that goes to the next; kept in the workspace for the records after it. */
final class RecordFormRow extends JPanel {
    private final transient Look look;
    private final WordButton paper;
    private final WordButton units;
    private RecordForm form = RecordForm.DEFAULT;
    private transient @Nullable DesktopHost host;

    RecordFormRow(Look look) {
        super(null);
        this.look = look;
        setOpaque(false);
        paper = new Two(look, Words.say("Paper"), this::paperWords, () -> keep(new RecordForm(next(), form.units())));
        units = new Two(
                look, Words.say("Units on it"), this::unitWords, () -> keep(new RecordForm(form.paper(), after())));
        add(paper);
        add(units);
        named();
    }

    /** Asks where the form is kept what it is. */
    void of(DesktopHost newHost) {
        host = newHost;
        newHost.recordForm(now -> EventQueue.invokeLater(() -> is(now)));
    }

    private void is(RecordForm now) {
        form = now;
        named();
        repaint();
    }

    private void named() {
        paper.getAccessibleContext().setAccessibleName(Words.say("Paper") + ": " + paperWords());
        units.getAccessibleContext().setAccessibleName(Words.say("Units on it") + ": " + unitWords());
    }

    private String paperWords() {
        return switch (form.paper()) {
            case A4 -> "A4";
            case LETTER -> Words.say("Letter");
        };
    }

    private String unitWords() {
        return switch (form.units()) {
            case JOB -> Words.say("as the job");
            case US -> "inH\u2082O, \u00b0F";
            case SI -> "Pa, \u00b0C";
        };
    }

    private RecordForm.Paper next() {
        return form.paper() == RecordForm.Paper.A4 ? RecordForm.Paper.LETTER : RecordForm.Paper.A4;
    }

    private RecordForm.Units after() {
        RecordForm.Units[] all = RecordForm.Units.values();
        return all[(form.units().ordinal() + 1) % all.length];
    }

    private void keep(RecordForm chosen) {
        DesktopHost kept = host;
        if (kept != null) {
            RecordForm before = form;
            is(chosen);
            kept.keepRecordForm(chosen, why -> EventQueue.invokeLater(() -> is(before)));
        }
    }

    @Override
    public void doLayout() {
        int gap = look.ipx(6);
        int half = (getWidth() - gap) / 2;
        paper.setBounds(0, 0, half, getHeight());
        units.setBounds(half + gap, 0, getWidth() - half - gap, getHeight());
    }

    /** What it is of, and under it what is chosen. */
    private static final class Two extends WordButton {
        private final String what;
        private final transient Supplier<String> chosen;

        Two(Look look, String what, Supplier<String> chosen, Runnable pressed) {
            super(look, pressed);
            this.what = what;
            this.chosen = chosen;
        }

        @Override
        void words(Pen pen, Color ink, Color second) {
            double room = getWidth() - look.px(26);
            double middle = getHeight() / 2.0;
            pen.text(
                    Fitted.words(what, look.regular(Look.AXIS), room),
                    look.regular(Look.AXIS),
                    second,
                    look.px(14),
                    middle - look.px(5));
            pen.text(
                    Fitted.words(chosen.get(), look.semiBold(Look.BODY), room),
                    look.semiBold(Look.BODY),
                    ink,
                    look.px(14),
                    middle + look.px(14));
        }
    }
}
