package settlemark.profile;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tools.jackson.databind.JsonNode;

/** From a raw number to a value. */
final class CurveReader {
    private CurveReader() {}

    /** Empty where it is wrong; a problem says why. */
    static Optional<Curve> read(Section field) {
        List<String> named = new ArrayList<>(field.present(List.of("polynomial", "table")));
        if (field.has("scale") || field.has("offset")) {
            named.add(0, field.has("scale") ? "scale" : "offset");
        }
        if (named.size() > 1) {
            field.error(
                    named.get(1),
                    "a field must have at most one of scale with offset, polynomial, table, got " + Words.got(named));
            return Optional.empty();
        }
        if (field.has("polynomial")) {
            return Optional.of(new Curve.Polynomial(numbers(field.node("polynomial"))));
        }
        return field.has("table") ? table(field) : linear(field);
    }

    private static Optional<Curve> linear(Section field) {
        double scale = field.number("scale", 1);
        if (scale == 0) {
            field.error("scale", "scale must not be 0: every value would be the offset");
            return Optional.empty();
        }
        return Optional.of(new Curve.Linear(scale, field.number("offset", 0)));
    }

    private static Optional<Curve> table(Section field) {
        List<Double> raws = new ArrayList<>();
        List<Double> values = new ArrayList<>();
        field.node("table").forEach(point -> {
            raws.add(point.get(0).asDouble());
            values.add(point.get(1).asDouble());
        });
        int bend = bend(raws, 1);
        if (bend > 0) {
            complain(field, bend, "raw numbers of a table must rise", raws);
            return Optional.empty();
        }
        int sign = values.get(1) > values.get(0) ? 1 : -1;
        bend = bend(values, sign);
        if (bend > 0) {
            complain(field, bend, "values of a table must rise or fall all the way", values);
            return Optional.empty();
        }
        return Optional.of(new Curve.Table(raws, values));
    }

    /** Index of the first number that does not go on as it should, 0 where all do. */
    private static int bend(List<Double> numbers, int sign) {
        for (int i = 1; i < numbers.size(); i++) {
            if (!(sign * numbers.get(i) > sign * numbers.get(i - 1))) {
                return i;
            }
        }
        return 0;
    }

    private static void complain(Section field, int index, String message, List<Double> numbers) {
        field.items("table")
                .get(index)
                .error(message + ", got " + numbers.get(index) + " after " + numbers.get(index - 1));
    }

    private static List<Double> numbers(JsonNode list) {
        List<Double> numbers = new ArrayList<>();
        list.forEach(number -> numbers.add(number.asDouble()));
        return numbers;
    }
}
