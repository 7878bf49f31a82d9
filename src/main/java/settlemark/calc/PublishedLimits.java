package settlemark.calc;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import settlemark.measure.Unit;

/** Limits of published rules by name. None of them stands above the rating plate or the local code. */
public final class PublishedLimits {
    private static final String HEATER = "10 CFR 430 Subpart B Appendix O";
    private static final String FURNACE = "10 CFR 430 Subpart B Appendix N";
    private static final String COMMERCIAL = "10 CFR 431 Subpart G Appendix A";
    private static final String TEST_GAS = "EN 437";
    private static final String WATER = "[in_i'H2O]";
    private static final String MBAR = "mbar";
    private static final String DEGREE = "[degF]";
    private static final String DEGREES = "[degF] apart";
    private static final String PPM = "[ppm]";
    private static final String MINUTES = "min";
    private static final String CHIMNEY = "1. BImSchV, since 2010";
    private static final String Z21 = "ANSI Z21 series as a trade article gives it, air-free";

    private static final List<PublishedLimit> ALL = List.of(
            seen("inlet-test-natural", 7.0, null, 10.0, WATER, HEATER + ", 2.3.1"),
            seen("inlet-test-propane", 11.0, null, 13.0, WATER, HEATER + ", 2.3.2"),
            seen("manifold-deviation-absolute", -0.2, null, 0.2, WATER, HEATER + ", 2.3.1: the greater of both"),
            seen("manifold-deviation-relative", -10.0, null, 10.0, "%", HEATER + ", 2.3.1: the greater of both"),
            seen("input-deviation", -2.0, null, 2.0, "%", HEATER + ", 2.4.1: after 15 min from cold"),
            memory("g20-supply", 17.0, 20.0, 25.0, MBAR, TEST_GAS),
            memory("g25-supply", 20.0, 25.0, 30.0, MBAR, TEST_GAS),
            memory("g30-supply", 20.0, 29.0, 35.0, MBAR, TEST_GAS),
            memory("g31-supply-37", 25.0, 37.0, 45.0, MBAR, TEST_GAS),
            memory("g31-supply-50", 42.5, 50.0, 57.5, MBAR, TEST_GAS),
            seen(
                    "lp-supply-uk",
                    19.0,
                    null,
                    75.0,
                    MBAR,
                    "BS 6400-1, scope: design minimum, maximum operating pressure"),
            seen("lp-incidental-uk", null, null, 200.0, MBAR, "BS 6400-1, scope: maximum incidental pressure"),
            memory("furnace-inlet-test-natural", 3.5, 7.0, 10.5, WATER, "ANSI Z21.47"),
            seen(
                    "tightness-test-uk-least",
                    18.0,
                    null,
                    null,
                    MBAR,
                    "IGEM/UP/1B Edition 4, as the trade press gives it"),
            memory("tightness-test-uk", 20.0, null, 21.0, MBAR, "IGEM/UP/1B Edition 4"),
            seen("pipe-test-dwelling-us", 10.0, null, null, MINUTES, "IRC 2021 G2417.4.2, dwellings"),
            seen(
                    "pipe-test-pressure-us",
                    3.0,
                    null,
                    null,
                    "[psi]",
                    "IFGC 2015 406.4.1: or 1.5 times the working pressure"),
            seen("pipe-test-gauge-range-us", null, null, 5.0, "1", "IRC 2021 G2417.4: over the test pressure"),
            seen("leak-check-us", 8.5, 9.0, 9.5, WATER, "NFPA 54 Annex C.3: no loss or gain"),
            seen("leak-check-time-us", 3.0, null, null, MINUTES, "NFPA 54 Annex C.3"),
            seen("furnace-flue-carbon-monoxide", null, null, 400.0, PPM, "ANSI Z21.47-1993, 2.8.1, air-free"),
            seen("vented-carbon-monoxide", null, null, 400.0, PPM, Z21),
            seen("unvented-carbon-monoxide", null, null, 200.0, PPM, Z21),
            seen("oven-carbon-monoxide", null, null, 800.0, PPM, Z21),
            seen("ambient-carbon-monoxide-8-hours", null, null, 9.0, PPM, "NAAQS, as air agencies give it"),
            seen("ambient-carbon-monoxide-1-hour", null, null, 35.0, PPM, "NAAQS, as air agencies give it"),
            seen("flue-loss-4-to-25-kw", null, null, 11.0, "%", CHIMNEY),
            seen("flue-loss-25-to-50-kw", null, null, 10.0, "%", CHIMNEY),
            seen("flue-loss-above-50-kw", null, null, 9.0, "%", CHIMNEY),
            seen("steady-draft-diverter", -3.0, null, 3.0, DEGREES, HEATER + ", 3.1.1: 3 readings 15 min apart, stack"),
            seen("steady-draft-hood", -5.0, null, 5.0, DEGREES, HEATER + ", 3.1.1: 3 readings 15 min apart, flue"),
            seen("steady-oil", -5.0, null, 5.0, DEGREES, HEATER + ", 3.1.2: 3 readings 15 min apart, flue"),
            seen("room-deviation", -5.0, null, 5.0, DEGREES, HEATER + ", 2.9"),
            seen("room-temperature", 65.0, null, 100.0, DEGREE, HEATER + ", 2.9"),
            seen("input-repeatability", -2.0, null, 2.0, "%", COMMERCIAL + ", 5.3: any two 10-minute rates"),
            seen("fuel-instruments", -1.0, null, 1.0, "%", COMMERCIAL + ", 2.7: rate and quantity"),
            seen("outlet-rise-below-500-kbtu", -0.5, null, 0.5, DEGREES, COMMERCIAL + ", 5.1: every minute"),
            seen("outlet-rise-above-500-kbtu", -1.0, null, 1.0, DEGREES, COMMERCIAL + ", 5.1: every minute"),
            memory("steady-condensing", -1.0, null, 1.0, DEGREES, "ASHRAE 103, 9.1: 3 readings 15 min apart, flue"),
            seen("rise-target-deviation", -2.0, null, 2.0, DEGREES, FURNACE + ", 7.5"),
            seen("condensate-collection", 30.0, null, null, MINUTES, FURNACE + ", 8.4"),
            seen("fuel-and-heating-value-error", -1.0, null, 1.0, "%", FURNACE + ", 8.4"),
            seen("appliance-rating-korea", -10.0, null, 10.0, "%", "Korean appliance test, gas-meter method"),
            seen("repeat-difference-korea", null, null, 2.0, "%", "Korean appliance test, gas-meter method"),
            seen("calibration-interval-boilers", null, null, 12.0, "mo", "10 CFR 431 Subpart E Appendix A, 2.1.3"));

