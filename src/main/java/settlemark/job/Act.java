package settlemark.job;

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

    record Skip(String step, String reason) implements Act {}

    /** Do a finished step again, in a new column beside the old one. */
    record Repeat(String step) implements Act {}

    /** @param item one of the step's ticks */
    record Tick(String step, String item, boolean done) implements Act {}

    record Note(String step, String text) implements Act {}

    /** The plate as entered, before anything was measured against it. */
    record Plate(RatingPlate plate) implements Act {}

    /** Who did the work. */
    record Person(String name) implements Act {}
}
