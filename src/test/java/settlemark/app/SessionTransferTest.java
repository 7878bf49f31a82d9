package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.cli.Commands;
import settlemark.cli.Program;
import settlemark.session.Note;
import settlemark.store.SqliteStore;

/** A sealed session goes to another computer, is looked at there, and nothing of it changes unseen on the way. */
final class SessionTransferTest {
    private static final long SEED = 8;

    @TempDir
    private Path folder = Path.of("");

    private Path here = Path.of("");
    private Path there = Path.of("");
    private Path file = Path.of("");

    private record Ran(int code, String out, String err) {
        String all() {
            return out + err;
        }
    }

    @BeforeEach
    void aSessionHere() throws Exception {
        here = Files.createDirectories(folder.resolve("here")).resolve("w.settlemark");
        there = Files.createDirectories(folder.resolve("there")).resolve("w.settlemark");
        file = folder.resolve("visit.settlemark");
        try (SqliteStore store = Workspaces.demo(Optional.of(here))) {
            TwoMinutes.in(store);
        }
    }

    private Ran run(Path workspace, String... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        String[] all = Stream.concat(Stream.of(arguments), Stream.of("--workspace", workspace.toString()))
                .toArray(String[]::new);
        int code = Commands.run(new Settlemark(), new PrintWriter(out), new PrintWriter(err), all);
        return new Ran(code, out.toString(), err.toString());
    }

    private Map<String, byte[]> record(Path workspace, String name) throws IOException {
        Path records = folder.resolve(name);
        Ran made = run(workspace, "record", "latest", "--out", records.toString());
        assertThat(made.code()).as(made.all()).isEqualTo(Program.DONE);
        Map<String, byte[]> files = new TreeMap<>();
        try (Stream<Path> all = Files.list(records)) {
            for (Path one : all.toList()) {
                files.put(one.getFileName().toString(), Files.readAllBytes(one));
            }
        }
        return files;
    }

    @Test
    void theOtherComputerVerifiesReviewsAndMakesTheSameRecord() throws Exception {
        assertThat(run(here, "session", "note", "latest", "=HYPERLINK(\"x\") \u202Efilter dusty")
                        .code())
                .isEqualTo(Program.DONE);
        Map<String, byte[]> before = record(here, "records-here");
        assertThat(run(here, "session", "export", "latest", "--to", file.toString())
                        .code())
                .isEqualTo(Program.DONE);
        Ran taken = run(there, "session", "import", file.toString());
        assertThat(taken.code()).as(taken.all()).isEqualTo(Program.DONE);
        assertThat(taken.out()).contains("SIMULATED", "untouched", "taken in as session 1");
        Map<String, byte[]> after = record(there, "records-there");
        assertThat(after.keySet()).isEqualTo(before.keySet()).hasSize(5);
        after.forEach((name, bytes) -> assertThat(bytes).as(name).isEqualTo(before.get(name)));
        Ran again = run(there, "session", "import", file.toString());
        assertThat(again.code()).isEqualTo(Program.USAGE);
        assertThat(again.err()).contains("already has session 2026-03-14-093000-000-ash-lane, as number 1");
    }

    @Test
    void aReviewIsSignedStandsBesideTheSealAndIsTold() throws Exception {
        Map<String, byte[]> before = record(here, "records");
        Path seal = folder.resolve("records/2026-03-14-093000-000-ash-lane-seal.json");
        Ran refused = run(here, "review", seal.toString(), "--return", "--by", "A. Second");
        assertThat(refused.code()).isEqualTo(Program.USAGE);
        assertThat(refused.err()).contains("--comment");
        Ran returned =
                run(here, "review", seal.toString(), "--return", "--by", "A. Second", "--comment", "zero too short");
        assertThat(returned.code()).as(returned.all()).isEqualTo(Program.DONE);
        assertThat(run(here, "review", "latest", "--accept", "--by", "B. Third").code())
                .isEqualTo(Program.DONE);
        Ran told = run(here, "verify", seal.toString());
        assertThat(told.code()).as(told.all()).isEqualTo(Program.DONE);
        assertThat(told.out())
                .contains("review: RETURNED by A. Second", ": zero too short", "review: accepted by B. Third");
        before.forEach((name, bytes) ->
                assertThat(folder.resolve("records").resolve(name)).as(name).hasBinaryContent(bytes));
        Path review = folder.resolve("records/2026-03-14-093000-000-ash-lane-review-1.json");
        Files.writeString(review, Files.readString(review).replace("too short", "too long"));
        Ran changed = run(here, "verify", seal.toString());
        assertThat(changed.code()).isEqualTo(Program.CHECK_FAILED);
        assertThat(changed.out()).contains("changed: the review of A. Second");
    }

    @Test
    void theRecordSaysWhoReviewedIt() throws Exception {
        record(here, "records");
        run(here, "review", "latest", "--return", "--by", "B. Third", "--comment", "zero too short");
        record(here, "records");
        Ran told = run(
                here,
                "verify",
                folder.resolve("records/2026-03-14-093000-000-ash-lane.pdf").toString());
        assertThat(told.code()).as(told.all()).isEqualTo(Program.DONE);
        assertThat(told.out()).contains("sealed before", "review: RETURNED by B. Third", "of another seal");
    }

