package settlemark.decode;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import settlemark.profile.Profile;

/** Examples that do not hold are found out. */
final class ProfileProofTest {
    private static Profile profile(String example) {
        return Recorder.profile("""
                language: 1
                id: proof
                name: Proof
                framing: {line: {end: "\\n", maximum-bytes: 20}}
                columns: {separator: ","}
                fields:
                  - {name: p, column: 0, type: text, decimals: 1, special: {fault: ERR}}
                channels:
                  - {id: p, field: p, unit: Pa}
                examples:
                  - {%s}
                """.formatted(example));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            text: "1.5\\n", gives: {p: 1.6}        | p must give 1.6, got 1.5
            text: "1.5\\n", gives: {p: fault}      | p must give fault, got 1.5
            text: "ERR\\n", gives: {p: 1.5}        | p must give 1.5, got fault
            text: "x\\n", gives: {p: 1.5}          | was rejected: p must be a number, got "x"
            text: "1.5\\n2.5\\n", gives: {p: 2.5}  | must be one frame, but holds 2
            text: "1.5", gives: {p: 1.5}           | was rejected: incomplete: the frame goes on after its 3 bytes
            text: "1.5\\n", rejected: number       | must be rejected, but gave samples
            text: "x\\n1\\n", rejected: number     | was rejected, but gave samples as well
            text: "x\\n", rejected: checksum       | must be rejected with "checksum", but was rejected with "p must be a number, got "x""
            text: "1.25\\n", gives: {p: 1.25}      | written by the encoder as "1.2\\x0A", p must give 1.25, got 1.2
            """)
    void saysWhatDoesNotHold(String example, String message) {
        ProfileProof proof = ProfileProof.of(profile(example));
        assertThat(proof.examplesRun()).isEqualTo(1);
        assertThat(proof.faults()).containsExactly(new ProfileProof.Fault(11, 5, "example 1: " + message));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            text: "1.5\\n", gives: {p: 1.5}
            text: "ERR\\n", gives: {p: fault}
            text: "x\\n", rejected: must be a number
            text: "1.5", rejected: incomplete
            """)
    void isSilentWhereAllHolds(String example) {
        assertThat(ProfileProof.of(profile(example)).faults()).isEmpty();
    }
}
