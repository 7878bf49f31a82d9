package settlemark.job;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.settle.SettleChoices;

/**
 * What the person did or decided. Acts are stored with their time, so that a replay does the same. A step is named by
 * its key in the {@link JobState}.
 */
public sealed interface Act {
    /** "I did it": confirms a form, or arms a measuring step, which then takes itself. */
    record Confirm(String step) implements Act {}

    /** Back to turning the screw of a step that leaves a stage adjusted. */
    record Adjust(String step) implements Act {}

    /** The regulator cap is on: the adjusted value is noted and the as-left reading armed. */
    record CapOn(String step) implements Act {}

    /** Take the reading by hand, though not everything has settled. */
    record TakeNow(String step, String reason) implements Act {}

    /** The pressures of an armed step are taken once they stand; what else it reads is taken once that has settled. */
    record TakePressures(String step) implements Act {}

    record Skip(String step, String reason) implements Act {}

    /** Do a finished step again, in a new column beside the old one. */
    record Repeat(String step) implements Act {}

    /** @param item one of the step's ticks */
    record Tick(String step, String item, boolean done) implements Act {}

    /** @param cubicFeet that one turn of the meter's test dial lets pass, above 0 to 1000 */
    record MeterDial(String step, double cubicFeet) implements Act {
        public MeterDial {
            if (!(cubicFeet > 0 && cubicFeet <= 1000)) {
                throw new IllegalArgumentException(
                        "a turn of the dial lets above 0 and at most 1000 ft\u00B3 pass, got " + cubicFeet);
            }
        }
    }

    /** The meter's pointer passes its mark: begins a run, or counts a turn of the one that goes on. */
    record PointerAtMark(String step) implements Act {}

    /** The last press of the run that goes on was none. */
    record Unmark(String step) implements Act {}

    /** The run ends with the last mark. */
    record EndRun(String step) implements Act {}

    /** The run that goes on does not count. */
    record DropRun(String step, String reason) implements Act {}

    /**
     * A value that the person has read off an instrument of their own.
     *
     * @param role what it is of; its dimension is the unit's
     * @param value a finite number in the unit
     * @param halfWidth what it may be off by, in the unit; NaN where the person does not say
     * @param instrument which, in the person's words; never empty
     */
    record Entered(String step, Role role, double value, Unit unit, double halfWidth, String instrument)
            implements Act {
        public Entered {
            if (!Double.isFinite(value) || unit.dimension() != role.dimension()) {
                throw new IllegalArgumentException("a value of " + role.word() + " is a number with a unit of "
                        + role.dimension().name().toLowerCase(Locale.ROOT) + ", got " + value + " " + unit.symbol());
            }
            if (halfWidth < 0 || Double.isInfinite(halfWidth)) {
                throw new IllegalArgumentException("a value may be off by 0 or more, got " + halfWidth);
            }
            if (instrument.isBlank()) {
                throw new IllegalArgumentException("a typed value names the instrument that it was read from");
            }
        }
    }

    /** The heat in the gas, as the supplier says. */
    record Heat(GasHeat heat) implements Act {}

    /** The person has seen a safety notice. */
    record Seen(String notice) implements Act {}

    /**
     * What a former visit left at this appliance.
     *
     * @param when the day of that visit, as shown
     */
    record Former(String when, List<FormerReading> left) implements Act {
        public Former {
            left = List.copyOf(left);
        }
    }

    /**
     * Which instrument measures at some places, from now on.
     *
     * @param places with the name of its channel there, empty where that is not known
     * @param saidByProbe whether the probe itself said the serial number, else a person did
     */
    record Instrument(InstrumentCard card, Map<Role, String> places, boolean saidByProbe) implements Act {
        public Instrument {
            places = Map.copyOf(places);
        }
    }

    /**
     * Other settings of what counts as settled, from now on.
     *
     * @param from what held before, as the person saw it
     * @param to what holds from now on, the whole of it: the plan's and the workspace's do not count beside it
     */
    record Settings(SettleChoices from, SettleChoices to) implements Act {}

    /** The program had ended and the job goes on: what the hands did meanwhile is not known. */
    record GoOn(String why) implements Act {}

    record Note(String step, String text) implements Act {}

    /** The plate as entered, before anything was measured against it. */
    record Plate(RatingPlate plate) implements Act {}

    /** Who did the work. */
    record Person(String name) implements Act {}
}
