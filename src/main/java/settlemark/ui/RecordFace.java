package settlemark.ui;

import java.awt.Color;
import java.awt.Font;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import javax.accessibility.AccessibleRole;
import javax.swing.JLabel;
import javax.swing.JTextField;
import org.jspecify.annotations.Nullable;
import settlemark.chart.Mark;
import settlemark.job.JobPicture;
import settlemark.job.StepKind;
import settlemark.job.StepState;

/** The record before it is handed over: its first page, what is missing, whose work it is, and then where it lies. */
final class RecordFace extends Face {
    private static final double SIDE = 320;
    private static final double SIDE_TIGHT = 270;
    private final RecordPage page;
    private final Missing missing;
    private final JLabel label = new FittedLabel(Words.say("Name of who did the work"));
    private final JTextField name = new JTextField();
    private final RecordFormRow form;

    RecordFace(Look look, Consumer<String> person) {
        super(look, Words.say("record"));
        page = new RecordPage(look);
        missing = new Missing(look);
        label.setLabelFor(name);
        name.getAccessibleContext().setAccessibleName(label.getText());
        name.addActionListener(e -> {
            if (!name.getText().isBlank()) {
                person.accept(name.getText().strip());
            }
        });
        add(page);
        add(missing);
        form = new RecordFormRow(look);
        add(label);
        add(name);
        add(form);
        restyle();
    }

    @Override
    int neededWidth() {
        return look.ipx(880);
    }

    JTextField name() {
        return name;
    }

    RecordFormRow form() {
        return form;
    }

    @Override
    void show(Scene scene, boolean digits) {
        page.show(scene);
        missing.show(scene);
        boolean asked = scene.live() || !scene.job().person().isBlank();
        label.setVisible(asked);
        name.setVisible(asked);
        form.setVisible(scene.live());
        name.setEditable(scene.live());
        if (!name.isFocusOwner()
                && !name.getText().equals(scene.job().person())
                && !scene.job().person().isBlank()) {
            name.setText(scene.job().person());
        }
    }

    @Override
    void restyle() {
        label.setFont(look.semiBold(Look.BODY));
        label.setForeground(look.theme().ink());
        name.setFont(look.regular(Look.NAME));
        InlineRow.style(name, look);
    }

    @Override
    public void doLayout() {
        int margin = look.ipx(16);
        int side = look.ipx(look.tight() ? SIDE_TIGHT : SIDE);
        int left = getWidth() - side;
        page.setBounds(margin, look.ipx(10), left - 2 * margin, getHeight() - look.ipx(10));
        label.setBounds(left, look.ipx(8), side - margin, look.ipx(26));
        name.setBounds(left, look.ipx(36), side - margin, Math.max(look.ipx(46), 40));
        int below = look.ipx(form.isVisible() ? 154 : 94);
        form.setBounds(left - WordButton.ringPx(), look.ipx(90), side - margin + 2 * WordButton.ringPx(), look.ipx(56));
        missing.setBounds(left, below, side - margin, getHeight() - below);
    }

    /** What is missing, or what was written. */
    private static final class Missing extends Painted {
        private static final String SEALED_LATER = Words.key(
                "Sealed when this window is closed: until then the session goes on, and a step can be done again.");

        private List<StepState> steps = List.of();
        private List<String> picture = List.of();
        private RecordState record = RecordState.NONE;
        private @Nullable String person;

        Missing(Look look) {
            super(look, AccessibleRole.LIST);
        }

        void show(Scene scene) {
            List<StepState> now = scene.job().missing().stream()
                    .filter(s -> s.step().kind() != StepKind.RECORD)
                    .toList();
            if (!now.equals(steps)
                    || !scene.record().equals(record)
                    || !scene.job().person().equals(person)) {
                steps = now;
                record = scene.record();
                person = scene.job().person();
                picture = JobPicture.of(scene.job()).stream().map(Words::told).toList();
                sentence(heading() + ": " + String.join("; ", lines()));
                repaint();
            }
        }

        private String heading() {
            if (!record.files().isEmpty()) {
                return Words.say("The record is written");
            }
            return record.failure().isEmpty()
                    ? Words.say("Before it is complete")
                    : Words.say("The record could not be written");
        }

        private List<String> lines() {
            List<String> lines = new ArrayList<>();
            record.files().forEach(f -> lines.add(f.toString()));
            if (!record.files().isEmpty()) {
                lines.add(Words.told(SEALED_LATER));
            }
            if (!record.failure().isEmpty()) {
                lines.add(Words.told(record.failure()));
            }
            if (record.files().isEmpty()) {
                steps.forEach(s -> lines.add(Words.told(s.step().title()) + ": " + VerdictBox.word(s)));
            }
            return lines;
        }

