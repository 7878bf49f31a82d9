package settlemark.ui;

import java.awt.EventQueue;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import settlemark.job.JobPlan;
import settlemark.job.PlanStep;
import settlemark.job.RatingPlate;
import settlemark.job.StepKind;
import settlemark.measure.Role;
import settlemark.profile.Profile;
import settlemark.session.DeviceList;
import settlemark.session.DeviceView;
import settlemark.session.JobStart;
import settlemark.session.ProbeAddress;
import settlemark.session.RoleChoice;

/** Turns what is found into pages, and what the person does into choices. Lives on the event thread and never waits. */
final class StartController {
    private static final int TOLD_LOOKS = 60;
    /** Between the end of a look and the next by itself. */
    private static final double REST_SECONDS = 4;
    /** Ages are said in whole seconds. */
    private static final int AGE_LOOKS = 10;

    private static final List<KeyList.Line> KEYS = List.of(
            new KeyList.Line("Space", "the large button"),
            new KeyList.Line("Tab, Shift Tab", "to the next box, to the one before"),
            new KeyList.Line("Enter", "open the box, choose in a list"),
            new KeyList.Line("Up, Down", "in a list, and between the rows"),
            new KeyList.Line("1 to 9", "the numbered choice"),
            new KeyList.Line("L", Deed.LOOK.words()),
            new KeyList.Line("O", Deed.PORT.words()),
            new KeyList.Line("P", Deed.PAIR.words()),
            new KeyList.Line("Left, Right", "column to the left, to the right"),
            new KeyList.Line("Esc", "leave the list, the question or the field"),
            new KeyList.Line("T", Deed.THEME.words()),
            new KeyList.Line("Ctrl W", Deed.CLOSE.words()));

    private final StartHost host;
    private final Look look;
    private final Runnable restyle;
    private final StartPane pane;
    private final ChoiceFace first;
    private final PlateForm plate;
    private final FoundFace found;
    private final SetUp setUp;
    private StartPage page = StartPage.FIRST;
    private DeviceList seen = new DeviceList(List.of(), List.of());
    private long seenAtNanos = System.nanoTime();
    private boolean looked;
    private boolean connecting;
    private boolean pairing;
    private String told = "";
    private int toldLooks;
    private int looks;

    StartController(Look look, StartHost host, Runnable restyle) {
        this.look = look;
        this.host = host;
        this.restyle = restyle;
        List<JobPlan> plans = host.plans();
        setUp = new SetUp(plans.get(0));
        pane = new StartPane(look, this::perform, this::open);
        first = new ChoiceFace(look, this::begin);
        plate = new PlateForm(look, this::show, this::entered, this::choosePlan);
        found = new FoundFace(look, this::chooseProbe, this::chooseRole, this::chooseAmongAll);
        found.pairing().whenLeft(this::show);
        plate.plan(setUp.plan());
        pane.page(StartPage.FIRST, first);
        pane.page(StartPage.PLATE, plate);
        pane.page(StartPage.PROBES, found);
        open(StartPage.FIRST);
    }

    StartPane pane() {
        return pane;
    }

    FoundFace found() {
        return found;
    }

    PlateForm plate() {
        return plate;
    }

    SetUp setUp() {
        return setUp;
    }

    StartPage page() {
        return page;
    }

    /** Looks at what was found since the last time. */
    void tick() {
        looks++;
        DeviceList now = host.finder().devices();
        boolean news = now != seen;
        if (news) {
            seen = now;
            seenAtNanos = System.nanoTime();
            setUp.found(now);
        }
        boolean rested = sinceSeconds() > REST_SECONDS || !looked;
        if (page == StartPage.PROBES
                && !connecting
                && !pairing
                && rested
                && !host.finder().isLooking()) {
            looked = true;
            host.finder().look();
        }
        if (toldLooks > 0 && --toldLooks == 0) {
            told = "";
            news = true;
        }
        if (news || looks % AGE_LOOKS == 0 && page == StartPage.PROBES) {
            show();
        }
    }

