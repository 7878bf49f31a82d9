package settlemark.ui;

import java.util.ArrayList;
import java.util.List;

/** What can be done with a stored session. */
final class ReviewChoices {
    private ReviewChoices() {}

    /** @param tight there is little room for the hint */
    static Choice primary(boolean open, boolean playing, int pace, boolean tight) {
        if (!open) {
            return Choice.no(Deed.PRIMARY, Words.say("Play"), Words.say("choose a session first"));
        }
        String hint = tight ? Words.say("{0} times; X", pace) : Words.say("{0} times as fast; X changes it", pace);
        return Choice.of(Deed.PRIMARY, playing ? Words.say("Stop") : Words.say("Play"), hint);
    }

    /** @param narrow there is no room for what goes back: its key does */
    static List<Choice> others(boolean open, boolean laid, boolean asked, boolean narrow) {
        List<Choice> choices = new ArrayList<>();
        choices.add(Choice.of(Deed.FIND, Words.say("Sessions")));
        if (open) {
            if (!narrow) {
                choices.add(Choice.of(Deed.READING_BEFORE, Words.say("\u2039 reading")));
            }
            choices.add(Choice.of(Deed.READING_NEXT, Words.say("reading \u203a")));
            choices.add(Choice.of(Deed.GAP_NEXT, Words.say("Gap \u203a")));
            choices.add(Choice.of(Deed.LAY_OVER, laid ? Words.say("Take off") : Words.say("Lay over")));
            choices.add(Choice.of(Deed.WHAT_IF, asked ? Words.say("As it was") : Words.say("What if")));
            choices.add(Choice.of(Deed.EXPORT_VIEW, Words.say("Export")));
            if (!narrow) {
                choices.add(Choice.of(Deed.JUDGE, Words.say("Accept")));
            }
        }
        choices.add(Choice.of(Deed.NOW, Words.say("Back")));
        return choices;
    }

    static List<KeyList.Line> keys() {
        return Deed.of(Deed.Place.REVIEW).stream()
                .filter(d -> d != Deed.PRIMARY)
                .map(d -> new KeyList.Line(d.label(), d == Deed.NOW ? Words.say("back, step by step") : d.words()))
                .toList();
    }
}
