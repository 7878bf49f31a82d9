package settlemark.profile;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.params.provider.Arguments;
import settlemark.document.Problem;

/** A good profile of which one piece is replaced, and what the reader says then. */
final class ProblemCases {
    /** A serial device with two messages, a start-up and an action. */
    static final String SERIAL = """
            language: 1
            id: bench
            name: Bench
            recognise:
              - serial: {description: "bench gauge", vendor: 0x1209, product: 0x0001}
            link:
              serial: {baud: 9600}
            start-up:
              - send: {text: "CLS"}
                expect: {text: "OK"}
                time-out: 2
            actions:
              - id: zero
                steps: [{send: {hex: "5A"}, wait: 1}]
            messages:
              - id: reading
                ask: {text: "MEAS?", period: 0.5}
                framing: {line: {end: "#", maximum-bytes: 80}}
                columns: {separator: ","}
                fields:
                  - {name: p, column: 0, type: text}
                  - {name: q, column: 1, type: text}
              - id: identity
                ask: {text: "IDN?"}
                framing: {line: {end: "#", maximum-bytes: 80}}
                fields:
                  - {name: serial, pattern: "SN=(.*)", type: utf8}
            channels:
              - {id: pressure, field: p, unit: Pa}
            facts:
              - {id: serial-number, field: serial}
            examples:
              - {text: "1.5,2#", gives: {pressure: 1.5}}
              - {message: identity, text: "SN=7#", facts: {serial-number: "7"}}
            """;

    private final String profile;

    ProblemCases(String profile) {
        this.profile = profile;
    }

    static Arguments bad(String from, String to, String... problems) {
        return Arguments.of(from, to, List.of(problems));
    }

    /** Problems as {@code line:column: message}. */
    void check(String from, String to, List<String> expected) {
        assertThat(profile).containsOnlyOnce(from);
        assertThat(problems(profile.replace(from, to))).isEqualTo(expected);
    }

    void checkUnchanged() {
        assertThat(problems(profile)).isEmpty();
    }

    static List<String> problems(String text) {
        return ProfileReader.read("p.yaml", text.getBytes(StandardCharsets.UTF_8)).problems().stream()
                .map(Problem::toString)
                .peek(problem -> assertThat(problem).startsWith("p.yaml:"))
                .map(problem -> problem.substring("p.yaml:".length()))
                .toList();
    }
}
