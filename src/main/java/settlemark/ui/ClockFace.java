package settlemark.ui;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import settlemark.calc.Result;
import settlemark.job.Clocking;
import settlemark.measure.Quantity;

/** The gas meter clocked: turns, seconds and the input so far, large; the runs, and where the input lies. */
final class ClockFace extends Face {
    private final DigitField turns;
    private final DigitField seconds;
    private final DigitField input;
    private final ClockRuns runs;
    private final Remark remark;

    ClockFace(Look look) {
        super(look, Words.say("clocking the meter"));
        turns = new DigitField(look);
        seconds = new DigitField(look);
        input = new DigitField(look);
        runs = new ClockRuns(look);
        remark = new Remark(look);
        add(turns);
        add(seconds);
        add(input);
        add(remark);
        add(runs);
    }

    @Override
    int neededWidth() {
        return ClockRuns.neededWidth(look);
    }

    @Override
    void show(Scene scene, boolean digits) {
        runs.show(scene);
        remark.show(scene.open());
        if (!digits) {
            return;
        }
        Clocking clocking = scene.open().clocking();
        Clocking.@Nullable Run run = shown(clocking);
        boolean running = clocking.running().isPresent();
        String count = run == null ? "0" : String.valueOf(run.turns());
        String time = run == null ? "0.0" : Numbers.fixed(running ? since(scene, run) : run.seconds(), 1);
        Optional<Quantity> heat = input(clocking, run);
        String value = heat.map(q -> Numbers.fixed(q.value() / 1000, 1)).orElse("");
        turns.show(count, !running, false);
        turns.sentence(Words.say("{0} turns", count));
        seconds.show(time, false, false);
        seconds.sentence(Words.say("{0} seconds in this run", time));
        input.show(value, true, false);
        input.sentence(
                value.isEmpty() ? Words.say("no input yet") : Words.say("{0} thousand Btu per hour so far", value));
    }

    private static double since(Scene scene, Clocking.Run run) {
        return Math.max(0, (scene.snapshot().timeNanos() - run.marksNanos().get(0)) / 1e9);
    }

    /** The run that goes on, else the last that counts. */
    static Clocking.@Nullable Run shown(Clocking clocking) {
        List<Clocking.Run> counting = clocking.counting();
        return clocking.running().orElse(counting.isEmpty() ? null : counting.get(counting.size() - 1));
    }

    /** By the run that goes on; between runs, by those that count. */
    static Optional<Quantity> input(Clocking clocking, Clocking.@Nullable Run run) {
        boolean running = clocking.running().isPresent();
        Optional<Result> result = running && run != null ? clocking.input(run) : clocking.input();
        return result.map(Result::quantity);
    }

    @Override
    public void doLayout() {
        int foot = look.ipx(Rows.FOOT);
        runs.setBounds(0, 0, getWidth(), getHeight() - foot);
        remark.setBounds(look.ipx(8), getHeight() - foot, getWidth() - look.ipx(16), foot);
        double digitPx = ClockRuns.digitPx(look, getWidth(), getHeight());
        double[] columns = ClockRuns.columns(look, digitPx, getWidth());
        int top = look.ipx(44);
        int high = (int) Math.ceil(digitPx * 1.06);
        place(turns, digitPx, columns[0], columns[0] + DigitField.width("88", look, digitPx), top, high);
        place(seconds, digitPx, columns[1], columns[1] + columns[3] - columns[2], top, high);
        place(input, digitPx, columns[2], columns[3], top, high);
        runs.head(top + high, digitPx);
    }

    private static void place(DigitField field, double digitPx, double left, double right, int top, int high) {
        field.digitPx(digitPx);
        field.setBounds((int) left, top, (int) (right - left), high);
    }
}
