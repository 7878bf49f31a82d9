package settlemark.job;

import java.util.List;
import settlemark.measure.Role;

/** The job plans that come with the program, in the trade's order, with its customary cautions. */
public final class Plans {
    /** Ticks of the closing step. */
    public static final String PORTS_CLOSED = "Ports closed and caps on, leak-tested with the burner firing";

    public static final String STAGING_BACK = "Thermostat and staging put back to normal";
    public static final String OTHERS_RELIT = "All other appliances relit and working";

    private static final List<Role> PRESSURES = List.of(Role.INLET, Role.MANIFOLD);
    private static final List<Role> ALL = List.of(Role.INLET, Role.MANIFOLD, Role.SUPPLY, Role.RETURN);
    private static final String HOT =
            "Hot flue, live terminals, moving blower. The plate's input is never exceeded; the maker's instructions and"
                    + " local code come first.";
    private static final String SEALED =
            "A sealed air/gas-ratio valve is set only with a combustion analysis and the maker's say-so. Outside the"
                    + " adjusting window, change orifices, not pressure.";
    private static final String OPENING =
            "Gas off at the manual valve and power off before a test port is opened. Smell of gas: no switches,"
                    + " ventilate, leave, call.";

    private Plans() {}

    /** A furnace with two firing stages on natural gas: as found, adjusted, as left. */
    public static JobPlan twoStageNaturalGas() {
        return new JobPlan(
                "two-stage-natural-gas",
                "two-stage furnace, natural gas",
                List.of(
                        plate(),
                        probes(),
                        zero(),
                        lockUp(),
                        found("low", "low fire", "Call for low fire only. Read it as you found it: touch no screw."),
                        found("high", "high fire", "Call for high fire. Read it as you found it: touch no screw."),
                        left("low", "low fire"),
                        left("high", "high fire"),
                        shut(),
                        close(),
                        handOver()));
    }

    private static PlanStep plate() {
        return new PlanStep(
                "plate",
                StepKind.PLATE,
                "",
                "",
                "Plate",
                "Rating plate",
                "Check every number below against the rating plate",
                "The rating plate and the local code override every customary number. Work on gas is for a licensed or"
                        + " registered person.",
                "The plate says so",
                List.of(),
                List.of());
    }

    private static PlanStep probes() {
        return new PlanStep(
                "probes",
                StepKind.PROBES,
                "",
                "",
                "Probes",
                "Probes on their places",
                "Gas off, power off, open the ports, hang the gauge, put the air probes in the ducts",
                OPENING,
                "Probes are in place",
                List.of(),
                List.of());
    }

    private static PlanStep zero() {
        return new PlanStep(
                "zero",
                StepKind.ZERO,
                "",
                "",
                "Zero",
                "Zero, ports open to air",
                "Leave both hoses open to the air, the gauge lying as it will be used",
                "A zero taken with pressure on spoils every reading after it. Gas stays off at the manual valve.",
                "Both ports are open to air",
                PRESSURES,
                List.of());
    }

    private static PlanStep lockUp() {
        return new PlanStep(
                "lock-up",
                StepKind.LOCK_UP,
                "",
                "Supply",
                "lock-up",
                "Supply at lock-up",
                "Hoses on their taps, gas on, nothing firing: read the inlet at rest",
                "An inlet that keeps climbing with nothing firing is a regulator that does not lock up: shut off and"
                        + " call the supplier.",
                "Gas is on, nothing fires",
                PRESSURES,
                List.of());
    }

    private static PlanStep found(String stage, String name, String instruction) {
        return new PlanStep(
                "found-" + stage,
                StepKind.FOUND,
                stage,
                "As found",
                name,
                "As found, " + name,
                instruction,
                HOT,
                "Burner is on " + name,
                ALL,
                List.of());
    }

    private static PlanStep left(String stage, String name) {
        return new PlanStep(
                "left-" + stage,
                StepKind.LEFT,
                stage,
                "As left",
                name,
                "As left, " + name,
                "Bring the manifold to its target at " + name + ", then put the cap back",
                SEALED,
                "Cap is on: check it stays",
                ALL,
                List.of());
    }

    private static PlanStep shut() {
        return new PlanStep(
                "shut",
                StepKind.SHUT,
                "",
                "Valve",
                "shut",
                "Valve shut",
                "End the call for heat: the manifold must fall at once and stay at nothing",
                "A manifold at zero does not prove a tight valve: the burners are open holes. Only a let-by test with"
                        + " the trapped inlet does.",
                "The call has ended",
                List.of(Role.MANIFOLD),
                List.of());
    }

    private static PlanStep close() {
        return new PlanStep(
                "close",
                StepKind.CLOSE,
                "",
                "",
                "Close",
                "Closing up",
                "Gas off, hoses off the taps and open to air: read the zero again, then close up and leak-test",
                "Close the ports and leak-test them with the burner firing, with solution or a detector, never a flame.",
                "Both ports are open to air",
                PRESSURES,
                List.of(PORTS_CLOSED, STAGING_BACK, OTHERS_RELIT));
    }

    private static PlanStep handOver() {
        return new PlanStep(
                "record",
                StepKind.RECORD,
                "",
                "",
                "Record",
                "Record",
                "Read the record through, say who you are, and hand it over",
                "The record says what was measured. It does not authorise anything, and it lists what it does not"
                        + " cover.",
                "Make the record",
                List.of(),
                List.of());
    }
}
