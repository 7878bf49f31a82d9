package settlemark.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Optional;
import settlemark.calc.PublishedLimit;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Published limits, for people and for programs. */
final class LimitReport {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    private LimitReport() {}

    static void text(List<PublishedLimit> limits, PrintWriter out) {
        for (PublishedLimit limit : limits) {
            out.println(limit.name()
                    + said(" from ", limit.lower())
                    + said(" nominal ", limit.nominal())
                    + said(" to ", limit.upper())
                    + " " + limit.unit().symbol());
            out.println("    " + limit.source() + (limit.fromMemory() ? " (from memory)" : ""));
        }
        out.println("The rating plate and the local code override all of these.");
    }

    static void json(List<PublishedLimit> limits, PrintWriter out) {
        ArrayNode array = MAPPER.createArrayNode();
        for (PublishedLimit limit : limits) {
            ObjectNode node = array.addObject();
            node.put("name", limit.name());
            limit.lower().ifPresent(figure -> node.put("lower", figure));
            limit.nominal().ifPresent(figure -> node.put("nominal", figure));
            limit.upper().ifPresent(figure -> node.put("upper", figure));
            node.put("unit", limit.unit().code());
            node.put("source", limit.source());
            node.put("fromMemory", limit.fromMemory());
        }
        out.println(MAPPER.writerWithDefaultPrettyPrinter().writeValueAsString(array));
    }

    private static String said(String word, Optional<Double> figure) {
        return figure.map(f -> word + CalcReport.digits(f)).orElse("");
    }
}
