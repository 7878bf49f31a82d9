package settlemark.calc;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import settlemark.measure.Quantity;

/**
 * What a formula is given, by key.
 *
 * @param numbers in any unit of the right dimension
 * @param choices words
 */
public record Inputs(Map<String, Quantity> numbers, Map<String, String> choices) {
    public Inputs {
        numbers = Collections.unmodifiableMap(new LinkedHashMap<>(numbers));
        choices = Collections.unmodifiableMap(new LinkedHashMap<>(choices));
    }

    public static Inputs none() {
        return new Inputs(Map.of(), Map.of());
    }

    /** With one more number. */
    public Inputs with(String key, Quantity quantity) {
        Map<String, Quantity> more = new LinkedHashMap<>(numbers);
        more.put(key, quantity);
        return new Inputs(more, choices);
    }

    /** With one more word. */
    public Inputs with(String key, String choice) {
        Map<String, String> more = new LinkedHashMap<>(choices);
        more.put(key, choice);
        return new Inputs(numbers, more);
    }

    boolean has(String key) {
        return numbers.containsKey(key) || choices.containsKey(key);
    }

    Optional<Quantity> number(String key) {
        return Optional.ofNullable(numbers.get(key));
    }
}
