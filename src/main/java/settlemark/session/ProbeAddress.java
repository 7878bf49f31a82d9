package settlemark.session;

import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import settlemark.profile.ByteText;

/**
 * Where a probe is reached.
 *
 * @param scheme {@code serial}, {@code ble} or {@code rig}
 * @param path what the scheme needs, such as {@code /dev/ttyUSB0} or {@code 54:48:E6:8F:80:A5}
 */
public record ProbeAddress(String scheme, String path) {
    public static final String SERIAL = "serial";
    public static final String BLE = "ble";

    private static final Pattern WITH_SCHEME = Pattern.compile("(serial|ble):(.+)");
    /** Six pairs of digits, and the adapter behind them where one is named. */
    private static final Pattern RADIO = Pattern.compile("([0-9A-Fa-f]{2}(?::[0-9A-Fa-f]{2}){5})(?:@.+)?");

    public ProbeAddress {
        Objects.requireNonNull(scheme);
        Objects.requireNonNull(path);
    }

    /** As a person writes it: {@code ble:ADDRESS}, {@code serial:PORT}, or a port alone. */
    public static ProbeAddress written(String text) {
        Matcher matcher = WITH_SCHEME.matcher(text);
        return matcher.matches()
                ? new ProbeAddress(String.valueOf(matcher.group(1)), String.valueOf(matcher.group(2)))
                : new ProbeAddress(SERIAL, text);
    }

    /** As a person writes it; a serial port goes without its scheme. */
    public String words() {
        return scheme.equals(SERIAL) ? path : toString();
    }

    /** The address of a Bluetooth device alone. */
    public String device() {
        return path.substring(0, at());
    }

    /** The adapter that is named behind the address of a Bluetooth device, empty where none is. */
    public Optional<String> adapter() {
        return at() == path.length() ? Optional.empty() : Optional.of(path.substring(at() + 1));
    }

    private int at() {
        int at = path.indexOf('@');
        return scheme.equals(BLE) && at >= 0 ? at : path.length();
    }

    /** The six bytes of a Bluetooth device's address, high byte first; empty for another kind of device. */
    public ByteText radioBytes() {
        Matcher matcher = RADIO.matcher(path);
        return Optional.of(matcher)
                .filter(m -> scheme.equals(BLE) && m.matches())
                .map(m -> ByteText.ofHex(String.valueOf(m.group(1)).replace(":", "")))
                .orElse(ByteText.EMPTY);
    }

    @Override
    public String toString() {
        return scheme + ":" + path;
    }
}
