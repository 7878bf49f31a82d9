package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.cli.Program;
import settlemark.job.Plans;
import settlemark.job.RatingPlate;
import settlemark.rig.DemoRig;
import settlemark.store.SqliteStore;

/** A whole job sealed with its record, then changed here and there. */
final class SealingTest {
    @TempDir
    private Path folder = Path.of("");

    private record Said(int code, String words) {}

    private Said verify(Path seal, Optional<SqliteStore> store) throws Exception {
        StringWriter text = new StringWriter();
        int code = SealCheck.verify(seal, store, new PrintWriter(text));
        return new Said(code, text.toString());
    }

    @Test
    void aSealHoldsUntilSomethingIsChangedAndThenNamesIt() throws Exception {
        try (SqliteStore store = Workspaces.demo(Optional.of(folder.resolve("demo.settlemark")))) {
            RatingPlate plate = DemoScene.plate();
            var header = DemoScene.header(
                    Instant.parse("2026-03-14T09:30:00Z"),
                    ZoneOffset.UTC,
                    "test",
                    DemoScene.within(),
                    Plans.get("supply-check"),
                    new RatingPlate(
                            plate.appliance(),
                            plate.fuel(),
                            plate.stages().subList(1, 2),
                            plate.inlet(),
                            plate.rise()));
            DemoRig rig = new DemoRig(new DemoRig.Settings(7, true));
            long session = new HeadlessDemo(header, store, rig, new WireWiring(rig), t -> {}).run();
            List<Path> files = RecordMaking.make(store, session, folder.resolve("records"))
                    .orElseThrow()
                    .files();
            Path seal = Sealing.seal(store, session, files, Instant.parse("2026-03-14T11:00:00Z"));

            Said untouched = verify(seal, Optional.of(store));
            assertThat(untouched.words()).contains("SIMULATED").contains("untouched: the session's data");
            assertThat(untouched.code()).isEqualTo(Program.DONE);

            Said elsewhere = verify(seal, Optional.empty());
            assertThat(elsewhere.code()).isEqualTo(Program.DONE);
            assertThat(elsewhere.words()).contains("was not checked");

            byte[] table = Files.readAllBytes(files.get(1));
            table[table.length / 2] ^= 1;
            Files.write(files.get(1), table);
            Files.delete(files.get(2));
            Said changed = verify(seal, Optional.of(store));
            assertThat(changed.code()).isEqualTo(Program.CHECK_FAILED);
            assertThat(changed.words())
                    .contains("changed: file " + files.get(1).getFileName())
                    .contains("missing: file " + files.get(2).getFileName());
        }
    }
}
