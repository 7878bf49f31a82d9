package settlemark.ui;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import settlemark.job.JobPlan;
import settlemark.measure.Channel;
import settlemark.measure.Role;
import settlemark.profile.Link;
import settlemark.profile.Profile;
import settlemark.session.DeviceList;
import settlemark.session.DeviceView;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeHost.FoundProbe;
import settlemark.session.RoleChoice;

/** What is found and what the person has chosen of it. Lives on the event thread. */
final class SetUp {
    private final Map<ProbeAddress, List<Profile>> byHand = new HashMap<>();
    private final List<DeviceView> named = new ArrayList<>();
    private final Set<ProbeAddress> offered = new HashSet<>();
    private DeviceList list = new DeviceList(List.of(), List.of());
    private RoleChoice choice = RoleChoice.NOTHING;
    private JobPlan plan;

    SetUp(JobPlan plan) {
        this.plan = plan;
    }

    JobPlan plan() {
        return plan;
    }

    void plan(JobPlan newPlan) {
        plan = newPlan;
    }

    RoleChoice choice() {
        return choice;
    }

    void give(Role role, RoleChoice.Place place) {
        choice = choice.with(role, place);
    }

    void free(Role role) {
        choice = choice.without(role);
    }

    List<String> remarks() {
        return list.remarks();
    }

    /** Takes in what a look found. A device has its former roles offered once; what the person changes stays changed. */
    void found(DeviceList newList) {
        list = newList;
        for (DeviceView device : list.devices()) {
            ProbeAddress address = device.probe().address();
            if (device.use().isPresent() && device.probe().inReach() && offered.add(address)) {
                choice = choice.withRemembered(device);
            }
        }
    }

    /** A device that no look finds, such as a pseudo terminal. */
    void name(ProbeAddress address, Profile profile) {
        byHand.put(address, List.of(profile));
        if (device(address).isEmpty()) {
            named.add(new DeviceView(
                    new FoundProbe(address, address.path()),
                    List.of(profile),
                    Optional.empty(),
                    DeviceView.Battery.UNKNOWN,
                    Optional.empty()));
        }
    }

    /** The person says by which profile a device is read. */
    void profile(DeviceView device, Profile profile) {
        byHand.put(device.probe().address(), List.of(profile));
    }

    List<Profile> byHand(DeviceView device) {
        return byHand.getOrDefault(device.probe().address(), List.of());
    }

    /** All, those that one looks for first; strangers such as the neighbours' lamps are many. */
    List<DeviceView> devices() {
        List<DeviceView> all = new ArrayList<>(named);
        for (DeviceView device : list.devices()) {
            if (named.stream()
                    .noneMatch(n -> n.probe().address().equals(device.probe().address()))) {
                all.add(device);
            }
        }
        all.sort(Comparator.comparing(d -> isReadable(d) ? 0 : d.use().isPresent() ? 1 : isWired(d) ? 2 : 3));
        return all;
    }

    Optional<DeviceView> device(ProbeAddress address) {
        return devices().stream()
                .filter(d -> d.probe().address().equals(address))
                .findFirst();
    }

    /** In reach, and with a profile. */
    boolean isReadable(DeviceView device) {
        return device.probe().inReach()
                && !RoleChoice.profiles(device, byHand(device)).isEmpty();
    }

    static boolean isWired(DeviceView device) {
        return device.probe().address().scheme().equals(ProbeAddress.SERIAL);
    }

    /** Those that have no role, or a channel left that could have one. */
    List<DeviceView> free() {
        return devices().stream().filter(this::isFree).toList();
    }

    private boolean isFree(DeviceView device) {
        List<RoleChoice.Place> chosen = choice.places().values().stream()
                .filter(p -> p.address().equals(device.probe().address()))
                .toList();
        return chosen.isEmpty()
                || chosen.get(0).profile().channels().stream()
                        .filter(SetUp::canHaveARole)
                        .anyMatch(
                                c -> chosen.stream().noneMatch(p -> p.channel().equals(c.name())));
    }

    private static boolean canHaveARole(Channel channel) {
        return List.of(Role.values()).stream().anyMatch(r -> r.fits(channel));
    }

    /** What can have a role now. */
    List<RoleChoice.Place> offers(Role role) {
        return devices().stream()
                .filter(d -> d.probe().inReach())
                .flatMap(d -> RoleChoice.offered(d, byHand(d), role).stream())
                .toList();
    }

    /** Those of the profiles that can read a device at all, by the kind of its link. */
    static List<Profile> suitable(List<Profile> profiles, ProbeAddress address) {
        boolean wired = address.scheme().equals(ProbeAddress.SERIAL);
        return profiles.stream()
                .filter(p -> p.link()
                        .map(l -> (l instanceof Link.Serial || l instanceof Link.ModbusRtu) == wired)
                        .orElse(wired))
                .filter(p -> p.channels().stream()
                        .anyMatch(c -> List.of(Role.values()).stream().anyMatch(r -> r.fits(c))))
                .toList();
    }

    /** The plan's roles first. */
    List<Role> roles() {
        List<Role> roles = new ArrayList<>(RoleChoice.needed(plan));
        for (Role role : Role.values()) {
            boolean common = role.ordinal() <= Role.STACK.ordinal();
            boolean typed = plan.steps().stream().anyMatch(s -> s.required().contains(role));
            if (!roles.contains(role) && (common || typed)) {
                roles.add(role);
            }
        }
        return roles;
    }

    boolean simulated() {
        return choice.places().values().stream().anyMatch(p -> p.profile().simulated());
    }

    /** Roles that the plan needs and that have no probe. */
    List<Role> without() {
        return RoleChoice.needed(plan).stream()
                .filter(r -> choice.of(r).isEmpty())
                .toList();
    }

    /** The same with what they are needed for, a sentence each. */
    List<String> missing() {
        return choice.missing(plan);
    }
}
