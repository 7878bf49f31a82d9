package settlemark.ui;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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
            return device.probe().inReach() ? "on a wire" : "not plugged in";
        }
        Reception reception = device.probe().reception().orElse(Reception.NONE);
        return reception.signalDbm().isPresent()
                ? Numbers.fixed(reception.signalDbm().getAsInt(), 0) + " dBm"
                : reception.connected() ? "connected" : "no signal";
    }

    /** @param sinceSeconds since the look that found it */
    static String heard(DeviceView device, double sinceSeconds) {
        Reception reception = device.probe().reception().orElse(Reception.NONE);
        if (SetUp.isWired(device)) {
            return "";
        }
        double age = reception.ageSeconds() + sinceSeconds;
        if (Double.isNaN(age)) {
            return reception.connected() ? "" : "not heard";
        }
        return age < 6 ? "heard now" : String.format(Locale.ROOT, "heard %.0f s ago", age);
    }

    static String battery(DeviceView device) {
        return device.battery().isKnown()
                ? String.format(
                        Locale.ROOT,
                        device.battery().isOfLastUse() ? "battery was %.0f %%" : "battery %.0f %%",
                        device.battery().percent())
                : "";
    }

    /** What a tile's small line says. */
    static String line(DeviceView device, boolean readable, double sinceSeconds) {
        List<String> parts = new ArrayList<>();
        parts.add(link(device));
        parts.add(heard(device, sinceSeconds));
        parts.add(readable ? battery(device) : "no profile fits");
        parts.removeIf(String::isEmpty);
        return String.join(", ", parts);
    }
}
