package settlemark.ui;

import java.util.ArrayList;
import java.util.List;
import settlemark.session.DemoHands;

/** Hands that remember what they did. */
final class FakeHands implements DemoHands {
    private final List<String> done = new ArrayList<>();
    private State state = new State(Call.OFF, true, false, 0, 0, 12.25);

    @Override
    public synchronized void call(Call call) {
        done.add("call " + call);
        state = new State(
                call, state.capOn(), state.portsOpen(), state.lowTurns(), state.highTurns(), state.meterCubicFeet());
    }

    @Override
    public synchronized void turnScrew(String stage, double turns) {
        done.add("turn " + stage + " " + turns);
        boolean low = stage.equals("low");
        state = new State(
                state.call(),
                state.capOn(),
                state.portsOpen(),
                state.lowTurns() + (low ? turns : 0),
                state.highTurns() + (low ? 0 : turns),
                state.meterCubicFeet());
    }

    @Override
    public synchronized void cap(boolean on) {
        done.add("cap " + on);
        state = new State(
                state.call(), on, state.portsOpen(), state.lowTurns(), state.highTurns(), state.meterCubicFeet());
    }

    @Override
    public synchronized void portsOpen(boolean open) {
        done.add("ports " + open);
        state = new State(
                state.call(), state.capOn(), open, state.lowTurns(), state.highTurns(), state.meterCubicFeet());
    }

    @Override
    public synchronized void manualValve(boolean open) {
        done.add("valve " + open);
    }

    @Override
    public synchronized void otherAppliance(boolean burning) {
        done.add("other " + burning);
    }

    @Override
    public synchronized double meterCubicFeet() {
        return state.meterCubicFeet();
    }

    @Override
    public synchronized State state() {
        return state;
    }

    synchronized List<String> done() {
        return List.copyOf(done);
    }
}
