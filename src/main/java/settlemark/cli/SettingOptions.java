package settlemark.cli;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import settlemark.job.SettleForm;
import settlemark.settle.SettleAdjustment;
import settlemark.settle.SettleChoices;
import settlemark.settle.SettleKind;

/** Settings of settled detection on the command line. */
final class SettingOptions {
    private static final String NAMES = "drift, band, horizon, windows, dwell, hunting";
    private static final Pattern WRITTEN =
            Pattern.compile("(?<kind>[a-z]+)\\.(?<name>[a-z]+)=(?<value>[^ ]+)(?: +(?<unit>.+))?");
    private static final Pattern NUMBER = Pattern.compile("(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d{1,3})?");

    @Option(
            names = "--set",
            paramLabel = "KIND.NAME=VALUE",
            description =
                    "A setting of gas, air or stack: drift or band (in inches of water or degrees Fahrenheit, or with"
                            + " a UCUM code after a space: \"gas.drift=2.5 Pa\"), horizon, windows (20,40,60), dwell or hunting (the"
                            + " slowest period of hunting expected) in seconds. May be said again.")
    List<String> set = new ArrayList<>();

    /** What is set; what cannot work for any channel is refused. */
    SettleChoices choices(CommandSpec spec) {
        Map<SettleKind, SettleAdjustment> all = new EnumMap<>(SettleKind.class);
        for (String text : set) {
            try {
                Matcher parts = WRITTEN.matcher(text);
                if (!parts.matches()) {
                    throw new IllegalArgumentException("expected KIND.NAME=VALUE such as gas.drift=0.01");
                }
                SettleKind kind = SettleForm.kind(parts.group("kind"));
                SettleAdjustment one = one(kind, parts);
                all.merge(kind, one, (before, after) -> after.over(before));
            } catch (IllegalArgumentException e) {
                throw wrong(spec, "--set " + text + ": " + e.getMessage());
            }
        }
        SettleChoices choices = new SettleChoices(all);
        List<String> problems = SettleForm.problems(choices);
        if (!problems.isEmpty()) {
            throw wrong(spec, String.join(System.lineSeparator(), problems));
        }
        return choices;
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
            case "windows" ->
                new SettleAdjustment(
                        none,
                        none,
                        none,
                        Arrays.stream(value.split(",", -1))
                                .map(SettingOptions::number)
                                .toList(),
                        none,
                        none);
            case "dwell" -> new SettleAdjustment(none, none, none, List.of(), number(value), none);
            case "hunting" -> new SettleAdjustment(none, none, none, List.of(), none, number(value));
            default -> throw new IllegalArgumentException("nothing is called \"" + name + "\"; there are " + NAMES);
        };
    }

    private static double number(String text) {
        double number = NUMBER.matcher(text).matches() ? Double.parseDouble(text) : Double.NaN;
        if (!Double.isFinite(number)) {
            throw new IllegalArgumentException("expected a number such as 0.02, got \"" + text + "\"");
        }
        return number;
    }

    static ParameterException wrong(CommandSpec spec, String message) {
        return new ParameterException(spec.commandLine(), message);
    }
}
