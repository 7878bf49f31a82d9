package settlemark.session;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import settlemark.job.JobPlan;
import settlemark.job.PlanStep;
import settlemark.measure.Channel;
import settlemark.measure.Role;
import settlemark.profile.Profile;

/**
 * Which channel of which device is to give each role, as it is chosen before a session begins; immutable.
 *
 * @param places by role; a channel has one role at most, and a device one profile
 */
public record RoleChoice(Map<Role, Place> places) {
    public static final RoleChoice NOTHING = new RoleChoice(Map.of());

    public RoleChoice {
        places = Map.copyOf(places);
    }

    /**
     * A channel of a device.
     *
     * @param address where the device is
     * @param identity what stays the same of it, empty where nothing is known
     * @param name what it is called, short
     * @param profile by which it is read
     * @param channel name of the channel within the profile
     */
    public record Place(ProbeAddress address, String identity, String name, Profile profile, String channel) {
        public Place {
            Objects.requireNonNull(address);
            if (profile.channelIndex(channel).isEmpty()) {
                throw new IllegalArgumentException(
                        "profile " + profile.id() + " has no channel \"" + channel + "\"; choose one that it has");
            }
        }

        public Channel what() {
            return profile.channels().get(profile.channelIndex(channel).orElseThrow());
        }

        boolean isSameChannel(Place other) {
            return address.equals(other.address) && channel.equals(other.channel);
        }
    }

    /** The channels of a device that measure what a role needs, by each profile that fits it. */
    public static List<Place> offered(DeviceView device, List<Profile> byHand, Role role) {
        List<Place> places = new ArrayList<>();
        for (Profile profile : profiles(device, byHand)) {
            for (Channel channel : profile.channels()) {
                if (role.fits(channel)) {
                    places.add(place(device, profile, channel.name()));
                }
            }
        }
        return places;
    }

    /** Profiles by which a device may be read: that of the last time first, then by hand, then those that fit. */
    public static List<Profile> profiles(DeviceView device, List<Profile> byHand) {
        List<Profile> all = new ArrayList<>(byHand);
        Set<String> ids = byHand.stream().map(Profile::id).collect(Collectors.toCollection(HashSet::new));
        if (byHand.isEmpty()) {
            device.use()
                    .map(u -> u.setup().profile())
                    .filter(p -> ids.add(p.id()))
                    .ifPresent(all::add);
        }
        device.fitting().stream().filter(p -> ids.add(p.id())).forEach(all::add);
        return all;
    }

    private static Place place(DeviceView device, Profile profile, String channel) {
        return new Place(device.probe().address(), device.probe().identity(), name(device, profile), profile, channel);
    }

    /** The name of the last time, else what the device calls itself where that is a name, else the profile's. */
    private static String name(DeviceView device, Profile profile) {
        String said = device.probe().description();
        boolean radio = device.probe().address().scheme().equals(ProbeAddress.BLE);
        return device.use()
                .map(u -> u.setup().name())
                .orElse(radio && !said.isBlank() && !said.startsWith("(") ? said : profile.id());
    }

    /** The roles that a device had the last time, as far as they are free and still fit. */
    public RoleChoice withRemembered(DeviceView device) {
        RoleChoice choice = this;
        Optional<DeviceUse> use = device.use();
        if (use.isEmpty() || !device.probe().inReach()) {
            return this;
        }
        Profile profile = use.get().setup().profile();
        for (Map.Entry<String, Role> had : new TreeMap<>(use.get().setup().roles()).entrySet()) {
            boolean fits = profile.channelIndex(had.getKey())
                    .filter(i -> profile.channels().get(i).dimension()
                            == had.getValue().dimension())
                    .isPresent();
            if (fits && !choice.places.containsKey(had.getValue())) {
                choice = choice.with(had.getValue(), place(device, profile, had.getKey()));
            }
        }
        return choice;
    }

    /** Gives a role to a channel; a role that this channel had before is free then, as are those by another profile. */
    public RoleChoice with(Role role, Place place) {
        if (place.what().dimension() != role.dimension()) {
            throw new IllegalArgumentException("the " + role.word() + " is no channel in "
                    + place.what().unit().symbol() + "; choose one that measures it");
        }
        Map<Role, Place> changed = new EnumMap<>(Role.class);
        places.forEach((other, there) -> {
            boolean otherProfile = there.address().equals(place.address())
                    && !there.profile().digest().equals(place.profile().digest());
            if (!there.isSameChannel(place) && !otherProfile) {
                changed.put(other, there);
            }
        });
        changed.put(role, place);
        return new RoleChoice(changed);
    }

    public RoleChoice without(Role role) {
        Map<Role, Place> changed = new EnumMap<>(Role.class);
        changed.putAll(places);
        changed.remove(role);
        return new RoleChoice(changed);
    }

    public Optional<Place> of(Role role) {
        return Optional.ofNullable(places.get(role));
    }

    /** Roles that a plan cannot do without, in the order of the roles. */
    public static List<Role> needed(JobPlan plan) {
        return List.of(Role.values()).stream()
                .filter(role -> plan.steps().stream().anyMatch(s -> s.probed().contains(role)))
                .toList();
    }

    /** What a plan needs and has no probe, a sentence each, with the steps that need it; empty where nothing is missing. */
    public List<String> missing(JobPlan plan) {
        return needed(plan).stream()
                .filter(role -> !places.containsKey(role))
                .map(role -> "the " + role.word() + " has no probe and is needed for "
                        + plan.steps().stream()
                                .filter(s -> s.probed().contains(role))
                                .map(PlanStep::title)
                                .limit(2)
                                .collect(Collectors.joining("; "))
                        + (plan.steps().stream()
                                                .filter(s -> s.probed().contains(role))
                                                .count()
                                        > 2
                                ? " and more"
                                : ""))
                .toList();
    }

    /** The probes of a session, one a device, in the order of the roles, their names made unlike. */
    public List<ProbeSetup> setups() {
        Map<ProbeAddress, Map<String, Role>> roles = new LinkedHashMap<>();
        Map<ProbeAddress, Place> devices = new LinkedHashMap<>();
        for (Role role : Role.values()) {
            of(role).ifPresent(place -> {
                devices.putIfAbsent(place.address(), place);
                roles.computeIfAbsent(place.address(), a -> new TreeMap<>()).put(place.channel(), role);
            });
        }
        Set<String> names = new HashSet<>();
        List<ProbeSetup> setups = new ArrayList<>();
        devices.forEach((address, place) -> {
            String name = place.name();
            for (int i = 2; !names.add(name); i++) {
                name = place.name() + " " + i;
            }
            setups.add(new ProbeSetup(
                    name, address, place.profile(), roles.getOrDefault(address, Map.of()), place.identity()));
        });
        return setups;
    }
}
