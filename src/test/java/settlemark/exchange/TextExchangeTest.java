package settlemark.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static settlemark.exchange.Profiles.LINE;
import static settlemark.exchange.Profiles.asked;
import static settlemark.exchange.Profiles.every;
import static settlemark.exchange.Profiles.serial;
import static settlemark.exchange.Profiles.step;
import static settlemark.exchange.Profiles.text;
import static settlemark.exchange.Profiles.unasked;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import settlemark.exchange.Bench.Ear;
import settlemark.measure.Chunk;
import settlemark.profile.Action;
import settlemark.profile.ByteText;
import settlemark.profile.Framing;
import settlemark.profile.Link;
import settlemark.profile.Profile;
import settlemark.profile.Step;

/** Requests in text and bytes, start-ups and actions, against a far end that misbehaves. */
final class TextExchangeTest {
    private static String words(byte[] bytes) {
        return new String(bytes, StandardCharsets.US_ASCII);
    }

    @Test
    void anAnswerIsTheWholeLineAndTheRestOfItIsStray() {
        Bench bench = new Bench((bytes, b) -> {
            b.arrivesAfter(5, "+1.2");
            b.arrivesAfter(9, "3E-1\nnoise");
        });
        Ear ear = bench.add(serial(asked("a", "MEAS?\n", LINE, every(1, 1, 0))));
        bench.runMillis(100);
        assertThat(ear.of(0)).singleElement().satisfies(c -> {
            assertThat(words(c.bytes())).isEqualTo("+1.23E-1\n");
            assertThat(c.timeNanos()).isBetween(9 * Bench.MILLI, 10 * Bench.MILLI);
        });
        assertThat(ear.text(Chunk.STRAY)).isEqualTo("noise");
    }

    @Test
    void afterAnEmptyAnswerNothingLandsInTheNextPoll() {
        List<Integer> count = new ArrayList<>();
        Bench bench = new Bench((bytes, b) -> {
            count.add(1);
            if (count.size() == 1) {
                b.arrivesAfter(5, "\n");
                b.arrivesAfter(300, "1");
                b.arrivesAfter(1_200, "1\n");
            } else {
                b.arrivesAfter(5, "22\n");
            }
        });
        Ear ear = bench.add(serial(asked("a", "MEAS?\n", LINE, every(1, 0.5, 2))));
        bench.runMillis(20_000);
        assertThat(ear.text(0).replace("22\n", "")).isEmpty();
        assertThat(ear.of(0)).hasSizeGreaterThan(10);
        assertThat(ear.text(Chunk.STRAY)).startsWith("\n1").contains("1\n");
    }

    @Test
    void whatOneQuestionIsAnsweredLateIsNotTheAnswerToAnother() {
        List<String> asked = new ArrayList<>();
        Bench bench = new Bench((bytes, b) -> {
            String question = words(bytes);
            asked.add(question);
            b.arrivesAfter(asked.size() == 3 ? 900 : 5, question.charAt(0) + "\n");
        });
        Ear ear = bench.add(serial(
                asked("a", "A?\n", LINE, every(1, 0.5, 0)),
                asked("b", "B?\n", LINE, every(1, 0.5, 0)),
                asked("c", "C?\n", LINE, every(1, 0.5, 0))));
        bench.runMillis(30_000);
        assertThat(ear.text(0).replace("A\n", "")).isEmpty();
        assertThat(ear.text(1).replace("B\n", "")).isEmpty();
        assertThat(ear.text(2).replace("C\n", "")).isEmpty();
        assertThat(ear.text(Chunk.STRAY)).contains("C\n");
        assertThat(ear.of(2)).hasSizeGreaterThan(20);
    }

