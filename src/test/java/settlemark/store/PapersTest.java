package settlemark.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.List;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import settlemark.session.Attachment;
import settlemark.session.Note;
import settlemark.session.Papers;
import settlemark.session.StoreException;

final class PapersTest {
    private static final byte[] PICTURE = {-1, -40, -1, 0};

    @TempDir
    Path folder;

    private Path file() {
        return folder.resolve("w.settlemark");
    }

    @Test
    void notesAndAttachmentsStayWithTheirSession() throws StoreException {
        Note first = new Note(OptionalLong.empty(), Workspace.NOW, "flue checked,\n\u6f22\u5b57 \"fine\"");
        Note second = new Note(OptionalLong.of(-5), Workspace.NOW.plusNanos(1), "x".repeat(Note.MOST_CHARACTERS));
        Attachment attached;
        try (SqliteStore store = Fixtures.open(file())) {
            store.begin(Fixtures.log("first"));
            store.begin(Fixtures.log("second"));
            Papers papers = store.papers();
            papers.note(1, first);
            papers.note(2, second);
            papers.note(1, second);
            attached = papers.attach(2, "pl\u00e4te 1.jpg", "image/jpeg", Workspace.NOW, PICTURE);
            assertThat(papers.notes(1)).containsExactly(first, second);
        }
        try (SqliteStore store = SqliteStore.openForReading(file(), Fixtures::profile)) {
            assertThat(store.papers().notes(1)).containsExactly(first, second);
            assertThat(store.papers().notes(2)).containsExactly(second);
            assertThat(store.papers().attachments(1)).isEmpty();
            assertThat(store.papers().attachments(2)).containsExactly(attached);
            assertThat(store.papers().content(attached)).isEqualTo(PICTURE);
            assertThat(attached.digest()).hasSize(64);
            assertThatThrownBy(() -> store.papers().note(1, first))
                    .isInstanceOf(IllegalStateException.class)
                    .hasMessageContaining("for reading only");
        }
    }

    @Test
    void aSessionThatIsNotThereIsRefused() throws StoreException {
        try (SqliteStore store = Fixtures.open(file())) {
            Note note = new Note(OptionalLong.empty(), Workspace.NOW, "x");
            assertThatThrownBy(() -> store.papers().note(7, note))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("no session 7");
            assertThatThrownBy(() -> store.papers().attach(7, "a", "text/plain", Workspace.NOW, PICTURE))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("no session 7");
            store.begin(Fixtures.log("first"));
            store.papers().note(1, note);
            assertThat(store.papers().notes(1)).containsExactly(note);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " ", ".", "..", "a/b", "a\\b", "a\nb", "../../etc/passwd"})
    void aNameThatIsNoPlainNameIsRefused(String name) throws StoreException {
        try (SqliteStore store = Fixtures.open(file())) {
            store.begin(Fixtures.log("first"));
            assertThatThrownBy(() -> store.papers().attach(1, name, "text/plain", Workspace.NOW, PICTURE))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("an attachment's name");
            assertThat(store.papers().attachments(1)).isEmpty();
        }
    }

    @Test
    void whatIsEmptyOrTooLargeIsRefused() throws StoreException {
        try (SqliteStore store = Fixtures.open(file())) {
            store.begin(Fixtures.log("first"));
            for (int size : List.of(0, (int) Attachment.MOST_BYTES + 1)) {
                assertThatThrownBy(() -> store.papers().attach(1, "a", "text/plain", Workspace.NOW, new byte[size]))
                        .isInstanceOf(IllegalArgumentException.class)
                        .hasMessageContaining("must have 1 to 67108864 bytes, got " + size);
            }
            for (String text : List.of("", " \n", "x".repeat(Note.MOST_CHARACTERS + 1))) {
                assertThatThrownBy(() -> new Note(OptionalLong.empty(), Workspace.NOW, text))
                        .isInstanceOf(IllegalArgumentException.class)
                        .hasMessageContaining("a note has 1 to 20000 characters");
            }
        }
    }

    @Test
    void damageOfAnAttachmentIsNoticedWhenItIsRead() throws Exception {
        Attachment attached;
        try (SqliteStore store = Fixtures.open(file())) {
            store.begin(Fixtures.log("first"));
            attached = store.papers().attach(1, "a", "text/plain", Workspace.NOW, PICTURE);
        }
        Workspace.sql(file(), "UPDATE attachment SET content = x'01020304'");
        try (SqliteStore store = SqliteStore.openForReading(file(), Fixtures::profile)) {
            assertThatThrownBy(() -> store.papers().content(attached))
                    .isInstanceOfSatisfying(
                            StoreException.class, e -> assertThat(e.kind()).isEqualTo(StoreException.Cause.DAMAGED))
                    .hasMessageContaining("attachment \"a\"");
        }
        Workspace.sql(file(), "UPDATE note SET text = ''", "UPDATE attachment SET name = 'a/b'");
        try (SqliteStore store = SqliteStore.openForReading(file(), Fixtures::profile)) {
            assertThatThrownBy(() -> store.papers().attachments(1))
                    .isInstanceOf(StoreException.class)
                    .hasMessageContaining("an attachment of session 1");
        }
    }
}
