package settlemark.link;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import settlemark.session.LinkException;

/**
 * A serial address: a path, and behind an {@code @} the unit on a Modbus line.
 *
 * @param path of the node
 * @param unit 1 to 247, 0 for the profile's own
 */
record PortAddress(String path, int unit) {
    private static final Pattern WITH_UNIT = Pattern.compile("(.+)@([0-9]{1,9})");

    static PortAddress of(String address) throws LinkException {
        Matcher matcher = WITH_UNIT.matcher(address);
        if (!matcher.matches()) {
            return new PortAddress(address, 0);
        }
        int unit = Integer.parseInt(matcher.group(2));
        if (unit < 1 || unit > 247) {
            throw new LinkException("a Modbus unit is 1 to 247, got @" + unit + " in " + address);
        }
        return new PortAddress(matcher.group(1), unit);
    }
}
