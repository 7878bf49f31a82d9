package settlemark.ui;

import javax.accessibility.AccessibleRole;
import settlemark.chart.Mark;
import settlemark.job.Outcome;
import settlemark.job.ShownRange;
import settlemark.job.StepState;
import settlemark.job.Verdict;

/** One verdict as a box: filled with a check, half filled, or crossed; the sentence has its numbers and its source. */
final class VerdictBox extends Painted {
    private Mark mark = Mark.NOT_TAKEN;

    VerdictBox(Look look) {
        super(look, AccessibleRole.LABEL);
    }

    void show(Mark newMark, String newSentence) {
        sentence(newSentence);
        setToolTipText(newSentence);
        if (newMark != mark) {
            mark = newMark;
            repaint();
        }
    }

    /** The mark of a step: its worst verdict, or whether it was done at all. */
    static Mark of(StepState step) {
        return switch (step.progress()) {
            case TAKEN -> step.outcome().map(VerdictBox::of).orElse(Mark.INSIDE);
            case SKIPPED -> Mark.SKIPPED;
            case WAITING, OPEN, ARMED -> Mark.NOT_TAKEN;
        };
    }

    static Mark of(Outcome outcome) {
        return switch (outcome) {
            case INSIDE -> Mark.INSIDE;
            case CLOSE_INSIDE, CLOSE_OUTSIDE -> Mark.CLOSE;
            case OUTSIDE -> Mark.OUTSIDE;
        };
    }

    /** The mark of a step in a word or two. */
    static String word(StepState step) {
        return switch (step.progress()) {
            case TAKEN -> step.outcome().map(Outcome::word).map(Words::told).orElse(Words.say("done"));
            case SKIPPED -> Words.say("skipped: {0}", step.skipReason());
            case WAITING, OPEN, ARMED -> Words.say("not taken");
        };
    }

    /** For instance {@code manifold 3.49 ±0.04 inH₂O: inside 3.15 to 3.85 (plate)}. */
    static String sentence(Verdict verdict, int decimals) {
        return Words.say(
                "{0} {1} {2} {3}: {4}, limit {5} ({6})",
                Words.told(verdict.subject()),
                Numbers.fixed(verdict.value(), decimals),
                Numbers.plusMinus(verdict.expandedUncertainty(), decimals),
                verdict.limit().unit().symbol(),
                Words.told(verdict.outcome().word()),
                range(verdict.limit().lower(), verdict.limit().upper()),
                Words.told(verdict.limit().source()));
    }

    /** A range in words; one-sided where the other end is infinite. */
    static String range(double lower, double upper) {
        ShownRange read = ShownRange.of(lower, upper);
        if (Double.isInfinite(lower)) {
            return Words.say("at most {0}", Numbers.plain(read.upper()));
        }
        if (Double.isInfinite(upper)) {
            return Words.say("at least {0}", Numbers.plain(read.lower()));
        }
        return Words.say("{0} to {1}", Numbers.plain(read.lower()), Numbers.plain(read.upper()));
    }

    @Override
    void draw(Pen pen) {
        double size = Math.min(getWidth(), getHeight());
        mark.draw(pen.g, (getWidth() - size) / 2, (getHeight() - size) / 2, size, pen.theme());
    }
}
