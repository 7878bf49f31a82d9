package settlemark.job;

import java.util.Locale;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.settle.ChannelReading;

/**
 * A value that a person has typed from an instrument of their own.
 *
 * @param role what it is of
 * @param value in the unit
 * @param unit of it
 * @param halfWidth what it may be off by, in the unit
 * @param customary whether that is what such instruments customarily have, as the person did not say
 * @param instrument which
 * @param timeNanos session time at which it was typed
 */
public record TypedValue(
        Role role, double value, Unit unit, double halfWidth, boolean customary, String instrument, long timeNanos) {
    /** From memory of what flue gas analysers are tested to (EN 50379-2); the instrument's own figure wins. */
    private static final double OXYGEN_PERCENT = 0.3;

    private static final double CO_PPM = 20;
    private static final double CO_PART = 0.05;
    private static final double STATIC_IN_H2O = 0.02;
    private static final double STACK_DEG_F = 5;

    static TypedValue of(Act.Entered act, long timeNanos) {
        boolean customary = Double.isNaN(act.halfWidth());
        return new TypedValue(
                act.role(),
                act.value(),
                act.unit(),
                customary ? customary(act) : act.halfWidth(),
                customary,
                act.instrument(),
                timeNanos);
    }

    private static double customary(Act.Entered act) {
        Unit unit = act.unit();
        return switch (act.role()) {
            case OXYGEN, CARBON_DIOXIDE -> Unit.PERCENT.to(unit).applyDifference(OXYGEN_PERCENT);
            case CARBON_MONOXIDE, ROOM_CARBON_MONOXIDE ->
                Math.max(Unit.ucum("[ppm]").to(unit).applyDifference(CO_PPM), CO_PART * Math.abs(act.value()));
            case INLET, MANIFOLD, SUPPLY_STATIC, RETURN_STATIC ->
                Unit.INCH_OF_WATER.to(unit).applyDifference(STATIC_IN_H2O);
            case SUPPLY, RETURN, STACK -> Unit.FAHRENHEIT.to(unit).applyDifference(STACK_DEG_F);
        };
    }

    /** As a part of a reading: rectangular within its half width. */
    ChannelReading part() {
        return new ChannelReading(
                role,
                value,
                halfWidth / Math.sqrt(3),
                Double.NaN,
                0,
                unit,
                timeNanos,
                timeNanos,
                false,
                String.format(
                        Locale.ROOT,
                        "typed, from %s; within %s %s%s",
                        instrument,
                        Figure.of(halfWidth),
                        unit.symbol(),
                        customary ? ", as such instruments customarily are" : ""));
    }
}
