package settlemark.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static settlemark.exchange.Bench.answer;
import static settlemark.exchange.Bench.cat;
import static settlemark.exchange.Profiles.every;
import static settlemark.exchange.Profiles.modbus;
import static settlemark.exchange.Profiles.registers;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import settlemark.exchange.Bench.Ear;
import settlemark.measure.Chunk;
import settlemark.profile.Action;
import settlemark.profile.Link;
import settlemark.profile.Profile;
import settlemark.profile.Step;

/** Modbus RTU, against a far end that misbehaves in every way that is known from the field. */
final class ModbusExchangeTest {
    private static final double DEFAULT = 1;

    /** First register in a good answer of the far end. */
    private static int first(Chunk chunk) {
        return ModbusFrames.word(chunk.bytes(), 3);
    }

    @Test
    void requestsAndAnswersHaveTheBytesOfTheStandard() {
        // Modbus Application Protocol 1.1b3, section 6.3, read holding registers 108 to 110; CRCs by CRC-16/MODBUS.
        assertThat(ModbusFrames.read(0x11, 3, 0x6B, 3)).containsExactly(0x11, 0x03, 0x00, 0x6B, 0x00, 0x03, 0x76, 0x87);
        assertThat(ModbusFrames.write(0x11, 1, List.of(3))).startsWith(0x11, 0x06, 0x00, 0x01, 0x00, 0x03);
        assertThat(ModbusFrames.write(0x11, 1, List.of(10, 0x102)))
                .startsWith(0x11, 0x10, 0x00, 0x01, 0x00, 0x02, 0x04, 0x00, 0x0A, 0x01, 0x02)
                .hasSize(13);
    }

    @Test
    void twoUnitsOnOneLineAreAskedInTurnAndEachHearsItsOwnAnswers() {
        Bench bench = new Bench((bytes, b) -> b.arrivesAfter(5, answer(bytes)));
        Ear three = bench.add(modbus(3, registers("a", 3, 10, 2, every(0.1, DEFAULT, 2))));
        Ear seven = bench.add(modbus(7, registers("a", 4, 20, 1, every(0.1, DEFAULT, 2))));
        bench.runMillis(1000);
        assertThat(three.of(0)).hasSizeBetween(9, 11).allMatch(c -> first(c) == 3010 && c.bytes().length == 9);
        assertThat(seven.of(0)).hasSizeBetween(9, 11).allMatch(c -> first(c) == 7020 && c.bytes().length == 7);
        assertThat(three.of(Chunk.STRAY)).isEmpty();
        assertThat(three.said).isEmpty();
        // one in flight: each request after the answer to the one before
        for (int i = 1; i < bench.sent.size(); i++) {
            assertThat(bench.sent.get(i).nanos() - bench.sent.get(i - 1).nanos())
                    .isGreaterThanOrEqualTo(5 * Bench.MILLI + 1_750_000);
        }
    }

    @Test
    void aBusThatIsTooSlowForItsPeriodsIsSharedFairly() {
        Bench bench = new Bench((bytes, b) -> b.arrivesAfter(60, answer(bytes)));
        Ear one = bench.add(modbus(1, registers("a", 3, 0, 1, every(0.05, DEFAULT, 2))));
        Ear two = bench.add(modbus(2, registers("a", 3, 0, 1, every(0.05, DEFAULT, 2))));
        Ear three = bench.add(modbus(3, registers("a", 3, 0, 1, every(0.2, DEFAULT, 2))));
        bench.runMillis(10_000);
        assertThat(one.of(0).size()).isBetween(50, 62);
        assertThat(two.of(0).size()).isBetween(50, 62);
        assertThat(three.of(0).size()).isBetween(40, 52);
    }

