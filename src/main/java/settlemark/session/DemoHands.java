package settlemark.session;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import settlemark.job.Act;
import settlemark.measure.Role;
import settlemark.measure.Unit;

/** What a person's hands can do to the simulated appliance. Safe to call from any thread. */
public interface DemoHands {
    /** What the room thermostat asks for. */
    enum Call {
        OFF,
        LOW,
        /** Between the two, where the burner modulates. */
        MIDDLE,
        HIGH
    }

    void call(Call call);

    /** @param stage {@code low} or {@code high}; @param turns clockwise positive, which raises the pressure */
    void turnScrew(String stage, double turns);

    void cap(boolean on);

    /** Both test ports of the gauge open to the air, as for zeroing; else on their taps. */
    void portsOpen(boolean open);

    /** The appliance's manual valve; shut, it traps the gas between itself and the appliance's gas valve. */
    void manualValve(boolean open);

    /** Another appliance on the same supply. */
    void otherAppliance(boolean burning);

    /** What the house's gas meter has counted, in cubic feet: its test dial, as anybody can read it. */
    double meterCubicFeet();

    State state();

    /** What a hand-held analyser and a static gauge show on the simulated appliance; empty where there are none. */
    default Optional<Analysis> analysis() {
        return Optional.empty();
    }

    /**
     * Read by eye.
     *
     * @param oxygenPercent in the dry flue gas
     * @param carbonMonoxidePpm in the dry flue gas
     * @param stackDegF flue gas
     * @param supplyStaticInH2o on the blower's side to the house
     * @param returnStaticInH2o on its other side
     */
    record Analysis(
            double oxygenPercent,
            double carbonMonoxidePpm,
            double stackDegF,
            double supplyStaticInH2o,
            double returnStaticInH2o) {
        private static final String ANALYSER = "demo analyser (simulated)";
        private static final String GAUGE = "demo static gauge (simulated)";

        /** As they are typed in a step, for those roles that these instruments read. */
        public List<Act> acts(String step, List<Role> roles) {
            List<Act> acts = new ArrayList<>();
            for (Role role : roles) {
                switch (role) {
                    case OXYGEN -> acts.add(typed(step, role, oxygenPercent, 1, Unit.PERCENT, ANALYSER));
                    case CARBON_MONOXIDE ->
                        acts.add(typed(step, role, carbonMonoxidePpm, 0, Unit.ucum("[ppm]"), ANALYSER));
                    case STACK -> acts.add(typed(step, role, stackDegF, 0, Unit.FAHRENHEIT, ANALYSER));
                    case SUPPLY_STATIC -> acts.add(typed(step, role, supplyStaticInH2o, 2, Unit.INCH_OF_WATER, GAUGE));
                    case RETURN_STATIC -> acts.add(typed(step, role, returnStaticInH2o, 2, Unit.INCH_OF_WATER, GAUGE));
                    case INLET, MANIFOLD, SUPPLY, RETURN, CARBON_DIOXIDE, ROOM_CARBON_MONOXIDE -> {}
                }
            }
            return acts;
        }

        /** An eye reads the digits that the instrument has. */
        private static Act typed(String step, Role role, double value, int decimals, Unit unit, String instrument) {
            double ten = Math.pow(10, decimals);
            return new Act.Entered(step, role, Math.rint(value * ten) / ten, unit, Double.NaN, instrument);
        }
    }

    /** @param meterCubicFeet as {@link DemoHands#meterCubicFeet} */
    record State(
            Call call, boolean capOn, boolean portsOpen, double lowTurns, double highTurns, double meterCubicFeet) {}
}
