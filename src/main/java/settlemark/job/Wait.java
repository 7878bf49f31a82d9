package settlemark.job;

import java.util.Locale;
import settlemark.measure.Role;

/**
 * Why an armed reading is not taken yet. It is found anew at each sample and seldom read, so it is put into words only where
 * somebody asks; what the words say is held by value, as it was at the sample.
 *
 * <p>What is said at each sample for long is a record and no lambda: one that captures is made through a method handle, which
 * is slow until it is compiled.
 */
@FunctionalInterface
interface Wait {
    /** Nothing is waited for. */
    Wait NOTHING = () -> "";

    /** The sentence, empty of {@link #NOTHING} alone. */
    String words();

    /** Whether there is nothing to wait for. */
    default boolean isNothing() {
        return this == NOTHING;
    }

    /** The same with something said after it, which may be empty. */
    default Wait with(String after) {
        return after.isEmpty() ? this : new Followed(this, after);
    }

    /** @param rest of the sentence, from the blank after the channel on */
    record Of(Role role, String rest) implements Wait {
        @Override
        public String words() {
            return role.word() + rest;
        }
    }

    /** @param rest how long it lasts, as a format of whole seconds */
    record Seconds(Role role, String rest, double seconds) implements Wait {
        @Override
        public String words() {
            return role.word() + String.format(Locale.ROOT, rest, seconds);
        }
    }

    /** The manifold is too low for the stage. */
    record NotLit(StagePlate stage, double pressure, String unit) implements Wait {
        @Override
        public String words() {
            return String.format(
                    Locale.ROOT, "the burner is not on %s: manifold %.2f %s", stage.name(), pressure, unit);
        }
    }

    /** One with something said after it. */
    record Followed(Wait first, String after) implements Wait {
        @Override
        public String words() {
            return first.words() + after;
        }
    }
}