    private double sinceSeconds() {
        return (System.nanoTime() - seenAtNanos) / 1e9;
    }

    private void begin(int index) {
        if (index == 0) {
            tell("Preparing the demo rig");
            host.demo();
        } else if (index == 1) {
            open(StartPage.PLATE);
        }
    }

    private void open(StartPage newPage) {
        if (newPage == StartPage.PROBES && plate.plate().isEmpty()) {
            tell(plate.problem());
            return;
        }
        page = newPage;
        told = "";
        pane.open(page, setUp.plan(), plate.plate().isPresent());
        show();
        EventQueue.invokeLater(this::focus);
    }

    private void focus() {
        switch (page) {
            case FIRST -> first.focus(0);
            case PLATE -> plate.focusFirst();
            case PROBES -> pane.requestFocusInWindow();
        }
    }

    /** Enter in a field. */
    private void entered() {
        if (plate.plate().isPresent()) {
            open(StartPage.PROBES);
        } else {
            tell(plate.problem());
            plate.focusFirst();
        }
    }

    private void show() {
        boolean simulated = page != StartPage.FIRST && setUp.simulated();
        String what = plate.title().isEmpty() ? "Settlemark" : plate.title();
        switch (page) {
            case FIRST ->
                pane.say(
                        "How would you like to begin?",
                        "Everything is stored as it happens; nothing leaves this computer.",
                        told,
                        simulated,
                        "");
            case PLATE -> say(StepKind.PLATE, "Copy every number from the rating plate", simulated, what);
            case PROBES -> {
                found.show(setUp, plate.units(), host.finder().isLooking(), sinceSeconds());
                say(StepKind.PROBES, "Give each channel its probe", simulated, what);
            }
        }
        buttons();
    }

    private void say(StepKind kind, String words, boolean simulated, String what) {
        String caution = setUp.plan().steps().stream()
                .filter(s -> s.kind() == kind)
                .map(PlanStep::caution)
                .findFirst()
                .orElse("");
        pane.say(words, caution, told, simulated, what);
    }

    private void buttons() {
        pane.buttons()
                .show(
                        StartChoices.primary(page, plate.problem(), setUp, connecting),
                        List.of(),
                        StartChoices.others(page, setUp, host.finder().isLooking(), pairing));
        pane.buttons().primary().setVisible(page != StartPage.FIRST);
    }

    /** Does what a key or a button asks for. */
    void perform(Deed deed) {
        if (deed == Deed.NOW) {
            leave();
        } else if (deed == Deed.CLOSE) {
            host.close();
        } else if (deed == Deed.KEYS) {
            pane.keys(!pane.keysShown(), KEYS);
        } else if (!found.isAsking() && !plate.pick().isVisible()) {
            act(deed);
        }
    }

    private void act(Deed deed) {
        boolean probes = page == StartPage.PROBES && !connecting;
        switch (deed) {
            case PRIMARY -> primary();
            case THEME -> theme();
            case LEFT -> neighbour(-1);
            case RIGHT -> neighbour(1);
            case LOOK -> lookAgain(probes);
            case PORT -> namePort(probes);
            case PAIR -> pair(probes);
            case SCREW_UP -> move(-1);
            case SCREW_DOWN -> move(1);
            case TICK_1 -> number(0);
            case TICK_2 -> number(1);
            case TICK_3 -> number(2);
            default -> {
                // Keys of a job.
            }
        }
    }

    private void leave() {
        if (pane.inline().isVisible()) {
            pane.inline().leave();
            pane.requestFocusInWindow();
        } else if (pane.keysShown()) {
            pane.keys(false, KEYS);
        } else if (found.pick().isVisible()) {
            found.pick().leave();
        } else if (found.pairing().isVisible()) {
            found.pairing().answer("");
        } else if (plate.pick().isVisible()) {
            plate.pick().leave();
        } else {
            pane.requestFocusInWindow();
        }
    }

