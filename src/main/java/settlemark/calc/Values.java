package settlemark.calc;

import java.util.Map;

/** The checked inputs of a formula as it computes: numbers in SI units. */
final class Values {
    private final Map<String, Integer> places;
    private final double[] numbers;
    private final Map<String, String> choices;

    Values(Map<String, Integer> places, double[] numbers, Map<String, String> choices) {
        this.places = places;
        this.numbers = numbers;
        this.choices = choices;
    }

    boolean has(String key) {
        return places.containsKey(key) || choices.containsKey(key);
    }

    /** In the parameter's SI unit. */
    double of(String key) {
        Integer place = places.get(key);
        if (place == null) {
            throw new IllegalStateException("the formula did not declare \"" + key + "\"");
        }
        return numbers[place];
    }

    double of(String key, double otherwise) {
        return places.containsKey(key) ? of(key) : otherwise;
    }

    String choice(String key) {
        String choice = choices.get(key);
        if (choice == null) {
            throw new IllegalStateException("the formula did not declare \"" + key + "\"");
        }
        return choice;
    }

    String choice(String key, String otherwise) {
        return choices.getOrDefault(key, otherwise);
    }

    Values withNumbers(double[] others) {
        return new Values(places, others, choices);
    }
}
