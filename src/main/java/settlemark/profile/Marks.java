package settlemark.profile;

import com.google.re2j.Pattern;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;

/** The marks of one way to recognise a device, compared one by one. */
final class Marks {
    private static final long BASE_UUID_LOW = 0x800000805F9B34FBL;
    private static final long BASE_UUID_HIGH = 0x1000L;

    private final List<String> fitting = new ArrayList<>();
    private final List<String> reasons = new ArrayList<>();

    /** What fits, in words. */
    List<String> fitting() {
        return fitting;
    }

    /** What does not fit, in words. */
    List<String> reasons() {
        return reasons;
    }

    void differs(String reason) {
        reasons.add(reason);
    }

    void pattern(String what, Pattern pattern, String seen) {
        if (pattern.matcher(seen).find()) {
            fitting.add(what + " \"" + printable(seen) + "\"");
        } else if (seen.isEmpty()) {
            differs("it has no " + what + "; \"" + pattern.pattern() + "\" is looked for");
        } else {
            differs(what + " \"" + printable(seen) + "\" does not fit \"" + pattern.pattern() + "\"");
        }
    }

    void number(String what, int wanted, Optional<Integer> seen) {
        if (seen.isEmpty()) {
            differs("it has no " + what + " number; " + hex(wanted) + " is looked for");
        } else if (seen.get() == wanted) {
            fitting.add(what + " " + hex(wanted));
        } else {
            differs(what + " is " + hex(seen.get()) + ", not " + hex(wanted));
        }
    }

    void service(UUID wanted, List<UUID> seen) {
        if (seen.contains(wanted)) {
            fitting.add("service " + name(wanted));
        } else {
            differs("service " + name(wanted) + " is not advertised; "
                    + (seen.isEmpty() ? "no service is" : list(seen.stream().map(Marks::name))));
        }
    }

    void company(int wanted, List<Integer> seen) {
        if (seen.contains(wanted)) {
            fitting.add("company " + hex(wanted));
        } else {
            differs("data of company " + hex(wanted) + " is not advertised; "
                    + (seen.isEmpty()
                            ? "none of any company is"
                            : list(seen.stream().map(Marks::hex))));
        }
    }

    private static String list(java.util.stream.Stream<String> names) {
        List<String> all = names.toList();
        return String.join(", ", all) + (all.size() == 1 ? " is" : " are");
    }

    private static String hex(int number) {
        return String.format(Locale.ROOT, "0x%04X", number);
    }

    /** The short form of numbers from the Bluetooth assigned numbers. */
    private static String name(UUID uuid) {
        boolean assigned = uuid.getLeastSignificantBits() == BASE_UUID_LOW
                && (uuid.getMostSignificantBits() & 0xFFFFFFFFL) == BASE_UUID_HIGH;
        long number = uuid.getMostSignificantBits() >>> 32;
        return assigned
                ? String.format(Locale.ROOT, "%04X", number)
                : uuid.toString().toUpperCase(Locale.ROOT);
    }

    /** What a stranger's device calls itself goes onto a terminal: no control characters, and not too many. */
    private static String printable(String text) {
        return Words.shown(text.replaceAll("\\p{C}", "?"));
    }
}
