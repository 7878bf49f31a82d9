package settlemark.link;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import settlemark.profile.Profile;
import settlemark.session.LinkException;

/**
 * A probe that is to be opened.
 *
 * @param central this computer's end
 * @param address of the probe, upper case, such as {@code 54:48:E6:8F:80:A5}
 * @param adapter address or name of the adapter to use, empty for the first
 * @param profile what it should be
 */
record BlePlace(BleCentral central, String address, Optional<String> adapter, Profile profile) {
    private static final Pattern WRITTEN = Pattern.compile("([0-9A-Fa-f]{2}(?::[0-9A-Fa-f]{2}){5})(?:@(.+))?");

    /**
     * What an address says.
     *
     * @param address of the probe, upper case
     * @param adapter address or name of the adapter to use, empty where it names none
     */
    record Written(String address, Optional<String> adapter) {}

    /**
     * @param path {@code ADDRESS} or {@code ADDRESS@ADAPTER}
     * @throws LinkException where it is neither
     */
    static Written written(String path) throws LinkException {
        Matcher written = WRITTEN.matcher(path);
        if (!written.matches()) {
            throw new LinkException("a Bluetooth probe is named by its address, six pairs of digits such as"
                    + " ble:54:48:E6:8F:80:A5, got \"" + path + "\"");
        }
        return new Written(
                String.valueOf(written.group(1)).toUpperCase(Locale.ROOT), Optional.ofNullable(written.group(2)));
    }

    String device(String adapterPath) {
        return Bluez.devicePath(adapterPath, address);
    }

    /** The probe in a sentence, by its name where it is known. */
    String words() {
        for (String path : central.objects().paths(Bluez.DEVICE, "")) {
            if (path.endsWith(Bluez.devicePath("", address))) {
                Optional<String> name = BluezValues.text(central.objects().property(path, Bluez.DEVICE, "Name"));
                if (name.isPresent()) {
                    return name.get() + " (" + address + ")";
                }
            }
        }
        return "probe " + address;
    }

    /** Why a device was lost, by what is so now. */
    BleFault loss() {
        return loss(BleWords.disconnected(words()));
    }

    /** @param disconnected the words where only the probe can be the cause */
    BleFault loss(String disconnected) {
        try {
            central.adapter(adapter);
        } catch (BleFault fault) {
            return fault;
        }
        return BleFault.passing(central.adapters().sleptLately() ? BleWords.slept() : disconnected);
    }
}
