package settlemark.job;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import settlemark.measure.Dimension;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.settle.PublishedRule;
import settlemark.settle.SettleAdjustment;
import settlemark.settle.SettleCheck;
import settlemark.settle.SettleChoices;
import settlemark.settle.SettleKind;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * What has been set of the detectors as a tree of JSON or YAML, and back: by kind ({@code gas}, {@code air}, {@code stack})
 * {@code drift}, {@code band}, {@code unit} (UCUM), {@code horizon}, {@code windows}, {@code dwell} and {@code hunting}, times
 * in seconds.
 */
public final class SettleForm {
    private static final String UNIT = "unit";

    private SettleForm() {}

    /**
     * Reads what is set.
     *
     * @throws IllegalArgumentException in words, where it makes no sense
     */
    public static SettleChoices read(JsonNode node) {
        Map<SettleKind, SettleAdjustment> all = new EnumMap<>(SettleKind.class);
        for (Map.Entry<String, JsonNode> entry : node.properties()) {
            SettleKind kind = kind(entry.getKey());
            try {
                all.put(kind, adjustment(kind, entry.getValue()));
            } catch (IllegalArgumentException e) {
                throw new IllegalArgumentException(entry.getKey() + " " + e.getMessage(), e);
            }
        }
        return new SettleChoices(all);
    }

    /** What cannot work, for any channel at all; a kind that nothing is set of is as it is. */
    public static List<String> problems(SettleChoices choices) {
        List<String> problems = new ArrayList<>();
        choices.adjustments()
                .forEach((kind, set) -> problems.addAll(
                        SettleCheck.problems(kind, set, 1, unit(kind).symbol(), Double.NaN, Double.NaN)));
        return problems;
    }

    /** The kind of channel that a role is; what an analyser reads goes with the stack. */
    public static SettleKind kind(Role role) {
        if (role == Role.STACK || role.gasAnalysis()) {
            return SettleKind.STACK;
        }
        return role.dimension() == Dimension.PRESSURE ? SettleKind.GAS : SettleKind.AIR;
    }

    /** The kind of channel by its word. */
    public static SettleKind kind(String word) {
        for (SettleKind kind : SettleKind.values()) {
            if (word(kind).equals(word)) {
                return kind;
            }
        }
        throw new IllegalArgumentException(
                "no kind of channel is called \"" + word + "\"; there are gas, air and stack");
    }

    /** The word of a kind of channel. */
    public static String word(SettleKind kind) {
        return kind.name().toLowerCase(Locale.ROOT);
    }

    /** The unit that settings of a kind are kept in. */
    public static Unit unit(SettleKind kind) {
        return kind == SettleKind.GAS ? Unit.INCH_OF_WATER : Unit.FAHRENHEIT;
    }

    /**
     * One unit of a code, in that of a kind's settings, as a difference.
     *
     * @throws IllegalArgumentException where it is none of that kind's, in words
     */
    public static double factor(SettleKind kind, String code) {
        Unit own = unit(kind);
        Unit unit = Unit.find(code)
                .filter(u -> u.dimension() == own.dimension())
                .orElseThrow(() -> new IllegalArgumentException("unit \"" + code + "\" is no unit of "
                        + own.dimension().name().toLowerCase(Locale.ROOT) + "; write its UCUM code, such as "
                        + own.code()));
        return Math.abs(unit.to(own).slope());
    }

    private static SettleAdjustment adjustment(SettleKind kind, JsonNode set) {
        double factor = set.has(UNIT) ? factor(kind, set.path(UNIT).asString("")) : 1;
        List<Double> windows = new ArrayList<>();
        set.path("windows").forEach(w -> windows.add(w.asDouble(Double.NaN)));
        return new SettleAdjustment(
                number(set, "drift") * factor,
                number(set, "band") * factor,
                number(set, "horizon"),
                windows,
                number(set, "dwell"),
                number(set, "hunting"));
    }

    private static double number(JsonNode set, String name) {
        JsonNode value = set.path(name);
        if (value.isMissingNode()) {
            return Double.NaN;
        }
        if (!value.isNumber()) {
            throw new IllegalArgumentException(name + " must be a number, got " + value);
        }
        return value.doubleValue();
    }

    /** What {@link #read} reads again as the same. */
    public static void write(SettleChoices choices, ObjectNode node) {
        choices.adjustments().forEach((kind, set) -> {
            ObjectNode own = node.putObject(word(kind));
            if (!Double.isNaN(set.driftLimit()) || !Double.isNaN(set.band())) {
                own.put(UNIT, unit(kind).code());
            }
            put(own, "drift", set.driftLimit());
            put(own, "band", set.band());
            put(own, "horizon", set.horizonSeconds());
            if (!set.windowSeconds().isEmpty()) {
                ArrayNode windows = own.putArray("windows");
                set.windowSeconds().forEach(windows::add);
            }
            put(own, "dwell", set.dwellSeconds());
            put(own, "hunting", set.huntingSeconds());
        });
    }

    private static void put(ObjectNode node, String name, double value) {
        if (!Double.isNaN(value)) {
            node.put(name, value);
        }
    }

    /**
     * By what a step's channels are called settled.
     *
     * @param node missing for the proof alone
     * @throws IllegalArgumentException where no rule has that name, in words
     */
    public static SettledBy settledBy(JsonNode node) {
        if (node.isMissingNode()) {
            return SettledBy.PROOF;
        }
        return settledBy(node.path("rule").asString(""), node.path("alone").asBoolean(false));
    }

    /**
     * By what channels are called settled.
     *
     * @param key of the rule
     * @param alone whether it stands for the statistical proof
     * @throws IllegalArgumentException where no rule has that name, in words
     */
    public static SettledBy settledBy(String key, boolean alone) {
        PublishedRule rule = PublishedRule.ofKey(key)
                .orElseThrow(() -> new IllegalArgumentException(
                        "no rule is called \"" + key + "\"; there are " + String.join(", ", PublishedRule.keys())));
        return new SettledBy(Optional.of(rule), alone);
    }

    /** What {@link #settledBy(JsonNode)} reads again as the same; nothing for the proof alone. */
    public static void write(SettledBy by, ObjectNode step) {
        by.rule()
                .ifPresent(rule ->
                        step.putObject("settled").put("rule", rule.key()).put("alone", by.alone()));
    }
}
