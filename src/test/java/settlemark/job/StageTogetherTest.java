package settlemark.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import settlemark.measure.Role;
import settlemark.settle.ChannelReading;
import settlemark.settle.PublishedRule;
import settlemark.settle.StageReading;

/** All channels of a stage at once, and the rules of published tests that a step may ask of them. */
final class StageTogetherTest {
    private static final String LOW = "found-low";

    private static Bench with(PublishedRule rule, boolean alone) {
        return new Bench(Plans.get("two-stage-natural-gas").withSettledBy(new SettledBy(Optional.of(rule), alone)));
    }

    private static String waiting(Bench bench) {
        return bench.step(LOW).waitingFor();
    }

    /** Low fire is armed and everything but the supply has settled. */
    private static Bench armed(Bench bench) {
        bench.untilLockUp();
        bench.firing(1.71, 118);
        bench.moving(Role.SUPPLY, 118);
        bench.act(new Act.Confirm(LOW));
        bench.pass(1);
        return bench;
    }

    @Test
    void allHaveToBeSettledAtTheSameTime() {
        Bench bench = armed(new Bench());
        bench.pass(30);
        assertThat(waiting(bench)).isEqualTo("supply has not settled");
        bench.settled(Role.SUPPLY, 118);
        bench.moving(Role.RETURN, 70);
        bench.pass(60);
        assertThat(waiting(bench)).isEqualTo("return has not settled");
        assertThat(bench.step(LOW).readings()).isEmpty();
        bench.settled(Role.RETURN, 70);
        bench.pass(1);
        StageReading reading = bench.step(LOW).reading().orElseThrow();
        assertThat(reading.channels()).allSatisfy(part -> {
            assertThat(part.settled()).isTrue();
            assertThat(part.value()).isFinite();
            assertThat(part.settleUncertainty()).isEqualTo(0.02);
            assertThat(part.fromNanos()).isLessThan(part.toNanos());
            assertThat(part.reason()).isEqualTo("settled");
            assertThat(part.rule()).isEmpty();
        });
    }

    @Test
    void oneThatMovesBeforeTheReadingIsTakenSpoilsIt() {
        Bench bench = armed(new Bench());
        bench.settled(Role.SUPPLY, 118);
        bench.pass(10);
        assertThat(waiting(bench)).as("all settled, but not since the press").startsWith("inlet is watched for");
        bench.moving(Role.MANIFOLD, 1.9);
        bench.pass(1);
        assertThat(waiting(bench)).contains("(manifold moved before the reading was taken: still moving)");
        assertThat(bench.step(LOW).marks()).extracting(StepState.Mark::words).contains("manifold moved");
        bench.pass(100);
        assertThat(bench.step(LOW).readings()).isEmpty();
        assertThat(bench.step(LOW).marks()).as("said once").hasSize(1);
        bench.settled(Role.MANIFOLD, 1.9);
        bench.pass(1);
        bench.settled(Role.SUPPLY, 119);
        bench.pass(1);
        assertThat(bench.step(LOW)
                        .reading()
                        .orElseThrow()
                        .channel(Role.MANIFOLD)
                        .orElseThrow()
                        .value())
                .isCloseTo(1.92, within(1e-9));
    }

    @Test
    void aChannelThatSendsNothingIsNoReadingOfNow() {
        Bench bench = armed(new Bench());
        bench.settled(Role.SUPPLY, 118);
        bench.pass(20);
        ChannelNow silent = bench.channels.get(Role.RETURN);
        for (int i = 0; i < 60; i++) {
            bench.seconds++;
            bench.channels.replaceAll((role, now) -> bench.now(role));
            bench.channels.put(Role.RETURN, silent);
            bench.run.observe(Bench.nanos(bench.seconds), bench.channels);
        }
        assertThat(bench.step(LOW).readings()).isEmpty();
        assertThat(waiting(bench)).startsWith("return has sent nothing for 60 s");
        bench.settled(Role.RETURN, 70);
        bench.pass(1);
        assertThat(bench.step(LOW).readings()).hasSize(1);
    }

    @Test
    void aChannelWithoutAProbeIsNamed() {
        Bench bench = armed(new Bench());
        bench.settled(Role.SUPPLY, 118);
        bench.pass(1);
        bench.channels.remove(Role.RETURN);
        bench.pass(1);
        assertThat(waiting(bench)).contains("(return moved before the reading was taken: no probe)");
        bench.pass(60);
        assertThat(waiting(bench)).startsWith("return has no probe");
    }

    @Test
    void aRuleIsDemandedBesideTheProof() {
        Bench bench = armed(with(PublishedRule.THREE_READINGS_3_DEGF, false));
        bench.settled(Role.SUPPLY, 118);
        bench.pass(1000);
        assertThat(waiting(bench))
                .isEqualTo(
                        "supply has not settled: not yet by three-readings-3-degf: reading 2 of 3," + " more in 800 s");
        bench.pass(800);
        StageReading reading = bench.step(LOW).reading().orElseThrow();
        ChannelReading supply = reading.channel(Role.SUPPLY).orElseThrow();
        assertThat(supply.rule()).isEqualTo("three-readings-3-degf");
        assertThat(supply.reason())
                .isEqualTo(
                        "settled; steady by three-readings-3-degf: the last 3 lie within ±0 of their mean, limit ±3");
        assertThat(supply.settleUncertainty()).as("the proof's").isEqualTo(0.02);
        assertThat(reading.channel(Role.MANIFOLD).orElseThrow().rule())
                .as("not about a pressure")
                .isEmpty();
    }

