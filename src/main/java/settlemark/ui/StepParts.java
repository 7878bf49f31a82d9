package settlemark.ui;

import java.awt.Font;
import java.util.ArrayList;
import java.util.List;
import settlemark.chart.Mark;
import settlemark.job.StepKind;
import settlemark.job.StepState;
import settlemark.job.Verdict;
import settlemark.measure.Role;
import settlemark.settle.StageReading;

/** The parts of a step in the head of its column: adjusted, cap on, as left; or the verdicts of what was read. */
final class StepParts {
    /** @param words with the value, where there is one */
    record Part(Mark mark, String words) {
        @Override
        public String toString() {
            return "; " + words;
        }
    }

    private StepParts() {}

    static List<Part> of(Scene scene) {
        StepState open = scene.open();
        List<Part> parts = new ArrayList<>();
        if (open.step().kind() == StepKind.LEFT && !open.done()) {
            boolean adjusting = scene.adjusting();
            parts.add(part(
                    scene,
                    adjusting ? Mark.NOW : Mark.INSIDE,
                    adjusting ? Words.say("adjusting") : Words.say("adjusted"),
                    "adjusted"));
            parts.add(new Part(
                    open.reading("left").isPresent() ? Mark.INSIDE : adjusting ? Mark.NOT_TAKEN : Mark.NOW,
                    Words.say("cap on")));
            parts.add(part(
                    scene,
                    open.reading("left").isPresent() ? Mark.INSIDE : Mark.NOT_TAKEN,
                    Words.say("as left"),
                    "left"));
            return parts;
        }
        for (Verdict verdict : open.verdicts()) {
            parts.add(new Part(
                    VerdictBox.of(verdict.outcome()),
                    Words.told(verdict.subject()) + " "
                            + Words.told(verdict.outcome().word()) + " "
                            + VerdictBox.range(
                                    verdict.limit().lower(), verdict.limit().upper())));
        }
        if (parts.isEmpty() && open.done()) {
            parts.add(new Part(VerdictBox.of(open), VerdictBox.word(open)));
        }
        return parts;
    }

    private static Part part(Scene scene, Mark mark, String words, String purpose) {
        String value = scene.open()
                .reading(purpose)
                .flatMap((StageReading r) -> r.channel(Role.MANIFOLD))
                .map(c -> " " + Numbers.fixed(c.value(), CellValues.decimals(Role.MANIFOLD, scene.snapshot())))
                .orElse("");
        return new Part(mark, words + value);
    }

    /** Draws the parts against the right edge, as many of the last as fit. */
    static void draw(Pen pen, List<Part> parts, double left, double right, double baseline) {
        double size = pen.look.px(18);
        double x = right;
        for (int i = parts.size() - 1; i >= 0; i--) {
            Part part = parts.get(i);
            Font font = part.mark == Mark.NOW ? pen.look.semiBold(Look.BODY + 1) : pen.look.regular(Look.BODY + 1);
            double width = size + pen.look.px(8) + Look.width(part.words, font);
            if (x - width < left) {
                return;
            }
            boolean open = part.mark == Mark.NOT_TAKEN;
            pen.text(
                    part.words,
                    font,
                    open ? pen.theme().ink2() : pen.theme().ink(),
                    x - width + size + pen.look.px(8),
                    baseline - 1);
            part.mark.draw(pen.g, x - width, baseline - pen.look.px(15), size, pen.theme());
            x -= width + pen.look.px(24);
        }
    }
}
