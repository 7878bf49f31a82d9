package settlemark.ui;

import java.awt.Font;
import java.util.List;
import javax.accessibility.AccessibleRole;
import settlemark.job.StepState;
import settlemark.settle.StageReading;

/** What the job found out about the open step, in one line at the foot of its face. */
final class Remark extends Painted {
    private String line = "";

    Remark(Look look) {
        super(look, AccessibleRole.LABEL);
        sentence(Words.say("no remark"));
    }

    void show(StepState step) {
        String now = of(step);
        sentence(now.isEmpty() ? Words.say("no remark") : now);
        setToolTipText(now.isEmpty() ? null : now);
        if (!now.equals(line)) {
            line = now;
            repaint();
        }
    }

    /** The newest remark; for a finished step also why it was taken by hand. */
    static String of(StepState step) {
        List<String> remarks = step.remarks();
        String last = remarks.isEmpty() ? "" : Words.told(remarks.get(remarks.size() - 1));
        String hand = step.reading()
                .filter(StageReading::byHand)
                .map(r -> Words.say("by hand: {0}", Words.told(r.handReason())))
                .orElse("");
        return last.isEmpty() || hand.isEmpty() ? last + hand : hand + "; " + last;
    }

    @Override
    void draw(Pen pen) {
        double room = getWidth() - look.px(12);
        double size = Look.BODY;
        while (size > Look.AXIS && Look.width(line, look.semiBold(size)) > room) {
            size -= 0.5;
        }
        Font font = look.semiBold(size);
        String text = line;
        while (Look.width(text, font) > room && text.contains(" ")) {
            text = text.substring(0, text.lastIndexOf(' ', text.length() - 3)) + " \u2026";
        }
        pen.text(text, font, pen.theme().ink(), look.px(4), getHeight() - look.px(9));
    }
}