    @Test
    void aDeviceThatIsSilentIsSaidOnceAndStartedAgainWhenItAnswers() {
        boolean[] on = {true};
        Bench bench = new Bench((bytes, b) -> {
            if (on[0] && words(bytes).equals("*RST\n")) {
                b.arrivesAfter(5, "OK\r\n");
            } else if (on[0]) {
                b.arrivesAfter(5, "1\n");
            }
        });
        Ear ear = bench.add(Profiles.profile(
                new Link.Serial(Profiles.FAST),
                List.of(step("*RST\n", "OK", 0.5, 1, 0.1)),
                List.of(),
                asked("a", "MEAS?\n", LINE, every(0.5, 0.5, 2))));
        bench.runMillis(2000);
        assertThat(ear.of(0)).hasSizeBetween(3, 4);
        // 0.1 s pause after the step
        assertThat(bench.sent.get(1).nanos() - bench.sent.get(0).nanos())
                .isBetween(105 * Bench.MILLI, 107 * Bench.MILLI);
        on[0] = false;
        bench.runMillis(20_000);
        assertThat(ear.said).containsExactly("lost: no answer from the device to \"MEAS?\\n\" after 3 tries");
        on[0] = true;
        int before = bench.sent.size();
        bench.runMillis(10_000);
        assertThat(ear.said).hasSize(2).last().isEqualTo("back: the device answers again");
        assertThat(bench.sent.subList(before, bench.sent.size()).stream().map(Bench.Sent::text))
                .startsWith("*RST\n", "MEAS?\n");
    }

    @Test
    void aStartUpThatFailsSaysTheStepAndWhatCameAndIsTriedAgain() {
        String[] answer = {"ERR 5\n"};
        Bench bench = new Bench((bytes, b) -> {
            if (words(bytes).equals("MODE 2\n")) {
                b.arrivesAfter(5, answer[0]);
            } else if (words(bytes).equals("MEAS?\n")) {
                b.arrivesAfter(5, "1\n");
            }
        });
        Ear ear = bench.add(Profiles.profile(
                new Link.Serial(Profiles.FAST),
                List.of(step("*CLS\n", "", 1, 0, 0), step("MODE 2\n", "OK", 0.5, 2, 0)),
                List.of(),
                asked("a", "MEAS?\n", LINE, every(0.5, 0.5, 2))));
        bench.runMillis(20_000);
        assertThat(ear.said)
                .containsExactly("lost: start-up failed at step 2: expected \"OK\", got \"ERR 5\\n\" after 3 tries");
        assertThat(ear.of(0)).isEmpty();
        answer[0] = "OK\n";
        bench.runMillis(10_000);
        assertThat(ear.said).hasSize(2).last().isEqualTo("back: the device has started");
        assertThat(ear.of(0)).isNotEmpty();
    }

    @Test
    void anActionRunsBetweenPollsAndAnUnknownOneIsRefused() {
        Bench bench = new Bench((bytes, b) -> b.arrivesAfter(5, words(bytes).equals("ZERO\n") ? "ZEROED\n" : "1\n"));
        Action zero = new Action("zero", "Zero", "", List.of(step("ZERO\n", "ZEROED", 1, 0, 0)), 0);
        Ear ear = bench.add(Profiles.profile(
                new Link.Serial(Profiles.FAST),
                List.of(),
                List.of(zero),
                asked("a", "MEAS?\n", LINE, every(0.5, 0.5, 2))));
        bench.runMillis(700);
        bench.exchange.act(0, "zero");
        bench.runMillis(700);
        assertThat(ear.said).containsExactly("noted: Zero: done");
        assertThat(ear.text(0)).isEqualTo("1\n1\n1\n");
        assertThat(ear.of(Chunk.STRAY)).isEmpty();
        assertThatThrownBy(() -> bench.exchange.act(0, "one"))
                .hasMessageContaining("has no action \"one\"; it has [zero]");
    }

