package settlemark.decode;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import settlemark.profile.Profile;

/** Special values of packed decimals are said in decimal digits, or as they travel where they are no digits. */
class PackedDecimalSpecialsTest {
    private static final String TEXT = """
            language: 1
            id: any
            name: Any
            framing: {fixed: {start: "AA", length-bytes: 3}}
            fields:
              - name: t
                at: 1
                type: bcd16
                byte-order: big
                special: {over-range: 9999, open-circuit: "FFFF"}
            channels:
              - {id: t, field: t, unit: Cel}
            examples:
              - {hex: "AA 99 99", gives: {t: over-range}}
              - {hex: "AA FF FF", gives: {t: open-circuit}}
              - {hex: "AA 99 98", gives: {t: 9998}}
            """;

    @Test
    void bothFormsAreMet() {
        Profile profile = Recorder.profile(TEXT);
        ProfileProof proof = ProfileProof.of(profile);
        assertThat(proof.examplesRun()).isEqualTo(3);
        assertThat(proof.faults()).isEmpty();
    }

    @Test
    void aFieldThatIsWhenAnotherHasCertainDigitsIsFound() {
        Profile profile = Recorder.profile("""
                language: 1
                id: any
                name: Any
                framing: {fixed: {start: "AA", length-bytes: 3}}
                fields:
                  - {name: kind, at: 1, type: bcd8}
                  - {name: t, at: 2, type: uint8, when: {field: kind, is: 42}}
                channels:
                  - {id: t, field: t, unit: Cel}
                examples:
                  - {hex: "AA 42 07", gives: {t: 7}}
                """);
        assertThat(ProfileProof.of(profile).faults()).isEmpty();
    }
}
