package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;
import settlemark.cli.Commands;
import settlemark.cli.Program;
import settlemark.session.SampleBlock;
import settlemark.store.SqliteStore;
import settlemark.store.TinyDisk;

/** Samples that go to a disk that has no room for them. */
@Isolated
final class FullDiskTest {
    /** Of noise, so that they need their room: about eight bytes each in the workspace. */
    private static final int SAMPLES = 80_000;

    @TempDir
    Path folder;

    @TempDir
    Path tiny;

    private record Ran(int code, String out, String err) {}

    private static Ran run(Object... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Commands.run(
                new Settlemark(),
                new PrintWriter(out),
                new PrintWriter(err),
                Arrays.stream(arguments).map(Object::toString).toArray(String[]::new));
        return new Ran(code, out.toString(), err.toString());
    }

    private static String value(int index) {
        return Double.toString(Math.sin(index * 1.7) / 3);
    }

    private Path samples() throws Exception {
        Path csv = folder.resolve("s.csv");
        StringBuilder lines =
                new StringBuilder("origin,session,time,session_nanos,probe,channel,role,value,unit_ucum,status\n");
        for (int i = 0; i < SAMPLES; i++) {
            lines.append(String.format(
                    Locale.ROOT,
                    "measured,visit,2026-03-14T09:%02d:%02d.%03d000000Z,%d000000,gauge,port-1,,%s,Pa,ok%n",
                    i / 60_000,
                    i / 1000 % 60,
                    i % 1000,
                    i,
                    value(i)));
        }
        return Files.writeString(csv, lines, StandardCharsets.UTF_8);
    }

    @Test
    void anImportThatFillsTheDiskSaysThatItIsNotWholeAndGoesInWhenThereIsRoom() throws Exception {
        Path csv = samples();
        try (TinyDisk disk = TinyDisk.mount(tiny, "size=6m")) {
            Files.write(disk.file("ballast"), new byte[5 << 20]);
            Path workspace = disk.file("w.settlemark");
            Ran full = run("import", csv, "--workspace", workspace);
            System.out.println(full.err());
            assertThat(full.code()).isEqualTo(Program.FAULT);
            assertThat(full.out()).isEmpty();
            assertThat(full.err())
                    .contains("the disk is full")
                    .contains("session 1 may hold only the beginning of " + csv)
                    .contains("import the file again");
            Files.delete(disk.file("ballast"));
            try (SqliteStore store = Workspaces.reading(Optional.of(workspace))) {
                assertThat(store.sessions()).hasSize(1).noneMatch(s -> s.ended());
                assertThat(store.sampleCount(1, 0)).isLessThanOrEqualTo(SAMPLES);
            }
            Ran again = run("import", csv, "--workspace", workspace);
            assertThat(again.code()).as(again.err()).isZero();
            assertThat(again.out()).isEqualTo("session 2 visit-imported-2\n");
            try (SqliteStore store = Workspaces.reading(Optional.of(workspace))) {
                SampleBlock stored = store.samples(2, 0, 0, Long.MIN_VALUE, Long.MAX_VALUE);
                assertThat(stored.size()).isEqualTo(SAMPLES);
                for (int i = 0; i < SAMPLES; i++) {
                    assertThat(Double.toString(stored.values()[i])).isEqualTo(value(i));
                }
            }
            assertThat(run("store", "check", workspace).code()).isZero();
        }
    }

    @Test
    void anExportThatFillsTheDiskLeavesNoPartOfAFile() throws Exception {
        Path workspace = folder.resolve("w.settlemark");
        Ran imported = run("import", samples(), "--workspace", workspace);
        assertThat(imported.code()).as(imported.err()).isZero();
        try (TinyDisk disk = TinyDisk.mount(tiny, "size=2m")) {
            Path csv = disk.file("out.csv");
            Ran full = run("export", "1", "--csv", csv, "--workspace", workspace);
            System.out.println(full.err());
            assertThat(full.code()).isEqualTo(Program.FAULT);
            assertThat(full.out()).isEmpty();
            assertThat(full.err()).contains("cannot write " + csv).containsIgnoringCase("no space");
            try (Stream<Path> left = Files.list(tiny)) {
                assertThat(left.toList()).isEqualTo(List.of());
            }
        }
    }
}