        @Override
        void draw(Pen pen) {
            pen.fit(heading(), look.semiBold(Look.LABEL - 2), pen.theme().ink(), 0, look.px(26), getWidth());
            double y = look.px(38);
            pen.line(pen.theme().rule(), 1.4, 0, y, getWidth(), y);
            y += look.px(26);
            if (!record.files().isEmpty()) {
                files(pen, y);
                return;
            }
            if (!record.failure().isEmpty()) {
                y = pen.paragraph(
                        Words.told(record.failure()),
                        look.semiBold(Look.BODY),
                        pen.theme().fault(),
                        0,
                        y,
                        getWidth());
            }
            boolean named = person != null && !person.isBlank();
            item(
                    pen,
                    y,
                    named ? Mark.INSIDE : Mark.NOT_TAKEN,
                    Words.say("Name of the person"),
                    named ? String.valueOf(person) : Words.say("type it above, then Enter"));
            y += look.px(50);
            // The last line says how many more there are, where not all have room.
            int most = Math.max(1, (int) ((getHeight() - y + look.px(28)) / look.px(50)));
            int shown = steps.size() <= most ? steps.size() : most - 1;
            for (StepState step : steps.subList(0, shown)) {
                item(pen, y, VerdictBox.of(step), Words.told(step.step().title()), VerdictBox.word(step));
                y += look.px(50);
            }
            if (shown < steps.size()) {
                item(pen, y, Mark.NOT_TAKEN, Words.say("and {0} more", steps.size() - shown), Words.say("not taken"));
                return;
            }
            if (steps.isEmpty()) {
                item(pen, y, Mark.INSIDE, Words.say("All steps are taken"), Words.say("nothing is missing"));
                y += look.px(50);
            }
            Font small = look.regular(Look.AXIS);
            for (String words : picture) {
                double space = getHeight() - small.getSize2D() * 0.25 - y;
                int room = space < 0 ? 0 : (int) (space / Pen.lineHeight(small)) + 1;
                for (String line : room > 0 ? Fitted.lines(words, small, getWidth(), room) : List.<String>of()) {
                    pen.fit(line, small, pen.theme().ink2(), 0, y, getWidth());
                    y += Pen.lineHeight(small);
                }
                y += look.px(4);
            }
        }

        private void item(Pen pen, double y, Mark mark, String words, String under) {
            mark.draw(pen.g, 0, y - look.px(8), look.px(24), pen.theme());
            double x = look.px(36);
            pen.fit(words, look.semiBold(Look.NAME - 2), pen.theme().ink(), x, y + look.px(2), getWidth() - x);
            pen.fit(under, look.regular(Look.AXIS), pen.theme().ink2(), x, y + look.px(20), getWidth() - x);
        }

        private void files(Pen pen, double from) {
            double y = from;
            for (Path file : record.files()) {
                Path lastPart = file.getFileName();
                String last = lastPart == null ? file.toString() : lastPart.toString();
                Mark.INSIDE.draw(pen.g, 0, y - look.px(16), look.px(20), pen.theme());
                y = broken(pen, last, look.semiBold(Look.BODY), pen.theme().ink(), y) + look.px(4);
            }
            Path folder = record.files().get(0).toAbsolutePath().getParent();
            y = broken(
                    pen,
                    folder == null ? "" : folder.toString(),
                    look.regular(Look.AXIS),
                    pen.theme().ink2(),
                    y);
            pen.paragraph(
                    Words.told(SEALED_LATER),
                    look.regular(Look.BODY),
                    pen.theme().ink(),
                    look.px(30),
                    y + look.px(14),
                    getWidth() - look.px(30));
        }

        /** A name or a path may be broken after each of its parts. */
        private double broken(Pen pen, String words, Font font, Color color, double from) {
            String rest = words.replaceAll("([-/\\\\])", "$1 ");
            double y = from;
            StringBuilder line = new StringBuilder();
            for (String part : rest.split(" ", -1)) {
                if (!line.isEmpty() && Look.width(line + part, font) > getWidth() - look.px(30)) {
                    pen.text(line.toString(), font, color, look.px(30), y);
                    y += Pen.lineHeight(font);
                    line.setLength(0);
                }
                line.append(part);
            }
            pen.text(line.toString(), font, color, look.px(30), y);
            return y + Pen.lineHeight(font);
        }
    }
}
