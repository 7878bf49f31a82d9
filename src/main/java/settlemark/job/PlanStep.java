package settlemark.job;

import java.util.List;
import java.util.Objects;
import java.util.Set;
import settlemark.measure.Dimension;
import settlemark.measure.Role;

/**
 * One act of a plan, one column of the strip.
 *
 * @param key unique within the plan
 * @param kind what kind of act
 * @param stage key of the firing stage, empty where none burns
 * @param group head over neighbouring columns, for instance {@code As found}
 * @param name short name of the column, for instance {@code low fire}
 * @param title full name, for instance {@code As found, low fire}
 * @param instruction the step in words
 * @param caution what can go wrong, never empty
 * @param press what the primary button says: the physical act that the press reports
 * @param required the channels that must settle
 * @param ticks what the person ticks, in order
 * @param watch how long a trapped pressure is watched; {@link Watch#NONE} for every other kind
 * @param limits what the reading is held against beside the rating plate
 * @param settledBy by what its channels are called settled
 * @param pressuresFirst whether its pressures are taken once they stand, and the rest when that has settled; else all stand
 *     at one time
 */
public record PlanStep(
        String key,
        StepKind kind,
        String stage,
        String group,
        String name,
        String title,
        String instruction,
        String caution,
        String press,
        List<Role> required,
        List<String> ticks,
        Watch watch,
        List<StepLimit> limits,
        SettledBy settledBy,
        boolean pressuresFirst) {
    public PlanStep {
        Objects.requireNonNull(kind);
        Objects.requireNonNull(watch);
        Objects.requireNonNull(settledBy);
        required = List.copyOf(required);
        ticks = List.copyOf(ticks);
        limits = List.copyOf(limits);
        require(!caution.isBlank(), key, "has no caution");
        require(kind.measuring() || required.isEmpty(), key, "takes no reading, so no channel has to settle for it");
        require(!kind.measuring() || !required.isEmpty(), key, "takes a reading; say which channels must settle");
        require(kind != StepKind.CHECK || !ticks.isEmpty(), key, "is done by its ticks and has none");
        require(kind.staged() != stage.isEmpty(), key, kind.staged() ? "needs its firing stage" : "fires no stage");
        require(
                kind == StepKind.HOLD == watch.holdSeconds() > 0,
                key,
                kind == StepKind.HOLD ? "says how long the pressure is watched" : "watches no trapped pressure");
        require(
                kind != StepKind.HOLD || settledBy.equals(SettledBy.PROOF),
                key,
                "watches a trapped pressure, whose change is what is looked for; take its rule away");
        require(
                !pressuresFirst || inParts(kind, required),
                key,
                "reads no pressure beside something else; take \"pressures-first\" away");
        Set<Role> roles = Set.copyOf(required);
        require(
                settledBy.rule().isEmpty()
                        || roles.stream().anyMatch(r -> settledBy.rule(r).isPresent()),
                key,
                "needs no channel that its rule is about; name one under \"required\", or another rule");
    }

    /** The same act called settled by something else; as it is where that asks nothing of its channels. */
    PlanStep settledBy(SettledBy other) {
        boolean about = other.rule().isEmpty()
                || required.stream().anyMatch(r -> other.rule(r).isPresent());
        return about && kind != StepKind.HOLD
                ? new PlanStep(
                        key,
                        kind,
                        stage,
                        group,
                        name,
                        title,
                        instruction,
                        caution,
                        press,
                        required,
                        ticks,
                        watch,
                        limits,
                        other,
                        pressuresFirst)
                : this;
    }

    /** Channels that must have a probe: none of a step whose values may be typed. */
    public List<Role> probed() {
        return kind.typed() ? List.of() : required;
    }

    /** Whether its pressures can be taken before the rest: minutes lie between a pressure and the air that answers it. */
    public boolean inParts() {
        return inParts(kind, required);
    }

    private static boolean inParts(StepKind kind, List<Role> required) {
        boolean taken = kind.firing() || kind == StepKind.THIS_APPLIANCE || kind == StepKind.ALL_APPLIANCES;
        long pressures = required.stream()
                .filter(r -> r.dimension() == Dimension.PRESSURE)
                .count();
        return taken && pressures > 0 && pressures < required.size();
    }

    private static void require(boolean good, String key, String message) {
        if (!good) {
            throw new IllegalArgumentException("step \"" + key + "\" " + message);
        }
    }

    /**
     * How long a trapped pressure is watched.
     *
     * @param settleSeconds from the act until the first reading, so that the gas comes to the pipe's temperature
     * @param holdSeconds between the first reading and the second
     */
    public record Watch(double settleSeconds, double holdSeconds) {
        public static final Watch NONE = new Watch(0, 0);

        public Watch {
            if (!(settleSeconds >= 0 && settleSeconds <= 7200 && holdSeconds >= 0 && holdSeconds <= 7200)) {
                throw new IllegalArgumentException(
                        "a pressure is watched for up to 7200 s, got " + settleSeconds + " and " + holdSeconds);
            }
        }
    }
}
