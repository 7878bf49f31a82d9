package settlemark.cli;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import settlemark.job.SettleForm;
import settlemark.settle.SettleAdjustment;
import settlemark.settle.SettleChoices;
import settlemark.settle.SettleKind;

/** Settings of settled detection as they are typed, such as {@code gas.drift=2.5 Pa}. */
final class SettingText {
    private static final String NAMES = "drift, band, horizon, windows, dwell, hunting";
    private static final Pattern WRITTEN =
            Pattern.compile("(?<kind>[a-z]+)\\.(?<name>[a-z]+)=(?<value>[^ ]+)(?: +(?<unit>.+))?");
    private static final Pattern NUMBER = Pattern.compile("(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d{1,3})?");
    private static final Pattern BETWEEN = Pattern.compile("\\s+(?=[^\\s=]+\\.[^\\s=]+=)");

    private SettingText() {}

    /** Several settings in one line, one by one. */
    static List<String> several(String line) {
        return List.of(BETWEEN.split(line.strip()));
    }

    /**
     * What several texts set together; of the same setting the last one holds.
     *
     * @throws IllegalArgumentException where one cannot be read, with the text and the reason
     */
    static SettleChoices read(List<String> texts) {
        Map<SettleKind, SettleAdjustment> all = new EnumMap<>(SettleKind.class);
        for (String text : texts) {
            try {
                Matcher parts = WRITTEN.matcher(text);
                if (!parts.matches()) {
                    throw new IllegalArgumentException("expected KIND.NAME=VALUE such as gas.drift=0.01");
                }
                SettleKind kind = SettleForm.kind(parts.group("kind"));
                all.merge(kind, one(kind, parts), (before, after) -> after.over(before));
            } catch (IllegalArgumentException e) {
                throw new IllegalArgumentException(text + ": " + e.getMessage(), e);
            }
        }
        return new SettleChoices(all);
    }

    private static SettleAdjustment one(SettleKind kind, Matcher parts) {
        String name = parts.group("name");
        String value = parts.group("value");
        Optional<String> unit = Optional.ofNullable(parts.group("unit"));
        boolean amount = name.equals("drift") || name.equals("band");
        if (unit.isPresent() && !amount && !unit.get().equals("s")) {
            throw new IllegalArgumentException(name + " is in seconds; write it without a unit");
        }
        double factor = amount && unit.isPresent() ? SettleForm.factor(kind, unit.get()) : 1;
        double none = Double.NaN;
        return switch (name) {
            case "drift" -> new SettleAdjustment(number(value) * factor, none, none, List.of(), none, none);
            case "band" -> new SettleAdjustment(none, number(value) * factor, none, List.of(), none, none);
            case "horizon" -> new SettleAdjustment(none, none, number(value), List.of(), none, none);
            case "windows" -> new SettleAdjustment(none, none, none, numbers(value), none, none);
            case "dwell" -> new SettleAdjustment(none, none, none, List.of(), number(value), none);
            case "hunting" -> new SettleAdjustment(none, none, none, List.of(), none, number(value));
            default -> throw new IllegalArgumentException("nothing is called \"" + name + "\"; there are " + NAMES);
        };
    }

    private static List<Double> numbers(String text) {
        return Arrays.stream(text.split(",", -1)).map(SettingText::number).toList();
    }

    private static double number(String text) {
        double number = NUMBER.matcher(text).matches() ? Double.parseDouble(text) : Double.NaN;
        if (!Double.isFinite(number)) {
            throw new IllegalArgumentException("expected a number such as 0.02, got \"" + text + "\"");
        }
        return number;
    }
}
