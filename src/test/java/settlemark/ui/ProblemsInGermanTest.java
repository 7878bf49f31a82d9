package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What goes wrong with a profile, a link or a workspace is said in German too where the window shows it. */
class ProblemsInGermanTest {
    /** What a person reads has more words than a name, a command or a part of a sentence. */
    private static final int LEAST_WORDS = 4;

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
                    "; start with -Dorg.sqlite.tmpdir=FOLDER, where FOLDER is one that you may write to and execute from",
                    "SQLite's native library cannot be unpacked: the temp folder /t does not exist; start with"
                            + " -Dorg.sqlite.tmpdir=FOLDER, where FOLDER is one that you may write to and execute from"),
            Map.entry(
                    "SQLite's native library cannot be loaded: the temp folder forbids execution: 777",
                    "SQLite's native library cannot be loaded: the temp folder forbids execution: /t; 7"),
            Map.entry(
                    "SQLite's native library cannot be unpacked: the temp folder 7 cannot be written7",
                    "SQLite's native library cannot be unpacked: the temp folder /t cannot be written; 7"),
            Map.entry(
                    "SQLite's native library cannot be unpacked: the temp folder 7 does not exist7",
                    "SQLite's native library cannot be unpacked: the temp folder /t does not exist; 7"),
            Map.entry(
                    ", as such instruments customarily are",
                    "typed, from analyser 0815; within 0.2 %, as such instruments customarily are"),
            Map.entry(
                    "7 7 lies outside the correction points, 7 to 7 7: not corrected",
                    "The inlet: 12.3 inH2O lies outside the correction points, 0 to 10 inH2O: not corrected (instrument 42)."),
            Map.entry(
                    "7 The valve closes slowly.",
                    "The manifold fell within 7 s of the valve's closing. The valve closes slowly."),
            Map.entry(
                    "7 and the inlet 7 7: the hoses are on each other's taps, or the gas is off and the valve was left open",
                    "the manifold shows 7.00 inH2O with nothing firing and the inlet 0.00 inH2O: the hoses are on each other's"
                            + " taps, or the gas is off and the valve was left open"),
            Map.entry(
                    "7: its hose is on the inlet's side, or the valve lets gas through",
                    "the manifold shows 7.00 inH2O with nothing firing: its hose is on the inlet's side, or the valve lets gas"
                            + " through"),
            Map.entry(
                    "the manifold shows 7 7 with nothing firing",
                    "the manifold shows 7.00 inH2O with nothing firing: its hose is on the inlet's side, or the valve lets gas"
                            + " through"),
            Map.entry(
                    "Inlet 7 7: over the most that the 7 allows, 7 7",
                    "Inlet 14.20 inH2O: over the most that the plate allows, 10.50 inH2O"),
            Map.entry(
                    "With nothing firing the supply stands 7 7 7 the return. Run the blower alone for a minute: if they differ"
                            + " then too, the return probe is in other air than the furnace draws in.",
                    "With nothing firing the supply stands 2.0 F over the return. Run the blower alone for a minute: if they"
                            + " differ then too, the return probe is in other air than the furnace draws in."),
            Map.entry(
                    "as at lock-up: is this appliance firing?",
                    "The inlet stands as at lock-up: is this appliance firing?"),
            Map.entry(
                    "as with this appliance alone: are the others firing?",
                    "The inlet stands as with this appliance alone: are the others firing?"),
            Map.entry(", a value each 7 s", "the device states no accuracy, a value each 7 s"),
            Map.entry(", or the computer slept", "the clock was set forward by 7 s, or the computer slept"),
            Map.entry(
                    "; 7 has this port open too and may take a part of the bytes: close it",
                    "listening on ttyUSB0 at 9600 baud, 8N1; screen (process 7) has this port open too and may take"
                            + " a part of the bytes: close it"));

    /**
     * What stands before a sentence where it is told: nothing; the key of a value that something is wrong with, whose remedy
     * follows; the file of a workspace.
     */
    private static final List<String> BEFORE =
            List.of("", "baud ", "workspace a.settlemark ", "workspace a.settlemark: ");

    @AfterEach
    void english() {
        Words.speak(Language.ENGLISH);
    }

    @ParameterizedTest
    @CsvSource({
        "document, 35",
        "profile, 130",
        "link, 75",
        "store, 60",
        "app, 20",
        "seal, 10",
        "job, 60",
        "session, 20",
        "record, 1"
    })
    void everySentenceOfAPackageHasItsGerman(String name, int least) throws IOException {
        Map<String, String> source = SourceSentences.of(Path.of("src/main/java/settlemark", name));
        Map<String, String> without = new TreeMap<>();
        int looked = 0;
        for (Map.Entry<String, String> one : source.entrySet()) {
            String sentence = one.getKey()
                    .replaceAll("%[.0-9]*[sdfgX]", "7")
                    .replace("%%", "%")
                    .strip();
            boolean shown = NeverShown.mayBeShown(name, one.getValue(), sentence);
            if (shown && sentence.split("[^A-Za-z]+", -1).length > LEAST_WORDS && sentence.contains(" ")) {
                looked++;
                if (!known(PARTS.getOrDefault(sentence, sentence))) {
                    without.put(sentence, one.getValue() + " " + unknown(PARTS.getOrDefault(sentence, sentence)));
                }
            }
        }
        assertThat(without).as("without German").isEmpty();
        assertThat(looked).as("sentences of " + name).isGreaterThan(least);
        assertThat(NeverShown.of(name))
                .as("what is left out is there")
                .allSatisfy(c -> assertThat(Path.of("src/main/java/settlemark", name, c + ".java"))
                        .exists());
    }

    /** Where it is told whole, or behind what its package puts before it. */
    private static boolean known(String sentence) {
        return BEFORE.stream().anyMatch(before -> unknown(before + sentence).isEmpty());
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
