package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What goes wrong with a profile, a link or a workspace is said in German too where the window shows it. */
class ProblemsInGermanTest {
    /** What a person reads has more words than a name, a command or a part of a sentence. */
    private static final int LEAST_WORDS = 4;

    /** Checks of records against the program's own mistakes, text that is written into files, and far ends. */
    private static final Set<String> NEVER_SHOWN = Set.of(
            "Action",
            "BleAgent",
            "BlePeripheral",
            "BleServedAdvert",
            "BleServedNote",
            "BleServedObject",
            "BleServedService",
            "BleServedTree",
            "BleServedValue",
            "BluezValues",
            "BleDialogue",
            "CaptureEvents",
            "CaptureHead",
            "CaptureLimits",
            "CaptureLines",
            "CaptureReader",
            "CaptureText",
            "CaptureWords",
            "CaptureWriter",
            "ChannelSource",
            "Checksum",
            "Connection",
            "Curve",
            "DocumentLimits",
            "DraftWriter",
            "Example",
            "Field",
            "Framing",
            "Link",
            "Match",
            "Poll",
            "Problem",
            "Profile",
            "ProfileDraft",
            "ProfileLibrary",
            "RawRange",
            "Secrets",
            "SerialFarEnd",
            "SerialLine",
            "Source",
            "Step",
            "Tagged",
            "Wire");

    /** Said only where the program is at fault. */
    private static final Set<String> OWN_FAULTS = Set.of(
            "every Java platform has SHA-256",
            "the link's thread ended by a fault of the program",
            "a profile has no errors, and what has no errors is a profile",
            "a Bluetooth signal could not be taken",
            // The reader's of YAML, which is recognised by it.
            "mapping values are not allowed");

    /** Parts that the sources put together elsewhere, and a whole sentence of each. */
    private static final Map<String, String> PARTS = Map.ofEntries(
            Map.entry(
                    "7 a start or a checksum: without them nothing shows where a frame begins",
                    "fixed frames need a start or a checksum: without them nothing shows where a frame begins"),
            Map.entry(
                    "frames with a length field need",
                    "frames with a length field need a start or a checksum: without them nothing shows where a frame"
                            + " begins"),
            Map.entry("; did you mean 7?", "parity must be one of even, odd, none, got \"evn\"; did you mean even?"),
            Map.entry("must have 7 one of 7, got 7", "link must have exactly one of serial, ble, got none"),
            Map.entry("must have 77 entries, got 7", "link must have at most 2 entries, got 7"),
            Map.entry("raw numbers of a table must rise", "raw numbers of a table must rise, got 3 after 4"),
            Map.entry(
                    "values of a table must rise or fall all the way",
                    "values of a table must rise or fall all the way, got 3 after 4"),
            Map.entry(
                    "the field ends at byte 7, after the 7 bytes that the longest frame has7",
                    "the field ends at byte 9, after the 8 bytes that the longest frame has before its checksum"),
            Map.entry(
                    "7 is connected but has sent nothing for 7 s",
                    "Probe 1 is connected but has sent nothing for 7 s; it is asked anew"),
            Map.entry("7; it is asked anew", "Probe 1 is connected but has sent nothing for 7 s; it is asked anew"),
            Map.entry(
                    "77 is in group 7, but this session is older than that. Log out and in again",
                    "permission denied for ttyUSB0: ann is in group dialout, but this session is older than that."
                            + " Log out and in again"),
            Map.entry(
                    "7only its owner may use it. Ask for a udev rule that gives it to a group, then plug it in again",
                    "permission denied for ttyUSB0: only its owner may use it. Ask for a udev rule that gives it to"
                            + " a group, then plug it in again"),
            Map.entry(
                    "7this session is in group 7, so a sandbox, container or security policy stands in between. Start"
                            + " the program outside it",
                    "permission denied for ttyUSB0: this session is in group dialout, so a sandbox, container or"
                            + " security policy stands in between. Start the program outside it"),
            Map.entry(
                    "7you are not in group 7. Run: sudo usermod -a -G 7 7 ; then log out and in again",
                    "permission denied for ttyUSB0: you are not in group dialout. Run: sudo usermod -a -G dialout"
                            + " ann ; then log out and in again"),
            Map.entry(
                    "; 7 has this port open too and may take a part of the bytes: close it",
                    "listening on ttyUSB0 at 9600 baud, 8N1; screen (process 7) has this port open too and may take"
                            + " a part of the bytes: close it"));

