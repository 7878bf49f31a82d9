package settlemark.ui;

import java.awt.EventQueue;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntConsumer;
import java.util.function.Supplier;
import settlemark.measure.Role;
import settlemark.profile.Profile;
import settlemark.session.DeviceView;
import settlemark.session.ProbeAddress;
import settlemark.session.RoleChoice;

/** The questions of the page of probes, one list after the other: which probe, which role, which profile, which pairing. */
final class ProbePicks {
    private final StartHost host;
    private final SetUp setUp;
    private final Supplier<FoundFace> found;
    private final Window window;
    private boolean pairing;

    /** What is around the page. */
    interface Window {
        /** Answers beside the step. */
        void tell(String words);

        /** Shows everything anew. */
        void show();

        /** Takes the cursor out of a field. */
        void focus();

        InlineRow inline();

        /** Since the last look. */
        double sinceSeconds();
    }

    /** @param found the page as it is shown now */
    ProbePicks(StartHost host, SetUp setUp, Supplier<FoundFace> found, Window window) {
        this.host = host;
        this.setUp = setUp;
        this.found = found;
        this.window = window;
    }

    boolean isPairing() {
        return pairing;
    }

    private void ask(String question, List<PickList.Option> options, IntConsumer chosen) {
        found.get().pick().ask(question, options, chosen, window::show);
        window.show();
        found.get().pick().choices().requestFocusInWindow();
    }

    void chooseProbe(Role role) {
        List<RoleChoice.Place> offers = setUp.offers(role);
        if (offers.isEmpty()) {
            window.tell(Words.say(
                    "Nothing in reach can be the {0}: choose a profile for what is found, or name a port",
                    Words.told(role.word())));
            return;
        }
        List<PickList.Option> options = new ArrayList<>();
        offers.forEach(place -> options.add(new PickList.Option(
                place.name() + ", " + place.what().label(),
                place.profile().name() + ", " + DeviceWords.place(place.address()) + had(place, role))));
        setUp.choice().of(role).ifPresent(p -> options.add(new PickList.Option(Words.say("No probe"), "")));
        ask(Words.say("Which probe is the {0}?", Words.told(role.word())), options, i -> {
            if (i < offers.size()) {
                setUp.give(role, offers.get(i));
            } else {
                setUp.free(role);
            }
            window.show();
            focusRow(role);
        });
    }

    /** Says so where it was this the last time. */
    private String had(RoleChoice.Place place, Role role) {
        return setUp.device(place.address())
                .flatMap(DeviceView::use)
                .map(u -> role == u.setup().roles().get(place.channel()) ? Words.say(", as the last time") : "")
                .orElse("");
    }

    private void focusRow(Role role) {
        found.get().rows().get(setUp.roles().indexOf(role)).box().requestFocusInWindow();
    }

    void chooseRole(DeviceView device) {
        if (!device.probe().inReach()) {
            window.tell(device.health().map(h -> Words.told(h.words())).orElse(Words.say("It is not in reach")));
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
                        Words.say(
                                "{0} from {1}",
                                Numbers.capital(Words.told(role.word())),
                                place.what().label()),
                        place.profile().name()));
            }
        }
        options.add(new PickList.Option(Words.say("Another profile"), Words.say("the device is read by another one")));
        ask(Words.say("What is {0} connected to?", DeviceWords.title(device)), options, i -> {
            if (i == places.size()) {
                chooseProfile(device);
            } else {
                setUp.give(roles.get(i), places.get(i));
                window.show();
                focusRow(roles.get(i));
            }
        });
    }

    private void chooseProfile(DeviceView device) {
        List<Profile> profiles = SetUp.suitable(host.profiles(), device.probe().address());
        ask(
                Words.say("By which profile is {0} read?", DeviceWords.title(device)),
                profiles.stream()
                        .map(p -> new PickList.Option(p.name(), p.id()))
                        .toList(),
                i -> {
                    setUp.profile(device, profiles.get(i));
                    chooseRoleOf(device);
                });
    }

    void chooseAmongAll() {
        List<DeviceView> free = setUp.free();
        ask(
                Words.say("Which device?"),
                free.stream()
                        .map(d -> new PickList.Option(
                                DeviceWords.title(d), DeviceWords.line(d, setUp.isReadable(d), window.sinceSeconds())))
                        .toList(),
                i -> chooseRole(free.get(i)));
    }

    void namePort(boolean possible) {
        if (possible) {
            window.inline().ask(() -> Words.say("Port, or ble: and the address"), text -> {
                window.focus();
                ProbeAddress address = ProbeAddress.written(text);
                List<Profile> profiles = SetUp.suitable(host.profiles(), address);
                ask(
                        Words.say("By which profile is {0} read?", address.words()),
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

    void pair(boolean possible) {
        if (!possible || pairing) {
            return;
        }
        List<DeviceView> radio = StartChoices.pairable(setUp);
        if (radio.isEmpty()) {
            window.tell(Words.say("No Bluetooth probe is in reach that is not paired already"));
            return;
        }
        ask(
                Words.say("Which probe is to be paired? Most need no pairing."),
                radio.stream()
                        .map(d -> new PickList.Option(
                                DeviceWords.title(d), DeviceWords.line(d, setUp.isReadable(d), window.sinceSeconds())))
                        .toList(),
                i -> {
                    pairing = true;
                    window.tell(Words.say("Pairing with {0}; it asks here", DeviceWords.title(radio.get(i))));
                    host.pair(
                            radio.get(i).probe().address(),
                            found.get().pairing(),
                            said -> EventQueue.invokeLater(() -> paired(said)));
                });
    }

    private void paired(String said) {
        pairing = false;
        found.get().pairing().answer("");
        window.tell(Words.told(said));
    }
}