    @ParameterizedTest
    @ValueSource(longs = {20260314, 1, 2, 3, 4, 5, 6, 7})
    void noLateAnswerEverLandsInAnotherRegister(long seed) {
        System.out.println("seed " + seed);
        Random random = new Random(seed);
        // The device answers in order; one answer in five takes up to twice the time-out, later ones queue up behind
        // it.
        long[] free = {0};
        Bench bench = new Bench((bytes, b) -> {
            double takes = random.nextInt(5) == 0 ? random.nextDouble() * 1000 : 5;
            long at = Math.max(free[0], b.now) + Math.round(takes * Bench.MILLI);
            free[0] = at;
            if (random.nextInt(12) != 0) {
                b.arrivesAfter((at - b.now) / 1e6, answer(bytes));
            }
        });
        Ear ear = bench.add(modbus(
                5,
                registers("a", 3, 100, 2, every(0.2, 0.5, random.nextInt(3))),
                registers("b", 3, 200, 2, every(0.3, 0.5, random.nextInt(3))),
                registers("c", 3, 300, 2, every(0.5, DEFAULT, 1))));
        bench.runMillis(600_000);
        assertThat(ear.of(0)).hasSizeGreaterThan(20).allMatch(c -> first(c) == 5100);
        assertThat(ear.of(1)).hasSizeGreaterThan(20).allMatch(c -> first(c) == 5200);
        assertThat(ear.of(2)).hasSizeGreaterThan(20).allMatch(c -> first(c) == 5300);
        assertThat(ear.of(Chunk.STRAY)).isNotEmpty();
    }

    @Test
    void afterATimeOutTheLineIsLeftQuietUntilALateAnswerHasPassed() {
        List<Integer> count = new ArrayList<>();
        Bench bench = new Bench((bytes, b) -> {
            count.add(1);
            b.arrivesAfter(count.size() == 1 ? 700 : 5, answer(bytes));
        });
        Ear ear = bench.add(
                modbus(5, registers("a", 3, 100, 2, every(1, 0.5, 0)), registers("b", 3, 200, 2, every(1, 0.5, 0))));
        bench.runMillis(3000);
        // 0.5 s after the late answer at 0.7 s, and not before
        assertThat(bench.sent.get(1).nanos()).isBetween(1_200 * Bench.MILLI, 1_250 * Bench.MILLI);
        assertThat(ear.of(0)).allMatch(c -> first(c) == 5100);
        assertThat(ear.of(1)).isNotEmpty().allMatch(c -> first(c) == 5200);
        assertThat(first(ear.of(Chunk.STRAY).get(0))).isEqualTo(5100);
        assertThat(ear.said).anySatisfy(w -> assertThat(w).contains("unit 5 answers after its time-out, in 699 ms"));
    }

    @Test
    void aSlowDeviceIsGivenTheTimeThatItNeeds() {
        Bench bench = new Bench((bytes, b) -> b.arrivesAfter(1400, answer(bytes)));
        Ear ear = bench.add(modbus(5, registers("a", 3, 100, 2, every(2, DEFAULT, 2))));
        bench.runMillis(40_000);
        assertThat(ear.of(0)).hasSizeGreaterThan(16).allMatch(c -> first(c) == 5100);
        // asked once in vain, then the time-out is three times as long as the answer took
        assertThat(bench.sent.size() - ear.of(0).size()).isLessThanOrEqualTo(2);
        assertThat(ear.said).singleElement().asString().contains("answers after its time-out");
    }

    @Test
    void timeOutsAreLearnedButNotBelowHalfASecondAndNotAgainstTheProfile() {
        AnswerTimes times = new AnswerTimes();
        assertThat(times.timeOutNanos(every(1, 1, 0))).isEqualTo(1_000 * Bench.MILLI);
        for (int i = 0; i < 200; i++) {
            times.add(20 * Bench.MILLI);
        }
        assertThat(times.timeOutNanos(every(1, 1, 0))).isEqualTo(500 * Bench.MILLI);
        times.add(300 * Bench.MILLI);
        // one in a hundred is beyond the 99th percentile of a hundred
        assertThat(times.timeOutNanos(every(1, 1, 0))).isEqualTo(500 * Bench.MILLI);
        times.add(300 * Bench.MILLI);
        assertThat(times.timeOutNanos(every(1, 1, 0))).isEqualTo(900 * Bench.MILLI);
        assertThat(times.timeOutNanos(every(1, 0.2, 0))).isEqualTo(200 * Bench.MILLI);
    }

