package settlemark.cli;

import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import settlemark.measure.Role;
import settlemark.profile.Match;
import settlemark.session.DeviceUse;
import settlemark.session.DeviceView;
import settlemark.session.ProbeView.Health;
import settlemark.session.ProbeView.HealthClass;
import settlemark.session.Reception;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** A device of the list for people, and for programs. */
final class DeviceText {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("uuuu-MM-dd", Locale.ROOT);

    private DeviceText() {}

    static String words(Fitting fitting) {
        DeviceView device = fitting.device();
        StringBuilder text = new StringBuilder();
        text.append(device.probe().address().words())
                .append("  ")
                .append(device.probe().description());
        fitting.usb().ifPresent(numbers -> text.append("  USB ").append(numbers));
        device.probe().reception().ifPresent(reception -> text.append("  ").append(reception(reception)));
        if (device.battery().isKnown()) {
            text.append(String.format(
                            Locale.ROOT, ", battery %.0f %%", device.battery().percent()))
                    .append(device.battery().isOfLastUse() ? " the last time" : "");
        }
        text.append('\n');
        if (!fitting.isStranger() || device.health().isPresent()) {
            line(text, device.health().map(DeviceText::health).orElse("good"));
        }
        device.use().ifPresent(use -> line(text, use(use)));
        fits(text, fitting);
        fitting.others().forEach((reason, names) -> line(text, "not " + String.join(", ", names) + ": " + reason));
        return text.toString();
    }

    private static void fits(StringBuilder text, Fitting fitting) {
        String address = fitting.device().probe().address().words();
        for (String name : fitting.fitting()) {
            if (fitting.matches().get(name) instanceof Match.Fits fits) {
                line(text, "fits " + name + ": " + fits.marks());
                line(text, "  gives " + Fitting.channels(fitting.profile(name)));
                line(text, "  settlemark log --probe gauge=" + address + " --profile gauge=" + name);
            }
        }
        if (fitting.fitting().isEmpty()) {
            line(text, "no profile fits by itself");
        }
    }

    private static void line(StringBuilder text, String words) {
        text.append("  ").append(words).append('\n');
    }

    private static String health(Health health) {
        return word(health.health()) + ": " + health.words();
    }

    static String word(HealthClass health) {
        return health.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    private static String reception(Reception reception) {
        List<String> parts = new ArrayList<>();
        reception.signalDbm().ifPresent(dbm -> parts.add(dbm + " dBm"));
        if (reception.connected()) {
            parts.add("connected");
        } else if (reception.inReach()) {
            parts.add(String.format(Locale.ROOT, "heard %.0f s ago", reception.ageSeconds()));
        } else {
            parts.add("not in reach");
        }
        if (reception.paired()) {
            parts.add("paired");
        }
        return String.join(", ", parts);
    }

    private static String use(DeviceUse use) {
        List<String> roles = new ArrayList<>();
        new TreeMap<>(use.setup().roles()).forEach((channel, role) -> roles.add(channel + " " + role.word()));
        return "last used " + DAY.withZone(ZoneId.systemDefault()).format(use.lastUsed()) + " as "
                + use.setup().name() + " by profile " + use.setup().profile().id() + ": "
                + (roles.isEmpty() ? "no roles" : String.join(", ", roles));
    }

    static ObjectNode json(Fitting fitting) {
        DeviceView device = fitting.device();
        ObjectNode object = JsonLine.object();
        object.put("address", device.probe().address().toString());
        object.put("path", device.probe().address().path());
        object.put("description", device.probe().description());
        fitting.usb().ifPresent(numbers -> object.put("usb", numbers));
        object.put("identity", device.probe().identity());
        object.put("in_reach", device.probe().inReach());
        device.probe().reception().ifPresent(reception -> reception(object, reception));
        JsonLine.number(object, "battery_percent", device.battery().percent());
        if (device.battery().isKnown()) {
            object.put("battery_of_last_use", device.battery().isOfLastUse());
        }
        object.put("health", device.health().map(h -> word(h.health())).orElse("good"));
        device.health().ifPresent(h -> object.put("health_words", h.words()));
        device.use().ifPresent(use -> use(object.putObject("last_use"), use));
        profiles(object.putArray("profiles"), fitting);
        return object;
    }

    private static void reception(ObjectNode object, Reception reception) {
        reception.signalDbm().ifPresent(dbm -> object.put("signal_dbm", dbm));
        JsonLine.number(object, "heard_seconds_ago", reception.ageSeconds());
        object.put("connected", reception.connected());
        object.put("paired", reception.paired());
    }

    private static void use(ObjectNode object, DeviceUse use) {
        object.put("at", use.lastUsed().toString());
        object.put("name", use.setup().name());
        object.put("profile", use.setup().profile().id());
        ObjectNode roles = object.putObject("roles");
        for (Map.Entry<String, Role> role : new TreeMap<>(use.setup().roles()).entrySet()) {
            roles.put(role.getKey(), role.getValue().word());
        }
    }

    private static void profiles(ArrayNode profiles, Fitting fitting) {
        fitting.matches().forEach((name, match) -> {
            ObjectNode profile = profiles.addObject().put("profile", name).put("fits", match instanceof Match.Fits);
            if (match instanceof Match.Fits fits) {
                profile.put("marks", fits.marks());
                ArrayNode channels = profile.putArray("channels");
                fitting.profile(name)
                        .channels()
                        .forEach(c -> channels.addObject()
                                .put("channel", c.name())
                                .put("unit", c.unit().symbol()));
            } else if (match instanceof Match.Differs differs) {
                ArrayNode reasons = profile.putArray("reasons");
                differs.reasons().forEach(reasons::add);
            }
        });
    }
}
