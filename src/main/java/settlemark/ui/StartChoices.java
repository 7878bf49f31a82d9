package settlemark.ui;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import settlemark.measure.Role;
import settlemark.session.DeviceView;
import settlemark.session.Reception;

/** What can be done before there is a session. */
final class StartChoices {
    private StartChoices() {}

    /** Every key that does something here, those of the faces' own boxes among them. */
    static List<KeyList.Line> keys() {
        return List.of(
                new KeyList.Line(Words.say("Space"), Words.say("the large button")),
                new KeyList.Line(Words.say("Tab, Shift Tab"), Words.say("to the next box, to the one before")),
                new KeyList.Line(Words.say("Enter"), Words.say("open the box, choose in a list")),
                new KeyList.Line(Words.say("Up, Down"), Words.say("in a list, and between the rows")),
                new KeyList.Line(Words.say("1 to 3"), Words.say("the numbered choice")),
                new KeyList.Line("L", Deed.LOOK.words()),
                new KeyList.Line("O", Deed.PORT.words()),
                new KeyList.Line("P", Deed.PAIR.words()),
                new KeyList.Line(Words.say("Left, Right"), Words.say("column to the left, to the right")),
                new KeyList.Line(Words.say("Esc"), Words.say("leave the list, the question or the field")),
                new KeyList.Line("T", Deed.THEME.words()),
                new KeyList.Line("W", Deed.WORKSHOP.words()),
                new KeyList.Line("Z", Deed.SIZE.words()),
                new KeyList.Line(Deed.LANGUAGE.label(), Deed.LANGUAGE.words()),
                new KeyList.Line("F10", Deed.MENU.words()),
                new KeyList.Line(Deed.KEYS.label(), Deed.KEYS.words()),
                new KeyList.Line(Words.say("Ctrl W"), Deed.CLOSE.words()));
    }

    static Choice primary(StartPage page, String plateProblem, SetUp setUp, boolean connecting) {
        return switch (page) {
            case FIRST -> Choice.of(Deed.PRIMARY, Words.say("Try the demo rig"));
            case PLATE ->
                plateProblem.isEmpty()
                        ? Choice.of(Deed.PRIMARY, Words.say("The plate says so"), Words.say("then the probes"))
                        : Choice.no(Deed.PRIMARY, Words.say("The plate says so"), plateProblem);
            case PROBES -> start(setUp, connecting);
        };
    }

    private static Choice start(SetUp setUp, boolean connecting) {
        String title = Words.say("Connect and start the job");
        if (connecting) {
            return Choice.no(Deed.PRIMARY, Words.say("Connecting"), Words.say("a few seconds"));
        }
        List<Role> without = setUp.without();
        if (!without.isEmpty()) {
            String words = without.stream().map(Role::word).map(Words::told).collect(Collectors.joining(", "));
            return Choice.no(Deed.PRIMARY, title, Words.say("the plan needs a probe for: {0}", words));
        }
        int probes = setUp.choice().setups().size();
        return Choice.of(Deed.PRIMARY, title, probes == 1 ? Words.say("one probe") : Words.say("{0} probes", probes));
    }

    static List<Choice> others(StartPage page, SetUp setUp, boolean pairing) {
        List<Choice> choices = new ArrayList<>();
        if (page != StartPage.FIRST) {
            choices.add(Choice.of(Deed.LEFT, "\u2039"));
            choices.add(Choice.of(Deed.RIGHT, "\u203a"));
        }
        if (page == StartPage.PROBES) {
            choices.add(Choice.of(Deed.LOOK, Words.say("Look again")));
            choices.add(Choice.of(Deed.PORT, Words.say("Name a port")));
            choices.add(
                    pairing
                            ? Choice.no(Deed.PAIR, Words.say("Pair"), Words.say("going on"))
                            : pairable(setUp).isEmpty()
                                    ? Choice.no(Deed.PAIR, Words.say("Pair"), Words.say("none in reach"))
                                    : Choice.of(Deed.PAIR, Words.say("Pair")));
        }
        if (page == StartPage.FIRST || page == StartPage.PROBES) {
            choices.add(Choice.of(Deed.WORKSHOP, Words.say("Workshop")));
        }
        if (page == StartPage.FIRST) {
            choices.add(Choice.of(Deed.SIZE, Words.say("Size")));
            choices.add(Choice.of(Deed.LANGUAGE, Words.next().title()));
        }
        choices.add(Choice.of(Deed.THEME, Words.say("Light, dark")));
        return choices;
    }

    /** Bluetooth devices in reach that are not paired. */
    static List<DeviceView> pairable(SetUp setUp) {
        return setUp.devices().stream()
                .filter(d -> !SetUp.isWired(d) && d.probe().inReach())
                .filter(d -> !d.probe().reception().map(Reception::paired).orElse(false))
                .toList();
    }
}
