package settlemark.ui;

import settlemark.job.GasHeat;

/** A heating value as a person types it: the number, then who says so. */
final class TypedHeat {
    /** What a supplier's figure may be off by over a month; common practice. */
    private static final double WIDTH = 0.01;

    private TypedHeat() {}

    /** @throws IllegalArgumentException in words, where it is no heating value */
    static GasHeat of(String typed) {
        String[] parts = typed.strip().split("\\s+", 2);
        double value;
        try {
            value = Double.parseDouble(parts[0].replace(",", ""));
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException(
                    "a heating value is a number and who says so, such as \"1032 gas supplier\", got \"" + typed + "\"",
                    e);
        }
        if (parts.length < 2) {
            throw new IllegalArgumentException("say who gave the heating value, such as \"1032 gas supplier\"");
        }
        return new GasHeat(value, WIDTH, parts[1]);
    }
}
