package settlemark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.session.Damage;
import settlemark.session.RawBytes;

final class StoreCommandTest {
    @TempDir
    Path folder;

    private final FakeProgram program = new FakeProgram();
    private Path file = Path.of("");

    @BeforeEach
    void aFile() throws Exception {
        file = Files.createFile(folder.resolve("w.settlemark"));
    }

    @Test
    void aWholeWorkspaceIsSaidToBeWhole() {
        Ran ran = Ran.of(program, "store", "check", file);
        assertThat(ran.code()).isZero();
        assertThat(ran.out())
                .isEqualTo(file + ": format 3, 2 sessions, 1 rereading, 400 samples, 40 events, 3 readings, 0 notes,"
                        + " 1 attachment\nwhole: everything is as it was stored\n");
        assertThat(program.tools.asked).containsExactly(List.of("check", file));
    }

    @Test
    void damageIsListedAndTheCodeSaysSo() {
        program.tools.damage.add(FakeTools.BLOCK);
        program.tools.damage.add(Damage.ofFile("table x\u001b[2J is damaged"));
        Ran ran = Ran.of(program, "store", "check", file);
        assertThat(ran.code()).isEqualTo(Program.DAMAGED);
        assertThat(ran.out())
                .contains("damaged: session 3, probe gauge, channel port-1, 409.600 s to 819.100 s: samples cannot be"
                        + " read")
                .contains("damaged: table x?[2J is damaged")
                .contains("store repair");
        Ran json = Ran.of(program, "store", "check", file, "--json");
        assertThat(json.code()).isEqualTo(Program.DAMAGED);
        assertThat(json.out())
                .contains("\"whole\":false")
                .contains("\"from_nanos\":409600000000,\"to_nanos\":819100000000")
                .endsWith("\"more\":0}\n");
    }

    @Test
    void withoutAFileItIsTheOwnWorkspace() {
        assertThat(Ran.of(program, "store", "check").code()).isZero();
        assertThat(program.tools.asked).containsExactly(List.of("check", Path.of("own.settlemark")));
        Ran none = Ran.of(program, "store", "check", folder.resolve("none"));
        assertThat(none.code()).isEqualTo(Program.USAGE);
        assertThat(none.err()).contains("no such file");
    }

    @Test
    void aRepairSaysWhatWasSavedAndLost() {
        Path to = folder.resolve("r.settlemark");
        Ran good = Ran.of(program, "store", "repair", file, "--to", to);
        assertThat(good.code()).isZero();
        assertThat(good.out())
                .isEqualTo("done: the head was made again\nsaved: session 3, 90 of 100 samples, 1 event, 2 readings\n"
                        + to + ": whole, with everything that was stored\n");
        assertThat(program.tools.asked).containsExactly(List.of("repair", file, to, FakeProgram.NOW));
        program.tools.damage.add(FakeTools.BLOCK);
        Ran bad = Ran.of(program, "store", "repair", file, "--to", to);
        assertThat(bad.code()).isEqualTo(Program.DAMAGED);
        assertThat(bad.out()).contains("lost: session 3, probe gauge").contains(file + " is as it was");
        assertThat(Ran.of(program, "store", "repair", file).err()).contains("--to");
        assertThat(Ran.of(program, "store", "repair", file, "--to", file).err()).contains("is not overwritten");
    }

    @Test
    void compactAndBackupSayWhatCameOfThem() {
        assertThat(Ran.of(program, "store", "compact", file).out()).isEqualTo(file + ": 1000 bytes before, 600 now\n");
        Path to = folder.resolve("b.settlemark");
        assertThat(Ran.of(program, "store", "backup", file, "--to", to).out()).startsWith(to + ": format 3");
        assertThat(Ran.of(program, "store", "backup", file, "--to", file).code())
                .isEqualTo(Program.USAGE);
        assertThat(Ran.of(program, "store").err()).contains("store needs a command");
    }

    @Test
    void exportAndImportAreAskedFor() {
        Ran.of(program, "export", "latest", "--csv", "s.csv", "--rereading", "1", "--workspace", file);
        Ran.of(program, "import", file, "--title", "back");
        assertThat(program.asked)
                .containsExactly(
                        new StoredDesk.Export(
                                "latest",
                                Optional.of(Path.of("s.csv")),
                                Optional.empty(),
                                OptionalInt.of(1),
                                Optional.of(file)),
                        new StoredDesk.Import(file, Optional.empty(), Optional.of("back")));
        assertThat(Ran.of(program, "import", folder).err()).contains("is a folder");
    }

    @Test
    void aLogMayDropItsBytesAndItsHelpSaysWhatThatCosts() {
        String[] probe = {"--probe", "g=/dev/ttyS9", "--profile", "g=demo-gauge"};
        Ran.of(program, "log", probe[0], probe[1], probe[2], probe[3], "--drop-bytes");
        Ran.of(program, "log", probe[0], probe[1], probe[2], probe[3]);
        assertThat(program.asked)
                .extracting(asked -> ((Program.Log) asked).bytes())
                .containsExactly(RawBytes.DROPPED, RawBytes.KEPT);
        String help = Ran.of(program, "log", "--help").out().replaceAll("\\s+", " ");
        assertThat(help).contains("--drop-bytes").contains(RawBytes.COST);
    }
}
