package settlemark.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class SealTest {
    private static final char[] NONE = {};
    private static final Instant WHEN = Instant.parse("2026-03-14T10:15:30.5Z");
    private final SealKey key = SealKey.create();
    private final List<SealedPart> parts = List.of(part("header", "a"), part("bytes", "b"), part("reading 1", "c"));

    private static SealedPart part(String name, String content) {
        return new SealedPart(name, new Canon().add(content).digest());
    }

    private Seal seal() {
        return Seal.sign("ash-lane", true, WHEN, "test", parts, key);
    }

    @Test
    void whatIsUntouchedIsFoundUntouched() {
        assertThat(Verification.of(seal(), parts).untouched()).isTrue();
    }

    @Test
    void changedMissingAndAddedPartsAreNamed() {
        List<SealedPart> now = List.of(part("header", "a"), part("bytes", "B"), part("note", "d"));
        Verification found = Verification.of(seal(), now);
        assertThat(found.untouched()).isFalse();
        assertThat(found.signatureHolds()).isTrue();
        assertThat(found.changed()).containsExactly("bytes");
        assertThat(found.missing()).containsExactly("reading 1");
        assertThat(found.added()).containsExactly("note");
    }

    @Test
    void partsCannotChangeNames() {
        List<SealedPart> now = List.of(part("header", "a"), part("bytes", "c"), part("reading 1", "b"));
        assertThat(Verification.of(seal(), now).changed()).containsExactly("bytes", "reading 1");
    }

    @Test
    void theSignatureCoversEverythingThatIsSaid() {
        Seal good = seal();
        List<SealedPart> fewer = new ArrayList<>(parts);
        fewer.remove(2);
        assertThat(good.signatureHolds()).isTrue();
        assertThat(List.of(
                        new Seal("other", true, good.madeAt(), "test", parts, good.signature()),
                        new Seal("ash-lane", false, good.madeAt(), "test", parts, good.signature()),
                        new Seal("ash-lane", true, WHEN.plusSeconds(9), "test", parts, good.signature()),
                        new Seal("ash-lane", true, good.madeAt(), "2", parts, good.signature()),
                        new Seal("ash-lane", true, good.madeAt(), "test", fewer, good.signature()),
                        new Seal(
                                "ash-lane",
                                true,
                                good.madeAt(),
                                "test",
                                parts,
                                new Signature(
                                        SealKey.create().publicKey(),
                                        good.signature().bytes())),
                        new Seal(
                                "ash-lane",
                                true,
                                good.madeAt(),
                                "test",
                                parts,
                                new Signature(new byte[] {1}, good.signature().bytes()))))
                .noneMatch(Seal::signatureHolds);
    }

    @Test
    void signaturesAreEqualWhereTheirBytesAreAndKeepTheirOwn() {
        byte[] key = {1, 2};
        byte[] bytes = {3, 4};
        Signature one = new Signature(key, bytes);
        assertThat(one)
                .isEqualTo(new Signature(key.clone(), bytes.clone()))
                .hasSameHashCodeAs(new Signature(key, bytes));
        assertThat(one).isNotEqualTo(new Signature(bytes, bytes)).isNotEqualTo(new Signature(key, key));
        key[0] = 9;
        one.bytes()[0] = 9;
        assertThat(one.publicKey()).containsExactly(1, 2);
        assertThat(one.bytes()).containsExactly(3, 4);
    }

    @Test
    void theTextGivesAnEqualSealBack() throws SealException {
        Seal seal = seal();
        assertThat(SealText.read(SealText.write(seal))).isEqualTo(seal);
    }

    @Test
    void aChangedTextIsNoSealOrDoesNotHold() {
        String text = SealText.write(seal());
        for (String changed : List.of(
                text.replace("\"simulated\" : true", "\"simulated\" : false"),
                text.replace("ash-lane", "elm-lane"),
                text.replace("reading 1", "reading 2"))) {
            assertThat(changed).isNotEqualTo(text);
            assertThat(holds(changed)).isFalse();
        }
        assertThatThrownBy(() -> SealText.read("{}")).isInstanceOf(SealException.class);
        assertThatThrownBy(() -> SealText.read(text.replace("\"form\" : 1", "\"form\" : 2")))
                .hasMessageContaining("newer program");
    }

    private static boolean holds(String text) {
        try {
            return SealText.read(text).signatureHolds();
        } catch (SealException e) {
            return false;
        }
    }

    @Test
    void aNameThatSpeaksToTheTerminalIsNoSeal() {
        String text = SealText.write(seal()).replace("reading 1", "reading\\u001b[2J");
        assertThatThrownBy(() -> SealText.read(text)).isInstanceOf(SealException.class);
    }

    @Test
    void aNameThatIsAPathLeadsNowhere(@TempDir Path folder) throws IOException {
        Files.writeString(folder.resolve("there.csv"), "1");
        List<SealedPart> named = List.of(part("file /", "a"), part("file ../x", "a"), part("file there.csv", "a"));
        Seal seal = Seal.sign("ash-lane", true, WHEN, "test", named, key);
        assertThat(SealFiles.beside(seal, folder.resolve("visit-seal.json")))
                .extracting(SealedPart::name)
                .containsExactly("file there.csv");
    }

    @Test
    void aKeyIsReadBackFromItsText() throws SealException {
        SealKey again = SealKey.read(key.pem(NONE), NONE);
        assertThat(again.fingerprint()).isEqualTo(key.fingerprint()).matches("([0-9a-f]{4} ){7}[0-9a-f]{4}");
        assertThat(Seal.sign("ash-lane", true, WHEN, "test", parts, again)).isEqualTo(seal());
    }

    @Test
    void aPassPhraseProtectsTheKey() throws SealException {
        char[] phrase = "three tall elms".toCharArray();
        String pem = key.pem(phrase);
        assertThat(pem).contains("ENCRYPTED PRIVATE KEY").contains("BEGIN PUBLIC KEY");
        assertThat(SealKey.read(pem, phrase).fingerprint()).isEqualTo(key.fingerprint());
        assertThatThrownBy(() -> SealKey.read(pem, NONE)).hasMessageContaining("pass phrase");
        assertThatThrownBy(() -> SealKey.read(pem, "three tall oaks".toCharArray()))
                .isInstanceOf(SealException.class)
                .hasMessageContaining("wrong pass phrase");
    }

    @Test
    void halvesOfTwoKeysAreRefused() {
        String mixed = key.pem(NONE).replace(key.publicPem(), SealKey.create().publicPem());
        assertThatThrownBy(() -> SealKey.read(mixed, NONE)).hasMessageContaining("do not belong together");
    }
}
