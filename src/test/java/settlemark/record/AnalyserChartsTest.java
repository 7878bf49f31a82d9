package settlemark.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.session.JobRecord;
import settlemark.session.RecordForm;

/** What an analyser streamed is drawn beside the pressures, each in a lane with its own unit. */
final class AnalyserChartsTest {
    @TempDir
    private Path folder = Path.of("");

    /** The record with three analyser channels in every window that has temperatures. */
    private static JobRecord withAnalyser() {
        JobRecord record = AshLane.job().record();
        List<JobRecord.ReadingWindow> windows = record.windows().stream()
                .map(w -> w.traces().stream().anyMatch(t -> t.role() == Role.SUPPLY) ? with(w) : w)
                .toList();
        return new JobRecord(record.header(), record.job(), windows, record.instruments(), record.events());
    }

    private static JobRecord.ReadingWindow with(JobRecord.ReadingWindow window) {
        long[] times = window.traces().get(0).timesNanos();
        List<JobRecord.RoleTrace> traces = new ArrayList<>(window.traces());
        traces.add(trace(Role.STACK, Unit.FAHRENHEIT, times, 412));
        traces.add(trace(Role.OXYGEN, Unit.PERCENT, times, 6.4));
        traces.add(trace(Role.CARBON_MONOXIDE, Unit.ucum("[ppm]"), times, 38));
        return new JobRecord.ReadingWindow(
                window.step(), window.reading(), window.fromNanos(), window.toNanos(), traces);
    }

    private static JobRecord.RoleTrace trace(Role role, Unit unit, long[] times, double value) {
        double[] values = new double[times.length];
        Arrays.fill(values, value);
        return new JobRecord.RoleTrace(role, unit, times, values);
    }

    @Test
    void eachHasItsNameInAChartAndNothingIsDrawnOverAnother() throws Exception {
        String without = pages(AshLane.job().record());
        String with = pages(withAnalyser());
        for (String name : List.of("o2", "stack", "co", "ppm")) {
            assertThat(count(with, name)).as(name).isGreaterThan(count(without, name));
        }
    }

    private String pages(JobRecord record) throws Exception {
        Path pdf = new RecordFiles("", RecordForm.DEFAULT)
                .write(record, AshLane.samples(), folder)
                .get(0);
        return Pages.text(pdf);
    }

    private static long count(String text, String word) {
        return Arrays.stream(text.split("[^A-Za-z0-9-]+")).filter(word::equals).count();
    }
}