    private void neighbour(int by) {
        int at = page.ordinal() + by;
        if (at >= 0 && at < StartPage.values().length && !connecting) {
            open(StartPage.values()[at]);
        }
    }

    private void number(int index) {
        if (page == StartPage.FIRST && index < 2) {
            begin(index);
        } else if (page == StartPage.PROBES) {
            chooseProbe(setUp.roles().get(index));
        }
    }

    private void move(int by) {
        if (page == StartPage.FIRST) {
            first.focus(by);
        } else if (page == StartPage.PROBES) {
            int at = by > 0 ? -1 : 1;
            List<RoleRow> rows = found.rows();
            for (int i = 0; i < rows.size(); i++) {
                at = rows.get(i).box().isFocusOwner() ? i : at;
            }
            rows.get(Math.max(0, Math.min(rows.size() - 1, at + by))).box().requestFocusInWindow();
        }
    }

    private void primary() {
        Choice choice = StartChoices.primary(page, plate.problem(), setUp, connecting);
        if (page == StartPage.FIRST) {
            begin(0);
        } else if (!choice.available()) {
            List<String> missing = setUp.missing();
            tell(
                    page == StartPage.PROBES && !connecting && !missing.isEmpty()
                            ? missing.get(0) + ". Choose a probe for it, or a plan that needs less"
                            : choice.why());
            if (page == StartPage.PLATE) {
                plate.focusFirst();
            }
        } else if (page == StartPage.PLATE) {
            open(StartPage.PROBES);
        } else {
            start();
        }
    }

    private void start() {
        Optional<RatingPlate> copied = plate.plate();
        if (copied.isEmpty()) {
            open(StartPage.PLATE);
            return;
        }
        connecting = true;
        show();
        host.begin(
                new JobStart(
                        plate.title(),
                        setUp.plan(),
                        copied.get(),
                        plate.units().pressure(),
                        plate.units().temperature(),
                        setUp.choice().setups()),
                why -> EventQueue.invokeLater(() -> failed(why)));
    }

    private void failed(String why) {
        connecting = false;
        tell(why);
    }

    private void choosePlan() {
        List<JobPlan> plans = host.plans();
        plate.choose("Which plan?", plans.stream().map(JobPlan::title).toList(), i -> {
            setUp.plan(plans.get(i));
            plate.plan(plans.get(i));
            pane.open(page, setUp.plan(), plate.plate().isPresent());
        });
    }

    private void lookAgain(boolean possible) {
        if (possible) {
            host.finder().look();
            show();
        }
    }

    private void ask(String question, List<PickList.Option> options, java.util.function.IntConsumer chosen) {
        found.pick().ask(question, options, chosen, this::show);
        show();
        found.pick().choices().requestFocusInWindow();
    }

    private void chooseProbe(Role role) {
        List<RoleChoice.Place> offers = setUp.offers(role);
        if (offers.isEmpty()) {
            tell("Nothing in reach can be the " + role.word() + ": choose a profile for what is found, or name a port");
            return;
        }
        List<PickList.Option> options = new ArrayList<>();
        offers.forEach(place -> options.add(new PickList.Option(
                place.name() + ", " + place.what().label(),
                place.profile().name() + ", " + DeviceWords.place(place.address()) + had(place, role))));
        setUp.choice().of(role).ifPresent(p -> options.add(new PickList.Option("No probe", "")));
        ask("Which probe is the " + role.word() + "?", options, i -> {
            if (i < offers.size()) {
                setUp.give(role, offers.get(i));
            } else {
                setUp.free(role);
            }
            show();
            focusRow(role);
        });
    }

    /** Says so where it was this the last time. */
    private String had(RoleChoice.Place place, Role role) {
        return setUp.device(place.address())
                .flatMap(DeviceView::use)
                .map(u -> role == u.setup().roles().get(place.channel()) ? ", as the last time" : "")
                .orElse("");
    }

    private void focusRow(Role role) {
        found.rows().get(setUp.roles().indexOf(role)).box().requestFocusInWindow();
    }