    private PublishedLimits() {}

    /** All, in the order of the work. */
    public static List<PublishedLimit> all() {
        return ALL;
    }

    public static Optional<PublishedLimit> find(String name) {
        return ALL.stream().filter(limit -> limit.name().equals(name)).findFirst();
    }

    private static PublishedLimit seen(
            String name,
            @Nullable Double lower,
            @Nullable Double nominal,
            @Nullable Double upper,
            String unit,
            String source) {
        return limit(name, lower, nominal, upper, unit, source, false);
    }

    private static PublishedLimit memory(
            String name,
            @Nullable Double lower,
            @Nullable Double nominal,
            @Nullable Double upper,
            String unit,
            String source) {
        return limit(name, lower, nominal, upper, unit, source, true);
    }

    private static PublishedLimit limit(
            String name,
            @Nullable Double lower,
            @Nullable Double nominal,
            @Nullable Double upper,
            String unit,
            String source,
            boolean fromMemory) {
        return new PublishedLimit(
                name,
                Optional.ofNullable(lower),
                Optional.ofNullable(nominal),
                Optional.ofNullable(upper),
                unit.equals(DEGREES) ? Unit.FAHRENHEIT_DIFFERENCE : Unit.ucum(unit),
                source,
                fromMemory);
    }
}
