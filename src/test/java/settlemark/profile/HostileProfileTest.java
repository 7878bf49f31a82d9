package settlemark.profile;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import settlemark.document.Problem;

/** Profiles by someone who means harm, or by a tired one: an answer always comes, and it shows no key. */
final class HostileProfileTest {
    private static final String HEAD = "language: 1\nid: x\nname: X\n";

    private static List<Problem> problems(String text) {
        return ProfileReader.read("p.yaml", text.getBytes(StandardCharsets.UTF_8))
                .problems();
    }

    private static String many(int count, String item) {
        StringBuilder all = new StringBuilder();
        for (int i = 0; i < count; i++) {
            all.append(item.replace("#", String.format(Locale.ROOT, "%06d", i)));
        }
        return all.toString();
    }

    static Stream<Arguments> large() {
        String word = "abcdefghijklmnopqrstuvwxyzabcdefghijklmnopqrstuvwxyza";
        String fields = "framing: {fixed: {start: \"A5\", length-bytes: 9}}\nfields:\n"
                + many(256, "  - {name: " + word + "#, at: 1, type: uint8}\n");
        return Stream.of(
                Arguments.of("unknown keys", HEAD + many(40_000, "k#: 1\n")),
                Arguments.of("unknown keys within items", HEAD + "channels:\n" + many(30_000, "  - {k#: 1}\n")),
                Arguments.of(
                        "unknown fields",
                        HEAD + fields + "channels:\n"
                                + many(64, "  - {id: c#, unit: Pa, field: [" + many(16, "z" + word + "#, ") + "]}\n")),
                Arguments.of(
                        "unknown channels",
                        HEAD + fields + "channels:\n"
                                + many(64, "  - {id: " + word + "#, unit: Pa, field: " + word + "#}\n") + "examples:\n"
                                + many(200, "  - {hex: \"A5\", gives: {" + many(60, "y" + word + "#: 1, ") + "}}\n")),
                Arguments.of(
                        "many messages",
                        HEAD + "messages:\n"
                                + many(
                                        64,
                                        "  - {id: m#, framing: {cobs: {maximum-bytes: 9}}, fields: ["
                                                + many(250, "{name: f#, at: 1, type: uint8, when: {field: g, is: 1}}, ")
                                                + "]}\n")));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource
    void large(String name, String text) {
        assertThat(text.length()).as(name).isLessThan(1 << 20);
        List<Problem> found = Assertions.assertTimeoutPreemptively(Duration.ofSeconds(30), () -> problems(text));
        assertThat(found).as(name).isNotEmpty();
    }

    private static final String KEY = "7d0c39c1d7cc1ab1aee224cd096db901";

    static Stream<String> keys() {
        return Stream.of(
                "\"" + KEY + "00\"",
                "\"" + KEY.substring(2) + "\"",
                "\"" + KEY.replace('7', 'x') + "\"",
                "[" + KEY + "]",
                "[\"" + KEY + "\"",
                "{" + KEY + "}",
                "*" + KEY,
                "\"" + KEY,
                "'" + KEY + "' x",
                "70003931373313313332243309639932",
                "7000393137331331333224330963993.2",
                "7000e9313733133133322433096399320",
                "700039313733133133322433096e9932",
                "0x" + KEY,
                KEY + ": " + KEY);
    }

    /** A piece of six digits of what was given as a key must not be found in any message. */
    @ParameterizedTest
    @MethodSource("keys")
    void noMessageShowsAKey(String written) {
        String text = HEAD + """
                link: {ble: advertising}
                service-data: "FCD2"
                cipher: bthome-v2
                fields: [{name: x, at: 1, type: uint8}]
                channels: [{id: x, field: x, unit: Pa}]
                examples:
                  - {hex: "01 00", gives: {x: 1}, address: "54:48:E6:8F:80:A5", key: %s}
                """.formatted(written);
        List<Problem> found = problems(text);
        assertThat(found).isNotEmpty();
        String digits = written.replaceAll("[^0-9a-fx.]", "");
        for (int i = 0; i + 6 <= digits.length(); i++) {
            String piece = digits.substring(i, i + 6);
            assertThat(found).extracting(Problem::message).noneMatch(message -> message.contains(piece));
        }
    }

    /** Characters of a good profile replaced by others: a profile or problems, never a crash. */
    @Test
    void aSpoiltProfileIsAProfileOrProblems() {
        long seed = System.nanoTime();
        System.out.println("HostileProfileTest seed " + seed);
        Random random = new Random(seed);
        String characters = "{}[]:,-\"'0123456789abcdefx# \n.\\";
        int read = 0;
        for (int i = 0; i < 1000; i++) {
            StringBuilder text = new StringBuilder(ProblemCases.SERIAL);
            for (int change = random.nextInt(3); change >= 0; change--) {
                text.setCharAt(random.nextInt(text.length()), characters.charAt(random.nextInt(characters.length())));
            }
            ProfileReading reading =
                    ProfileReader.read("p.yaml", text.toString().getBytes(StandardCharsets.UTF_8));
            read += reading.profile().isPresent() ? 1 : 0;
            assertThat(reading.profile().isPresent() || !reading.problems().isEmpty())
                    .isTrue();
        }
        assertThat(read).isPositive();
    }
}
