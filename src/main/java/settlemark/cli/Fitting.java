package settlemark.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import settlemark.measure.Channel;
import settlemark.profile.Match;
import settlemark.profile.Profile;
import settlemark.profile.Recogniser;
import settlemark.profile.Sighting;
import settlemark.session.DeviceView;
import tools.jackson.databind.node.ObjectNode;

/**
 * Which profiles fit a device.
 *
 * @param device in reach or known
 * @param matches what came of comparing it, by the profiles' names
 * @param profiles by their names
 */
record Fitting(DeviceView device, Map<String, Match> matches, Map<String, Profile> profiles) {
    private static final Match UNKNOWN =
            new Match.Differs(List.of("nothing is known of the device by which it could be recognised"));

    static Fitting of(DeviceView device, List<ProfileShelf.Named> profiles) {
        Map<String, Match> matches = new LinkedHashMap<>();
        Map<String, Profile> byName = new LinkedHashMap<>();
        for (ProfileShelf.Named named : profiles) {
            byName.put(named.name(), named.profile());
            matches.put(
                    named.name(),
                    device.probe()
                            .seen()
                            .map(seen -> Recogniser.match(named.profile(), seen))
                            .orElse(UNKNOWN));
        }
        return new Fitting(device, matches, byName);
    }

    Profile profile(String name) {
        return Objects.requireNonNull(profiles.get(name), name);
    }

    /** Nothing fits it, and it was never used. */
    boolean isStranger() {
        return device.use().isEmpty() && fitting().isEmpty();
    }

    List<String> fitting() {
        return matches.entrySet().stream()
                .filter(e -> e.getValue() instanceof Match.Fits)
                .map(Map.Entry::getKey)
                .toList();
    }

    /** Names of the profiles that do not fit, by the reasons. */
    Map<String, List<String>> others() {
        Map<String, List<String>> others = new LinkedHashMap<>();
        matches.forEach((name, match) -> {
            if (match instanceof Match.Differs differs) {
                others.computeIfAbsent(String.join("; ", differs.reasons()), reason -> new ArrayList<>())
                        .add(name);
            }
        });
        return others;
    }

    /** What a profile gives, such as {@code port-1 in inH2O, battery in %}. */
    static String channels(Profile profile) {
        List<String> channels = new ArrayList<>();
        for (Channel channel : profile.channels()) {
            channels.add(channel.name() + " in " + channel.unit().symbol());
        }
        return String.join(", ", channels);
    }

    /** Vendor and product number such as {@code 1209:0001}. */
    Optional<String> usb() {
        return device.probe()
                .seen()
                .flatMap(seen -> seen instanceof Sighting.Port port
                        ? port.vendor()
                                .flatMap(vendor -> port.product()
                                        .map(product -> String.format(Locale.ROOT, "%04x:%04x", vendor, product)))
                        : Optional.empty());
    }

    String text() {
        return DeviceText.words(this);
    }

    ObjectNode json() {
        return DeviceText.json(this);
    }
}