    @Test
    void theReadingsOfARuleBeginAtTheActThatArmedIt() {
        Bench bench = new Bench(Plans.get("two-stage-natural-gas")
                .withSettledBy(new SettledBy(Optional.of(PublishedRule.THREE_READINGS_3_DEGF), false)));
        bench.untilLockUp();
        bench.firing(1.71, 118);
        bench.pass(5000);
        bench.act(new Act.Confirm(LOW));
        bench.pass(1700);
        assertThat(waiting(bench)).contains("reading 2 of 3");
        bench.pass(101);
        assertThat(bench.step(LOW).readings()).hasSize(1);
    }

    @Test
    void readingsFromBeforeItMovedDoNotCount() {
        Bench bench = armed(with(PublishedRule.THREE_READINGS_3_DEGF, false));
        bench.settled(Role.SUPPLY, 118);
        bench.moving(Role.RETURN, 70);
        bench.pass(1850);
        bench.settled(Role.SUPPLY, 125);
        bench.settled(Role.RETURN, 70);
        bench.pass(1);
        assertThat(waiting(bench))
                .isEqualTo("supply has not settled: steady by three-readings-3-degf: the last 3 lie within ±0 of their"
                        + " mean, limit ±3, but of readings from before it moved");
        bench.pass(2700);
        assertThat(bench.step(LOW)
                        .reading()
                        .orElseThrow()
                        .channel(Role.SUPPLY)
                        .orElseThrow()
                        .value())
                .isEqualTo(125);
    }

    @Test
    void aBreakInTheReadingsCountsThemAfresh() {
        Bench bench = armed(with(PublishedRule.THREE_READINGS_3_DEGF, false));
        bench.settled(Role.SUPPLY, 118);
        bench.pass(1700);
        bench.breaks++;
        bench.pass(200);
        assertThat(waiting(bench)).contains("reading 1 of 3").contains("counted afresh: a break in the readings");
        bench.pass(1601);
        assertThat(bench.step(LOW).readings()).hasSize(1);
    }

    @Test
    void aRuleAloneNeedsNoProofOfItsChannels() {
        Bench bench = with(PublishedRule.THREE_READINGS_5_DEGF, true);
        bench.untilLockUp();
        bench.firing(1.71, 118);
        bench.moving(Role.SUPPLY, 118);
        bench.moving(Role.RETURN, 70);
        bench.act(new Act.Confirm(LOW));
        bench.pass(1801);
        StageReading reading = bench.step(LOW).reading().orElseThrow();
        ChannelReading supply = reading.channel(Role.SUPPLY).orElseThrow();
        assertThat(supply.value()).isEqualTo(118);
        assertThat(supply.settled()).isTrue();
        assertThat(supply.settleUncertainty()).isCloseTo(10 / Math.sqrt(3), within(1e-9));
        assertThat(supply.reason()).startsWith("steady by three-readings-5-degf");
        assertThat(supply.toNanos() - supply.fromNanos()).isEqualTo(Bench.nanos(1800));
        assertThat(reading.channel(Role.INLET).orElseThrow().reason()).isEqualTo("settled");
    }

    @Test
    void aRuleAloneOfAPressureTakesTheZeroOff() {
        Bench bench = with(PublishedRule.RATES_2_PERCENT, true);
        bench.untilLockUpByRates();
        bench.firing(1.71, 118);
        bench.moving(Role.MANIFOLD, 1.71);
        bench.act(new Act.Confirm(LOW));
        bench.pass(1202);
        assertThat(waiting(bench)).isEqualTo("supply has not answered the burner yet");
        bench.pass(240);
        StageReading reading = bench.step(LOW).reading().orElseThrow();
        ChannelReading manifold = reading.channel(Role.MANIFOLD).orElseThrow();
        assertThat(manifold.value()).isCloseTo(1.73, within(1e-9));
        assertThat(manifold.zeroOffset()).isCloseTo(-0.02, within(1e-9));
        assertThat(manifold.settleUncertainty()).isCloseTo(2 * 0.02 * 1.73 / Math.sqrt(3), within(1e-9));
        assertThat(manifold.rule()).isEqualTo("rates-2-percent");
    }

    @Test
    void takenByHandARuleThatDoesNotHoldIsNotClaimed() {
        Bench bench = armed(with(PublishedRule.THREE_READINGS_3_DEGF, false));
        bench.pass(100);
        bench.act(new Act.TakeNow(LOW, "customer leaves"));
        ChannelReading supply =
                bench.step(LOW).reading().orElseThrow().channel(Role.SUPPLY).orElseThrow();
        assertThat(supply.settled()).isFalse();
        assertThat(supply.rule()).isEmpty();
        assertThat(supply.reason()).startsWith("not settled: ");
    }
}
