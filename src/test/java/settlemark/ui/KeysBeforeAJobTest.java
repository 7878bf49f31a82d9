package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The list of keys before a job names what has an effect there, and nothing else. */
final class KeysBeforeAJobTest {
    /** Of the boxes themselves: Swing moves between them and opens them. */
    private static final Set<String> OF_THE_BOXES = Set.of("Tab", "Shift Tab", "Enter");

    private static List<String> listed() {
        return StartChoices.keys().stream()
                .flatMap(line -> line.key().equals("1 to 3")
                        ? Stream.of("1", "2", "3")
                        : Stream.of(line.key().split(", ")))
                .toList();
    }

    private static Set<String> bound() {
        return Deed.of(Deed.Place.START).stream().map(Deed::label).collect(Collectors.toSet());
    }

    @Test
    void everyKeyThatIsBoundIsListed() {
        assertThat(listed()).doesNotHaveDuplicates().containsAll(bound());
    }

    @Test
    void everyKeyThatIsListedIsBoundOrOfABox() {
        assertThat(listed()).filteredOn(key -> !OF_THE_BOXES.contains(key)).isSubsetOf(bound());
    }

    @Test
    void aNoteIsWrittenInAJobOrAReviewOnly() {
        assertThat(Deed.of(Deed.Place.START)).doesNotContain(Deed.NOTE);
        assertThat(Deed.of(Deed.Place.JOB)).contains(Deed.NOTE);
        assertThat(Deed.of(Deed.Place.REVIEW)).contains(Deed.NOTE);
    }
}