    @Test
    void aDeviceThatSpeaksByItselfIsHeardWhileItIsAsked() {
        Bench bench = new Bench((bytes, b) -> b.arrivesAfter(55, new byte[] {2, 7, 3}));
        Framing marks = new Framing.Marked(ByteText.ofHex("02"), ByteText.ofHex("03"), new Framing.Plain(), 10);
        Ear ear = bench.add(serial(unasked("stream", LINE), asked("a", "Q", marks, every(1, 0.5, 0))));
        for (int i = 0; i < 100; i++) {
            bench.arrivesAfter(10 + 20 * i, i % 10 + "\n");
        }
        bench.runMillis(2500);
        assertThat(ear.of(0)).hasSize(100);
        assertThat(ear.text(0)).startsWith("0\n1\n2\n3\n");
        assertThat(ear.of(1)).hasSize(3);
        assertThat(ear.of(Chunk.STRAY)).isEmpty();
        assertThat(ear.of(0)).isSortedAccordingTo((a, b) -> Long.compare(a.timeNanos(), b.timeNanos()));
        assertThat(ear.of(0).get(3).timeNanos()).isEqualTo(70 * Bench.MILLI);
    }

    @Test
    void anEchoInTextIsTakenOffAndAloneIsNoAnswer() {
        boolean[] on = {true};
        Bench bench = new Bench((bytes, b) -> {
            b.arrivesAfter(1, bytes);
            if (on[0]) {
                b.arrivesAfter(5, "7\n");
            }
        });
        Profile profile = serial(asked("a", "M\n", LINE, every(0.5, 0.5, 0)));
        Ear ear = bench.add(profile);
        bench.runMillis(1200);
        assertThat(ear.text(0)).isEqualTo("7\n7\n7\n");
        assertThat(ear.said).singleElement().asString().contains("gives back");
        on[0] = false;
        bench.runMillis(3000);
        assertThat(ear.text(0)).isEqualTo("7\n7\n7\n");
        assertThat(ear.said).hasSize(2).last().asString().startsWith("lost: no answer from the device");
        assertThat(ear.of(Chunk.STRAY)).isEmpty();
    }

    @Test
    void aStepWhoseAnswerRepeatsItIsDone() {
        Bench bench = new Bench((bytes, b) -> b.arrivesAfter(5, bytes));
        Step step = new Step(
                Optional.of(new Step.Bytes(ByteText.ofHex("A5 01"))),
                Optional.of(new Step.ExpectBytes(ByteText.ofHex("A5 01"))),
                0.3,
                0,
                0,
                0);
        Ear ear = bench.add(Profiles.profile(
                new Link.Serial(Profiles.FAST),
                List.of(step),
                List.of(new Action("again", "Again", "", List.of(step), 0)),
                unasked("s", LINE)));
        bench.exchange.act(0, "again");
        bench.runMillis(2000);
        assertThat(ear.said).containsExactly("noted: Again: done");
    }

    @Test
    void silenceEndsAnAnswerWhereTheProfileSaysSo() {
        Bench bench = new Bench((bytes, b) -> {
            b.arrivesAfter(5, "12");
            b.arrivesAfter(15, "34");
        });
        Ear ear = bench.add(serial(asked("a", "Q", new Framing.IdleGap(20 * Bench.MILLI, 20), every(1, 0.5, 0))));
        bench.runMillis(100);
        assertThat(ear.text(0)).isEqualTo("1234");
    }

    @Test
    void aRequestOnALineWithoutAFramingForItIsRefused() {
        assertThatThrownBy(() -> new Bench((bytes, b) -> {})
                        .add(serial(asked("a", "Q", new Framing.Packet(20), every(1, 1, 0)))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("message \"a\" is framed by packets");
    }

    @Test
    void whatAProfileOnlyHearsIsHandedOnAsItComes() {
        Bench bench = new Bench((bytes, b) -> {});
        Ear ear = bench.add(serial(unasked("s", LINE)));
        bench.arrivesAfter(3, "1.5\n\n");
        bench.runMillis(100);
        assertThat(bench.exchange.asks()).isFalse();
        assertThat(bench.sent).isEmpty();
        assertThat(ear.chunks)
                .containsExactly(new Chunk(3 * Bench.MILLI, text("1.5\n\n").toBytes()));
    }
}