    @Test
    void oneRegisterForFourAskedIsAnError() {
        Bench bench = new Bench((bytes, b) -> b.arrivesAfter(5, ModbusFrames.sealed(5, 3, 2, 0, 99)));
        Ear ear = bench.add(modbus(5, registers("a", 3, 0, 4, every(1, DEFAULT, 2))));
        bench.runMillis(20_000);
        assertThat(ear.of(0)).isEmpty();
        assertThat(ear.said)
                .containsExactly("lost: unit 5 did not answer registers 0 to 3 (function 3) after 3 tries:"
                        + " the answer has 2 bytes of registers where 4 registers have 8");
    }

    @Test
    void anExceptionIsSaidOnceWithItsMeaningAndTheRegister() {
        Bench bench = new Bench((bytes, b) ->
                b.arrivesAfter(5, ModbusFrames.word(bytes, 2) == 40 ? ModbusFrames.exception(5, 3, 2) : answer(bytes)));
        Ear ear = bench.add(modbus(
                5, registers("a", 3, 0, 1, every(0.5, DEFAULT, 2)), registers("b", 3, 40, 1, every(0.5, DEFAULT, 2))));
        bench.runMillis(5000);
        assertThat(ear.of(0)).hasSizeGreaterThan(8);
        assertThat(ear.of(1)).isEmpty();
        assertThat(ear.said)
                .containsExactly("noted: unit 5: exception 2: illegal data address at register 40 (function 3)");
    }

    @Test
    void aHeaderOnlyAnswerNeverHangs() {
        List<Integer> count = new ArrayList<>();
        Bench bench = new Bench((bytes, b) -> {
            count.add(1);
            b.arrivesAfter(5, count.size() == 1 ? new byte[] {5, 3} : answer(bytes));
        });
        Ear ear = bench.add(modbus(5, registers("a", 3, 0, 1, every(0.5, DEFAULT, 2))));
        bench.runMillis(10_000);
        assertThat(ear.of(0)).hasSizeGreaterThan(10);
        assertThat(ear.of(Chunk.STRAY))
                .singleElement()
                .satisfies(c -> assertThat(c.bytes()).containsExactly(5, 3));
        assertThat(ear.said).isEmpty();
    }

    @Test
    void aNoiseByteBeforeAnAnswerCostsNothingButItself() {
        Bench bench = new Bench((bytes, b) -> b.arrivesAfter(5, cat(new byte[] {0, 5, 3, 2}, answer(bytes))));
        Ear ear = bench.add(modbus(5, registers("a", 3, 7, 1, every(0.5, DEFAULT, 2))));
        bench.runMillis(2000);
        assertThat(ear.of(0)).hasSizeBetween(4, 5).allMatch(c -> c.bytes().length == 7 && first(c) == 5007);
        assertThat(ear.of(Chunk.STRAY)).hasSameSizeAs(ear.of(0));
    }

    @Test
    void aWrongChecksumIsNoAnswerAndIsAskedAgain() {
        List<Integer> count = new ArrayList<>();
        Bench bench = new Bench((bytes, b) -> {
            count.add(1);
            byte[] frame = answer(bytes);
            frame[4] ^= (byte) (count.size() % 2);
            b.arrivesAfter(5, frame);
        });
        Ear ear = bench.add(modbus(5, registers("a", 3, 7, 1, every(0.5, 0.5, 2))));
        bench.runMillis(5000);
        assertThat(ear.of(0)).hasSizeGreaterThan(1).allMatch(c -> first(c) == 5007);
        assertThat(ear.said).isEmpty();
    }

    @Test
    void answersInSingleBytesWithPausesAreWhole() {
        Bench bench = new Bench((bytes, b) -> {
            byte[] frame = answer(bytes);
            for (int i = 0; i < frame.length; i++) {
                b.arrivesAfter(5 + 20 * i, new byte[] {frame[i]});
            }
        });
        Ear ear = bench.add(modbus(5, registers("a", 3, 7, 4, every(0.5, DEFAULT, 2))));
        bench.runMillis(3000);
        assertThat(ear.of(0)).hasSizeGreaterThan(4).allMatch(c -> c.bytes().length == 13);
        assertThat(ear.of(Chunk.STRAY)).isEmpty();
    }

