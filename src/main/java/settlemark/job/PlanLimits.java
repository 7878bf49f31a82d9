package settlemark.job;

import java.util.Locale;
import settlemark.measure.Dimension;
import settlemark.measure.Unit;
import tools.jackson.databind.JsonNode;

/** A plan's own limits from its document. */
final class PlanLimits {
    private PlanLimits() {}

    /** @throws IllegalArgumentException where the limit makes no sense, in words */
    static StepLimit read(JsonNode node) {
        String subject = node.path("of").asString();
        String code = node.path("unit").asString();
        Unit unit = Unit.find(code)
                .orElseThrow(() -> new IllegalArgumentException(
                        "the limit's unit \"" + code + "\" is not known; write its UCUM code, such as [in_i'H2O]"));
        boolean rise = subject.equals("rise");
        Dimension needed = switch (subject) {
            case "rise" -> Dimension.TEMPERATURE;
            case "input" -> Dimension.POWER;
            case Combustion.CO_AIR_FREE, Combustion.EXCESS_AIR -> Dimension.FRACTION;
            default -> Dimension.PRESSURE;
        };
        if (unit.dimension() != needed) {
            throw new IllegalArgumentException("the limit of " + subject + " is in " + code + "; write it in a unit of "
                    + needed.name().toLowerCase(Locale.ROOT));
        }
        return new StepLimit(
                subject,
                new Limit(
                        node.path("least").asDouble(Double.NEGATIVE_INFINITY),
                        node.path("most").asDouble(Double.POSITIVE_INFINITY),
                        rise ? unit.difference() : unit,
                        node.path("source").asString()));
    }
}
