package settlemark.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import settlemark.profile.Match;
import settlemark.profile.Recogniser;
import settlemark.profile.Sighting;
import settlemark.session.ProbeHost.FoundProbe;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Which profiles fit a device in reach.
 *
 * @param probe the device
 * @param matches what came of comparing it, by the profiles' names
 */
record Fitting(FoundProbe probe, Map<String, Match> matches) {
    private static final Match UNKNOWN =
            new Match.Differs(List.of("nothing is known of the device by which it could be recognised"));

    static Fitting of(FoundProbe probe, List<ProfileShelf.Named> profiles) {
        Map<String, Match> matches = new LinkedHashMap<>();
        for (ProfileShelf.Named named : profiles) {
            matches.put(
                    named.name(),
                    probe.seen()
                            .map(seen -> Recogniser.match(named.profile(), seen))
                            .orElse(UNKNOWN));
        }
        return new Fitting(probe, matches);
    }

    /** For people: the port, what fits and how it is used, and the rest by its reasons. */
    String text() {
        StringBuilder text = new StringBuilder();
        text.append(probe.address().path()).append("  ").append(probe.description());
        usb().ifPresent(numbers -> text.append("  USB ").append(numbers));
        text.append('\n');
        Map<String, List<String>> others = new LinkedHashMap<>();
        boolean any = false;
        for (Map.Entry<String, Match> entry : matches.entrySet()) {
            if (entry.getValue() instanceof Match.Fits fits) {
                any = true;
                text.append("  fits ")
                        .append(entry.getKey())
                        .append(": ")
                        .append(fits.marks())
                        .append('\n');
                text.append("    settlemark log --probe gauge=")
                        .append(probe.address().path());
                text.append(" --profile gauge=").append(entry.getKey()).append('\n');
            } else if (entry.getValue() instanceof Match.Differs differs) {
                others.computeIfAbsent(String.join("; ", differs.reasons()), reason -> new ArrayList<>())
                        .add(entry.getKey());
            }
        }
        if (!any) {
            text.append("  no profile fits by itself\n");
        }
        others.forEach((reason, names) -> text.append("  not ")
                .append(String.join(", ", names))
                .append(": ")
                .append(reason)
                .append('\n'));
        return text.toString();
    }

    ObjectNode json() {
        ObjectNode object = JsonLine.object();
        object.put("address", probe.address().toString());
        object.put("path", probe.address().path());
        object.put("description", probe.description());
        usb().ifPresent(numbers -> object.put("usb", numbers));
        object.put("identity", probe.identity());
        ArrayNode profiles = object.putArray("profiles");
        matches.forEach((name, match) -> {
            ObjectNode profile = profiles.addObject().put("profile", name).put("fits", match instanceof Match.Fits);
            if (match instanceof Match.Fits fits) {
                profile.put("marks", fits.marks());
            } else if (match instanceof Match.Differs differs) {
                ArrayNode reasons = profile.putArray("reasons");
                differs.reasons().forEach(reasons::add);
            }
        });
        return object;
    }

    /** Vendor and product number such as {@code 1209:0001}. */
    private Optional<String> usb() {
        return probe.seen()
                .filter(Sighting.Port.class::isInstance)
                .map(Sighting.Port.class::cast)
                .flatMap(port -> port.vendor()
                        .flatMap(vendor -> port.product()
                                .map(product -> String.format(Locale.ROOT, "%04x:%04x", vendor, product))));
    }
}