    private void chooseRole(DeviceView device) {
        if (!device.probe().inReach()) {
            tell(device.health().map(h -> h.words()).orElse("It is not in reach"));
        } else if (!setUp.isReadable(device)) {
            chooseProfile(device);
        } else {
            chooseRoleOf(device);
        }
    }

    private void chooseRoleOf(DeviceView device) {
        List<Role> roles = new ArrayList<>();
        List<RoleChoice.Place> places = new ArrayList<>();
        List<PickList.Option> options = new ArrayList<>();
        for (Role role : setUp.roles()) {
            for (RoleChoice.Place place : RoleChoice.offered(device, setUp.byHand(device), role)) {
                roles.add(role);
                places.add(place);
                options.add(new PickList.Option(
                        Numbers.capital(role.word()) + " from " + place.what().label(),
                        place.profile().name()));
            }
        }
        options.add(new PickList.Option("Another profile", "the device is read by another one"));
        ask("What is " + DeviceWords.title(device) + " connected to?", options, i -> {
            if (i == places.size()) {
                chooseProfile(device);
            } else {
                setUp.give(roles.get(i), places.get(i));
                show();
                focusRow(roles.get(i));
            }
        });
    }

    private void chooseProfile(DeviceView device) {
        List<Profile> profiles = SetUp.suitable(host.profiles(), device.probe().address());
        ask(
                "By which profile is " + DeviceWords.title(device) + " read?",
                profiles.stream()
                        .map(p -> new PickList.Option(p.name(), p.id()))
                        .toList(),
                i -> {
                    setUp.profile(device, profiles.get(i));
                    chooseRoleOf(device);
                });
    }

    private void chooseAmongAll() {
        List<DeviceView> free = setUp.free();
        ask(
                "Which device?",
                free.stream()
                        .map(d -> new PickList.Option(
                                DeviceWords.title(d), DeviceWords.line(d, setUp.isReadable(d), sinceSeconds())))
                        .toList(),
                i -> chooseRole(free.get(i)));
    }

    private void namePort(boolean possible) {
        if (possible) {
            pane.inline().ask("Port, or ble: and the address", text -> {
                pane.requestFocusInWindow();
                ProbeAddress address = ProbeAddress.written(text);
                List<Profile> profiles = SetUp.suitable(host.profiles(), address);
                ask(
                        "By which profile is " + address.words() + " read?",
                        profiles.stream()
                                .map(p -> new PickList.Option(p.name(), p.id()))
                                .toList(),
                        i -> {
                            setUp.name(address, profiles.get(i));
                            setUp.device(address).ifPresent(this::chooseRoleOf);
                        });
            });
        }
    }

    private void pair(boolean possible) {
        if (!possible || pairing) {
            return;
        }
        List<DeviceView> radio = StartChoices.pairable(setUp);
        if (radio.isEmpty()) {
            tell("No Bluetooth probe is in reach that is not paired already");
            return;
        }
        ask(
                "Which probe is to be paired? Most need no pairing.",
                radio.stream()
                        .map(d -> new PickList.Option(
                                DeviceWords.title(d), DeviceWords.line(d, setUp.isReadable(d), sinceSeconds())))
                        .toList(),
                i -> {
                    pairing = true;
                    tell("Pairing with " + DeviceWords.title(radio.get(i)) + "; it asks here");
                    host.pair(
                            radio.get(i).probe().address(),
                            found.pairing(),
                            said -> EventQueue.invokeLater(() -> paired(said)));
                });
    }

    private void paired(String said) {
        pairing = false;
        found.pairing().answer("");
        tell(said);
    }

    private void theme() {
        look.dark(!look.dark());
        restyle.run();
    }

    void restyled() {
        plate.restyle();
        found.restyle();
        pane.restyle();
        show();
    }

    /** The window goes: whatever is asked is a no. */
    void closed() {
        found.pairing().answer("");
    }

    private void tell(String words) {
        told = words;
        toldLooks = TOLD_LOOKS;
        show();
    }
}
