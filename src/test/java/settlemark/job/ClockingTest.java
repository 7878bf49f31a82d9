package settlemark.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import settlemark.calc.Result;
import settlemark.job.Clocking.Progress;
import settlemark.job.Clocking.Run;
import settlemark.measure.Quantity;

/** Runs of the meter's dial, and what they give. */
final class ClockingTest {
    private static final GasHeat HEAT = new GasHeat(1025, 0.01, "gas supplier");

    private static Run run(double... seconds) {
        List<Long> marks = java.util.Arrays.stream(seconds)
                .mapToObj(s -> Math.round(s * 1e9))
                .toList();
        return new Run(marks, Progress.ENDED, "");
    }

    /** 2 ft3 in 90 s are 80 ft3/h (3600 V/t, by hand); times 1025 Btu/ft3 they are 82,000 Btu/h. */
    @Test
    void turnsAndSecondsGiveTheInput() {
        Clocking clocking = new Clocking(1, HEAT, List.of(run(10, 55, 100)));
        Quantity input = clocking.input(clocking.runs().get(0)).orElseThrow().quantity();
        assertThat(input.value()).isCloseTo(82_000, within(1e-6));
        assertThat(clocking.apart()).isEmpty();
        assertThat(clocking.agreed()).isFalse();
    }

    /** ±1 % meter and ±1 % heating value, both rectangular, and 0.2 s in 60 s: U(k = 2) is 1.76 % (by JCGM 100:2008, 5.1.2). */
    @Test
    void theUncertaintyIsThatOfMeterHeatAndTime() {
        Clocking clocking = new Clocking(1, HEAT, List.of(run(0, 60)));
        Result result = clocking.input().orElseThrow();
        double relative =
                result.quantity().expandedUncertainty() / result.quantity().value();
        assertThat(relative).isCloseTo(0.0176, within(5e-5));
    }

    /** Of two runs only the time's part falls: 0.2 s in 60 s, twice, is 0.2 x sqrt 2 in 120 s. */
    @Test
    void twoRunsAreTakenTogether() {
        Clocking clocking = new Clocking(1, HEAT, List.of(run(0, 60), run(100, 161)));
        Result result = clocking.input().orElseThrow();
        double time = 0.2 * Math.sqrt(2) / 121;
        double expected = 2 * Math.sqrt(2 * 0.01 * 0.01 / 3 + time * time);
        assertThat(result.quantity().value()).isCloseTo(2 / 121.0 * 3600 * 1025, within(1e-6));
        assertThat(result.quantity().expandedUncertainty() / result.quantity().value())
                .isCloseTo(expected, within(1e-9));
        // 1/60 and 1/61 lie 1/60.5 = 1.65 % apart
        assertThat(clocking.apart().orElseThrow()).isCloseTo(1 / 60.5, within(1e-12));
        assertThat(clocking.agreed()).isTrue();
    }

    @Test
    void onlyTheLastTwoRunsThatCountDecide() {
        Run dropped = new Run(List.of(0L, 30_000_000_000L), Progress.DROPPED, "begun again");
        Clocking apart = new Clocking(1, HEAT, List.of(run(0, 60), run(0, 62)));
        assertThat(apart.agreed()).isFalse();
        Clocking third = new Clocking(1, HEAT, List.of(run(0, 60), run(0, 62), dropped, run(0, 61.5)));
        assertThat(third.agreed()).isTrue();
        assertThat(third.input().orElseThrow().quantity().value()).isCloseTo(2 / 123.5 * 3600 * 1025, within(1e-6));
    }

    @Test
    void whatCannotBeIsRefusedInWords() {
        assertThatThrownBy(() -> new GasHeat(10, 0.01, "gas supplier"))
                .hasMessageContaining("between 50 and 4000")
                .hasMessageContaining("got 10.0");
        assertThatThrownBy(() -> new GasHeat(1030, 0.01, " ")).hasMessageContaining("where it comes from");
        assertThatThrownBy(() -> new GasHeat(1030, 0.5, "x")).hasMessageContaining("0 to 0.2");
        assertThatThrownBy(() -> new Clocking(0, HEAT, List.of())).hasMessageContaining("stands on the dial");
        assertThatThrownBy(() -> new Act.MeterDial("clock-low", Double.NaN)).hasMessageContaining("got NaN");
    }
}