    @Test
    void anotherUnitsAnswerIsNotTakenForOurs() {
        Bench bench = new Bench((bytes, b) -> {
            byte[] frame = answer(bytes);
            frame[0] = 6;
            b.arrivesAfter(5, ModbusFrames.sealed(6, 3, 2, 1, 1));
        });
        Ear ear = bench.add(modbus(5, registers("a", 3, 7, 1, every(1, DEFAULT, 0))));
        bench.runMillis(3000);
        assertThat(ear.of(0)).isEmpty();
        assertThat(ear.said).singleElement().asString().startsWith("lost: unit 5 did not answer register 7");
    }

    @Test
    void anEchoOfWhatIsWrittenIsTakenOffAndSaidOnce() {
        Bench bench = new Bench((bytes, b) -> {
            b.arrivesAfter(0.5, bytes);
            b.arrivesAfter(5, answer(bytes));
        });
        Ear ear = bench.add(modbus(5, registers("a", 3, 7, 1, every(0.5, DEFAULT, 2))));
        bench.runMillis(3000);
        assertThat(ear.of(0)).hasSizeGreaterThan(4);
        assertThat(ear.of(Chunk.STRAY)).isEmpty();
        assertThat(ear.said).singleElement().asString().contains("gives back what is written");
    }

    @Test
    void onALineThatEchoesAWrittenRegisterCountsOnlyWhenItIsAcknowledgedToo() {
        boolean[] acknowledges = {true};
        Bench bench = new Bench((bytes, b) -> {
            b.arrivesAfter(0.5, bytes);
            if (bytes[1] == 3) {
                b.arrivesAfter(5, answer(bytes));
            } else if (acknowledges[0]) {
                b.arrivesAfter(5, bytes);
            }
        });
        Ear ear = bench.add(withZero());
        bench.runMillis(1000);
        bench.exchange.act(0, "zero");
        bench.runMillis(1000);
        assertThat(ear.said).last().isEqualTo("noted: Zero: done");
        acknowledges[0] = false;
        bench.exchange.act(0, "zero");
        bench.runMillis(3000);
        assertThat(ear.said)
                .last()
                .asString()
                .startsWith("noted: Zero failed at step 1: expected an acknowledgement, got nothing");
    }

    @Test
    void anActionWritesARegisterAndSaysThatItIsDoneOrWhyNot() {
        boolean[] refuses = {false};
        Bench bench = new Bench((bytes, b) -> b.arrivesAfter(
                5, bytes[1] == 3 ? answer(bytes) : refuses[0] ? ModbusFrames.exception(5, 6, 3) : bytes));
        Ear ear = bench.add(withZero());
        bench.runMillis(1000);
        bench.exchange.act(0, "zero");
        bench.runMillis(1000);
        assertThat(bench.sent).anySatisfy(s -> assertThat(s.bytes()).startsWith(5, 6, 0, 9, 0, 1));
        assertThat(ear.said).containsExactly("noted: Zero: done");
        refuses[0] = true;
        bench.exchange.act(0, "zero");
        bench.runMillis(1000);
        assertThat(ear.said)
                .last()
                .asString()
                .contains("Zero failed at step 1")
                .contains("exception 3: illegal data value for setting register 9");
        assertThat(ear.of(0)).hasSizeGreaterThan(4);
    }

    private static Profile withZero() {
        Step step = new Step(Optional.of(new Step.SetRegisters(9, List.of(1))), Optional.empty(), 0.5, 0, 0, 0);
        return Profiles.profile(
                new Link.ModbusRtu(Profiles.FAST, 5),
                List.of(),
                List.of(new Action("zero", "Zero", "", List.of(step), 0)),
                registers("a", 3, 7, 1, every(0.5, DEFAULT, 2)));
    }

    @Test
    void aForeignMasterIsSaidOnceToEverybody() {
        Bench bench = new Bench((bytes, b) -> b.arrivesAfter(5, answer(bytes)));
        Ear three = bench.add(modbus(3, registers("a", 3, 10, 2, every(1, DEFAULT, 2))));
        Ear seven = bench.add(modbus(7, registers("a", 3, 10, 2, every(1, DEFAULT, 2))));
        for (int i = 0; i < 5; i++) {
            byte[] foreign = ModbusFrames.read(9, 3, 0, 10);
            bench.arrivesAfter(500 + 1000 * i, Arrays.copyOf(foreign, 3));
            bench.arrivesAfter(510 + 1000 * i, Arrays.copyOfRange(foreign, 3, 8));
            bench.arrivesAfter(520 + 1000 * i, answer(foreign));
        }
        bench.runMillis(6000);
        assertThat(three.said)
                .containsExactly("noted: another master is on the line: it asks unit 9 by function 3."
                        + " Two masters spoil each other's answers: take one off");
        assertThat(seven.said).isEqualTo(three.said);
        assertThat(three.of(0)).hasSize(6);
    }