    @AfterEach
    void english() {
        Words.speak(Language.ENGLISH);
    }

    @ParameterizedTest
    @ValueSource(strings = {"document", "profile", "link"})
    void everySentenceOfAPackageHasItsGerman(String name) throws IOException {
        Map<String, String> source = SourceSentences.of(Path.of("src/main/java/settlemark", name));
        Map<String, String> without = new TreeMap<>();
        int looked = 0;
        for (Map.Entry<String, String> one : source.entrySet()) {
            String sentence = one.getKey()
                    .replaceAll("%[.0-9]*[sdfX]", "7")
                    .replace("%%", "%")
                    .strip();
            boolean shown = !NEVER_SHOWN.contains(one.getValue()) && !OWN_FAULTS.contains(sentence);
            if (shown && sentence.split("[^A-Za-z]+", -1).length > LEAST_WORDS && sentence.contains(" ")) {
                looked++;
                List<String> unknown = unknown(PARTS.getOrDefault(sentence, sentence));
                // What is wrong with a value begins with its key, and a remedy follows it.
                if (!unknown.isEmpty() && !unknown("baud " + sentence).isEmpty()) {
                    without.put(sentence, one.getValue() + " " + unknown);
                }
            }
        }
        assertThat(without).as("without German").isEmpty();
        assertThat(looked).as("sentences of " + name).isGreaterThan(35);
        assertThat(source.values()).as("what is left out is there").anyMatch(NEVER_SHOWN::contains);
    }

    private static List<String> unknown(String sentence) {
        return Translations.german().missing(sentence).stream()
                .filter(ProblemsInGermanTest::isWords)
                .toList();
    }

    /** What stands in quotes or braces, keys of a profile, options and names are the same in every language. */
    private static boolean isWords(String part) {
        return part.replaceAll("\"[^\"]*\"|[{][^}]*[}]", "")
                .replaceAll("^[a-z-]+(, [a-z-]+)*$|-D[^ ]*|sudo .*", "")
                .matches(".*[a-z]{2,}[^a-z]+[a-z]{2,}.*");
    }

    @Test
    void problemsOfAProfileThatIsTypedAreReadInGerman() {
        Words.speak(Language.GERMAN);
        String text = """
                settlemark-profile: 1
                id: my gauge
                name: 7
                link: {serial: {baud: "9600,0"}}
                frames: 3
                """;
        assertThat(WorkshopDraft.problems(text))
                .isNotEmpty()
                .allSatisfy(p -> assertThat(Words.told(p.message())).isNotEqualTo(p.message()))
                .extracting(p -> Words.told(p.message()))
                .anyMatch(m -> m.startsWith("id muss sein: Kleinbuchstaben, Ziffern und Bindestriche"))
                .anyMatch(m -> m.contains("unbekannter Schl\u00fcssel \u201eframes\u201c") || m.contains("\"frames\""))
                .anyMatch(m -> m.contains("(einen Punkt schreiben)") || m.contains("ganze Zahl"));
    }

    @Test
    void aWorkspaceThatCannotBeOpenedSaysSoInGerman() {
        Words.speak(Language.GERMAN);
        assertThat(Words.told("workspace /data/a.settlemark: cannot be opened: another program holds it; end that"
                        + " program and try again"))
                .isEqualTo(
                        "Arbeitsdatei /data/a.settlemark: l\u00e4sst sich nicht \u00f6ffnen: ein anderes Programm h\u00e4lt"
                                + " sie; das Programm beenden und noch einmal versuchen");
        assertThat(Words.told("the note was not stored: workspace /data/a.settlemark: its folder /data is read-only;"
                        + " make it writable, or name another file with --workspace"))
                .startsWith("die Notiz wurde nicht gespeichert: Arbeitsdatei /data/a.settlemark: ihr Ordner /data");
    }
}
