package settlemark.ui;

import java.util.ArrayList;
import java.util.List;
import settlemark.session.DeviceView;
import settlemark.session.ProbeAddress;
import settlemark.session.Reception;

/** A device that is not in use, in short words. */
final class DeviceWords {
    private DeviceWords() {}

    static String title(DeviceView device) {
        String said = device.probe().description();
        return device.use()
                .map(u -> u.setup().name())
                .orElse(
                        said.isBlank() || said.startsWith("(")
                                ? device.probe().address().device()
                                : said);
    }

    /** Where it is; the name alone of a long path. */
    static String place(ProbeAddress address) {
        if (!address.scheme().equals(ProbeAddress.SERIAL)) {
            return address.device();
        }
        String path = address.path();
        return path.startsWith("/dev/") && path.indexOf('/', 5) < 0 ? path : path.substring(path.lastIndexOf('/') + 1);
    }

    /** Signal, or that it is on a wire. */
    static String link(DeviceView device) {
        if (SetUp.isWired(device)) {
            return device.probe().inReach() ? Words.say("on a wire") : Words.say("not plugged in");
        }
        Reception reception = device.probe().reception().orElse(Reception.NONE);
        return reception.signalDbm().isPresent()
                ? Numbers.fixed(reception.signalDbm().getAsInt(), 0) + " dBm"
                : reception.connected() ? Words.say("connected") : Words.say("no signal");
    }

    /** @param sinceSeconds since the look that found it */
    static String heard(DeviceView device, double sinceSeconds) {
        Reception reception = device.probe().reception().orElse(Reception.NONE);
        if (SetUp.isWired(device)) {
            return "";
        }
        double age = reception.ageSeconds() + sinceSeconds;
        if (Double.isNaN(age)) {
            return reception.connected() ? "" : Words.say("not heard");
        }
        return age < 6 ? Words.say("heard now") : Words.say("heard {0} s ago", Numbers.fixed(age, 0));
    }

    static String battery(DeviceView device) {
        return device.battery().isKnown()
                ? device.battery().isOfLastUse()
                        ? Words.say(
                                "battery was {0} %",
                                Numbers.fixed(device.battery().percent(), 0))
                        : Words.say(
                                "battery {0} %", Numbers.fixed(device.battery().percent(), 0))
                : "";
    }

    /** What a tile's small line says. */
    static String line(DeviceView device, boolean readable, double sinceSeconds) {
        List<String> parts = new ArrayList<>();
        parts.add(link(device));
        parts.add(heard(device, sinceSeconds));
        parts.add(readable ? battery(device) : Words.say("no profile fits"));
        parts.removeIf(String::isEmpty);
        return String.join(", ", parts);
    }
}
