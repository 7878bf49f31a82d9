package settlemark.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.settle.ChannelReading;
import settlemark.settle.FromInstrument;

final class InstrumentsInUseTest {
    private final Bench bench = new Bench();

    private static InstrumentCard gauge(double top) {
        return new InstrumentCard(
                "0042",
                "blue gauge",
                "",
                Optional.empty(),
                Optional.of(LocalDate.of(2025, 3, 14)),
                List.of(
                        new CorrectionPoint("", 0, 0, 0.02, Unit.INCH_OF_WATER),
                        new CorrectionPoint("", top, top + 0.08, 0.06, Unit.INCH_OF_WATER)));
    }

    private static Act.Instrument both(InstrumentCard card) {
        return new Act.Instrument(card, Map.of(Role.INLET, "p1", Role.MANIFOLD, "p2"), false);
    }

    private ChannelReading read(String step, Role role) {
        return bench.step(step).reading().orElseThrow().channel(role).orElseThrow();
    }

    /**
     * By hand: the lock-up shows 7.83 with a zero of 0.03, so 7.80; of points at 0 and 8.08 the correction there is
     * -0.08 * 7.80 / 8.08 and U goes from 0.02 to 0.06 in the same part. Without a correction the standard uncertainty
     * is the root of 0.01 squared (settling, half of 0.02) and 0.01 squared over 3 (the gauge).
     */
    @Test
    void theCorrectionIsInTheValueAndItsUncertaintyInTheBudget() {
        bench.act(both(gauge(8)));
        bench.untilLockUp();
        ChannelReading inlet = read("lock-up", Role.INLET);
        double part = 7.80 / 8.08;
        assertThat(inlet.value()).isCloseTo(7.80 - 0.08 * part, within(1e-12));
        assertThat(inlet.instrument().correction()).isCloseTo(-0.08 * part, within(1e-12));
        double own = 0.01 * 0.01 + 0.01 * 0.01 / 3;
        double added = (0.02 + 0.04 * part) / 2;
        assertThat(inlet.standardUncertainty()).isCloseTo(Math.sqrt(own + added * added), within(1e-12));
        assertThat(bench.step("lock-up").verdicts())
                .filteredOn(v -> v.subject().equals("inlet"))
                .allSatisfy(v -> assertThat(v.value()).isEqualTo(inlet.value()));
        assertThat(bench.run.state().instruments())
                .singleElement()
                .satisfies(u ->
                        assertThat(u.card().overdue(LocalDate.of(2026, 1, 1))).isTrue());
    }

    @Test
    void aZeroIsWhatItIs() {
        bench.act(both(gauge(8)));
        bench.untilLockUp();
        ChannelReading zero = read("zero", Role.INLET);
        assertThat(zero.value()).isEqualTo(0.03);
        assertThat(zero.instrument()).isEqualTo(FromInstrument.uncorrected("0042", ""));
    }

    @Test
    void outsideThePointsTheReadingStaysAndTheStepSaysSo() {
        bench.act(both(gauge(5)));
        bench.untilLockUp();
        ChannelReading inlet = read("lock-up", Role.INLET);
        assertThat(inlet.value()).isCloseTo(7.80, within(1e-12));
        assertThat(inlet.instrument().corrects()).isFalse();
        assertThat(bench.step("lock-up").remarks())
                .anyMatch(r -> r.contains("inlet: 7.8")
                        && r.contains("outside the correction points, 0 to 5.08")
                        && r.contains("instrument 0042"));
    }

    @Test
    void whatIsSaidLaterHoldsFromThenOn() {
        bench.act(both(gauge(8)));
        bench.untilLockUp();
        double before = read("lock-up", Role.INLET).value();
        bench.act(new Act.Instrument(InstrumentCard.unknown("77", "", ""), Map.of(Role.INLET, "p1"), true));
        bench.act(new Act.Repeat("lock-up"));
        bench.settled(Role.INLET, 7.83);
        bench.act(new Act.Confirm("lock-up#2"));
        bench.pass(21);
        assertThat(read("lock-up", Role.INLET).value()).isEqualTo(before);
        assertThat(read("lock-up#2", Role.INLET).value()).isCloseTo(7.80, within(1e-12));
        assertThat(read("lock-up#2", Role.INLET).instrument().serial()).isEqualTo("77");
        assertThat(bench.run.state().instruments()).hasSize(2);
    }
}
