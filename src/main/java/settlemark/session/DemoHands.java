package settlemark.session;

/** What a person's hands can do to the simulated appliance. Safe to call from any thread. */
public interface DemoHands {
    /** What the room thermostat asks for. */
    enum Call {
        OFF,
        LOW,
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

    /** @param meterCubicFeet as {@link DemoHands#meterCubicFeet} */
    record State(
            Call call, boolean capOn, boolean portsOpen, double lowTurns, double highTurns, double meterCubicFeet) {}
}