    @Test
    void noiseIsNoForeignMaster() {
        long seed = 4711;
        System.out.println("seed " + seed);
        Random random = new Random(seed);
        Bench bench = new Bench((bytes, b) -> b.arrivesAfter(5, answer(bytes)));
        Ear ear = bench.add(modbus(3, registers("a", 3, 10, 2, every(1, DEFAULT, 2))));
        for (int i = 0; i < 500; i++) {
            byte[] noise = new byte[1 + random.nextInt(20)];
            random.nextBytes(noise);
            bench.arrivesAfter(100 + 10 * i, noise);
        }
        bench.runMillis(6000);
        assertThat(ear.said).isEmpty();
        assertThat(ear.of(0)).hasSizeGreaterThan(4).allMatch(c -> first(c) == 3010);
    }

    @Test
    void aUnitThatIsSwitchedOffIsSaidOnceAndAskedNowAndThenWhileTheOthersGoOn() {
        boolean[] on = {true};
        Bench bench = new Bench((bytes, b) -> {
            if (bytes[0] != 3 || on[0]) {
                b.arrivesAfter(5, answer(bytes));
            }
        });
        Ear three = bench.add(
                modbus(3, registers("a", 3, 10, 2, every(0.2, 0.5, 2)), registers("b", 3, 20, 2, every(0.2, 0.5, 2))));
        Ear seven = bench.add(modbus(7, registers("a", 3, 30, 2, every(0.2, DEFAULT, 2))));
        bench.runMillis(2000);
        on[0] = false;
        bench.runMillis(30_000);
        assertThat(three.said).hasSize(1);
        assertThat(three.said.get(0))
                .startsWith("lost: no answer from unit 3 to registers")
                .endsWith("after 3 tries");
        int before = seven.of(0).size();
        bench.runMillis(10_000);
        assertThat(seven.of(0).size() - before).isGreaterThan(30);
        on[0] = true;
        int silent = three.chunks.size();
        bench.runMillis(10_000);
        assertThat(three.said).hasSize(2).last().isEqualTo("back: unit 3 answers again");
        assertThat(three.chunks.size()).isGreaterThan(silent);
        assertThat(three.of(0)).allMatch(c -> first(c) == 3010);
        assertThat(three.of(1)).allMatch(c -> first(c) == 3020);
    }

    @Test
    void aPollWithoutAPeriodIsAskedOnceAfterEachStart() {
        Bench bench = new Bench((bytes, b) -> b.arrivesAfter(5, answer(bytes)));
        Ear ear = bench.add(modbus(
                3,
                registers("once", 3, 10, 2, every(Double.NaN, DEFAULT, 2)),
                registers("b", 3, 20, 2, every(0.2, DEFAULT, 2))));
        bench.runMillis(2000);
        assertThat(ear.of(0)).hasSize(1);
        bench.exchange.restart(bench.now);
        bench.runMillis(2000);
        assertThat(ear.of(0)).hasSize(2);
    }

    @Test
    void whoIsRemovedHearsNothingMoreAndTheOthersGoOn() {
        Bench bench = new Bench((bytes, b) -> b.arrivesAfter(5, answer(bytes)));
        Ear three = bench.add(modbus(3, registers("a", 3, 10, 2, every(0.2, DEFAULT, 2))));
        Ear seven = bench.add(modbus(7, registers("a", 3, 30, 2, every(0.2, DEFAULT, 2))));
        bench.runMillis(1001);
        bench.exchange.remove(0);
        int heard = three.chunks.size();
        int others = seven.chunks.size();
        bench.runMillis(3000);
        assertThat(three.chunks).hasSize(heard);
        assertThat(seven.chunks.size()).isGreaterThan(others + 8);
    }
}
