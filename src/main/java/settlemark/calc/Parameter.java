package settlemark.calc;

import java.util.List;
import java.util.Objects;
import settlemark.measure.Unit;

/** What a formula asks for, by the key that it is given under. */
public sealed interface Parameter {
    String key();

    /** What it is, for people. */
    String words();

    /** True where the formula has its own figure for it, which it then names in a warning. */
    boolean optional();

    /**
     * A number with its unit.
     *
     * @param unit SI unit that the formula computes in
     * @param shown unit that ranges are said in
     * @param least smallest valid value in the SI unit
     * @param most largest valid value in the SI unit
     */
    record Number(String key, String words, boolean optional, Unit unit, Unit shown, double least, double most)
            implements Parameter {
        public Number {
            Objects.requireNonNull(key);
            Objects.requireNonNull(words);
            Objects.requireNonNull(unit);
            Objects.requireNonNull(shown);
            if (!(least < most)) {
                throw new IllegalArgumentException("the range of " + key + " is empty: " + least + " to " + most);
            }
        }

        boolean holds(double si) {
            // The ends are often said in another unit: what conversion rounds must not refuse them.
            double rounding = 1e-12 * (most - least);
            return si >= least - rounding && si <= most + rounding;
        }
    }

    /**
     * One of some words.
     *
     * @param words what it is
     * @param choices the words that may be said, none where any may be
     */
    record Choice(String key, String words, boolean optional, List<String> choices) implements Parameter {
        public Choice {
            Objects.requireNonNull(key);
            Objects.requireNonNull(words);
            choices = List.copyOf(choices);
        }
    }
}