    @Test
    void whatComesAfterTheSealIsSaidToHaveComeLater() throws Exception {
        record(here, "records");
        Path seal = folder.resolve("records/2026-03-14-093000-000-ash-lane-seal.json");
        try (SqliteStore store = Workspaces.existing(Optional.of(here))) {
            store.papers().note(1, new Note(OptionalLong.empty(), Instant.now().plusSeconds(60), "came back"));
        }
        Ran later = run(here, "verify", seal.toString());
        assertThat(later.code()).as(later.all()).isEqualTo(Program.DONE);
        assertThat(later.out()).contains("later: note 1, written at");
        try (SqliteStore store = Workspaces.existing(Optional.of(here))) {
            store.papers().note(1, new Note(OptionalLong.empty(), Instant.parse("2026-03-14T10:00:00Z"), "dated back"));
        }
        Ran backdated = run(here, "verify", seal.toString());
        assertThat(backdated.code()).isEqualTo(Program.CHECK_FAILED);
        assertThat(backdated.out()).contains("not sealed: note 2, written at 2026-03-14T10:00:00Z");
    }

    @Test
    void aFileThatWasChangedOnTheWayIsRefusedAndTheRefusalSaysWhat() throws Exception {
        assertThat(run(here, "session", "export", "latest", "--to", file.toString())
                        .code())
                .isEqualTo(Program.DONE);
        byte[] whole = Files.readAllBytes(file);
        System.out.println("transfer seed " + SEED);
        Random random = new Random(SEED);
        int refused = 0;
        for (int i = 0; i < 12; i++) {
            byte[] changed = whole.clone();
            int at = random.nextInt(changed.length);
            changed[at] ^= (byte) (1 << random.nextInt(8));
            Files.write(file, changed);
            Ran ran = run(there, "session", "import", file.toString());
            if (ran.code() != Program.DONE) {
                assertThat(ran.code()).as(ran.all()).isIn(Program.CHECK_FAILED, Program.DAMAGED);
                assertThat(ran.all()).containsAnyOf("changed:", "missing:", "not sealed:", "damage");
                refused++;
            } else {
                // It fell into room that no row takes; what was taken in is what was sealed.
                assertThat(ran.out()).contains("untouched");
                Files.delete(there);
            }
        }
        // Most of the file of so short a session is room.
        assertThat(refused).isGreaterThan(2);
        Files.write(file, Arrays.copyOf(whole, whole.length / 2));
        assertThat(run(there, "session", "import", file.toString()).code()).isEqualTo(Program.DAMAGED);
        Files.writeString(file, "not a session");
        Ran other = run(there, "session", "import", file.toString());
        assertThat(other.code()).isEqualTo(Program.DAMAGED);
        assertThat(other.err()).contains("byte 0");
    }

    @Test
    void aRecordIsVerifiedWithNothingButItsFilesAndThePublicKey() throws Exception {
        record(here, "records");
        Path key = folder.resolve("mine.pem");
        assertThat(run(here, "key", "show", "--public-out", key.toString()).code())
                .isEqualTo(Program.DONE);
        assertThat(Files.readString(key)).contains("PUBLIC KEY").doesNotContain("PRIVATE");
        try (SqliteStore empty = Workspaces.demo(Optional.of(there))) {
            assertThat(empty.sessions()).isEmpty();
        }
        String pdf =
                folder.resolve("records/2026-03-14-093000-000-ash-lane.pdf").toString();
        Ran good = run(there, "verify", pdf, "--key", key.toString());
        assertThat(good.code()).as(good.all()).isEqualTo(Program.DONE);
        assertThat(good.out()).contains("untouched: the record's files");
        run(there, "key", "new");
        Path other = folder.resolve("other.pem");
        run(there, "key", "show", "--public-out", other.toString());
        Ran bad = run(there, "verify", pdf, "--key", other.toString());
        assertThat(bad.code()).isEqualTo(Program.CHECK_FAILED);
        assertThat(bad.out()).contains("sealed with another key");
    }

    @Test
    void aMovedWorkspaceVerifiesItsSealsWithoutTheKey() throws Exception {
        record(here, "records");
        Files.copy(here, there);
        Ran moved = run(
                there,
                "verify",
                folder.resolve("records/2026-03-14-093000-000-ash-lane-seal.json")
                        .toString());
        assertThat(moved.code()).as(moved.all()).isEqualTo(Program.DONE);
        Map<String, byte[]> again = record(there, "records-there");
        again.forEach((name, bytes) ->
                assertThat(folder.resolve("records").resolve(name)).as(name).hasBinaryContent(bytes));
    }

    @Test
    void aProtectedKeySealsOnlyWithItsPassPhrase() throws Exception {
        Path phrase = Files.writeString(folder.resolve("phrase"), "correct horse\n");
        Path wrong = Files.writeString(folder.resolve("wrong"), "another\n");
        assertThat(run(here, "key", "new").code()).isEqualTo(Program.DONE);
        Ran twice = run(here, "key", "new");
        assertThat(twice.code()).isEqualTo(Program.USAGE);
        assertThat(twice.err()).contains("never overwritten");
        Ran kept = run(here, "key", "protect", "--new-phrase-file", phrase.toString());
        assertThat(kept.code()).as(kept.all()).isEqualTo(Program.DONE);
        assertThat(kept.all()).contains("protected by a pass phrase").doesNotContain("horse");
        Path out = folder.resolve("r");
        Ran without = run(here, "record", "latest", "--out", out.toString());
        assertThat(without.err()).contains("the record is not sealed", "--phrase-file");
        Ran bad = run(here, "record", "latest", "--out", out.toString(), "--phrase-file", wrong.toString());
        assertThat(bad.err()).contains("wrong pass phrase").doesNotContain("another\n");
        Ran good = run(here, "record", "latest", "--out", out.toString(), "--phrase-file", phrase.toString());
        assertThat(good.err()).isEmpty();
        List<String> lines = good.out().lines().toList();
        assertThat(lines.get(lines.size() - 1)).endsWith("-seal.json");
        assertThat(run(here, "key", "unprotect", "--phrase-file", phrase.toString())
                        .out())
                .contains("not protected");
        assertThat(Files.getPosixFilePermissions(Sealing.keyFile(here))).hasSize(2);
    }
}
