package settlemark.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What only a whole process shows: loading the native library, and being told to end. */
final class SerialProcessTest {
    @TempDir
    private Path folder;

    @Test
    void beingToldToEndIsNoUnpluggedGauge() throws Exception {
        try (SocatPair pair = SocatPair.start(folder)) {
            Process listener = OtherProcess.start(List.of(), ListenMain.class, pair.near());
            try (BufferedReader said = listener.inputReader(StandardCharsets.UTF_8)) {
                assertThat(said.readLine()).isEqualTo("UP");
                listener.toHandle().destroy();
                assertThat(said.lines().collect(Collectors.toList())).isEmpty();
            }
            assertThat(listener.waitFor()).isEqualTo(143);
        }
    }

    @Test
    void theNativeLibraryLeavesNothingBehind() throws Exception {
        Path temporary = Files.createDirectory(folder.resolve("tmp"));
        try (SocatPair pair = SocatPair.start(folder)) {
            Process listener = OtherProcess.start(
                    List.of("-Djava.io.tmpdir=" + temporary, "-Duser.home=" + temporary),
                    ListenMain.class,
                    pair.near());
            try (BufferedReader said = listener.inputReader(StandardCharsets.UTF_8)) {
                assertThat(said.readLine()).isEqualTo("UP");
                try (Stream<Path> left = Files.walk(temporary)) {
                    assertThat(left.filter(p -> p.toString().endsWith(".so"))).isEmpty();
                }
            } finally {
                listener.destroy();
                listener.waitFor();
            }
        }
    }

    @Test
    void aNativeLibraryThatCannotBeLoadedIsAMessageWithTheFolderAndTheRemedy() throws Exception {
        Path temporary = Files.createDirectory(folder.resolve("tmp"));
        try (SocatPair pair = SocatPair.start(folder)) {
            // An unknown machine type: no library fits, as where none may be loaded.
            Process listener = OtherProcess.start(
                    List.of(
                            "-Djava.io.tmpdir=" + temporary,
                            "-Duser.home=" + temporary,
                            "-Dos.arch=none",
                            "-Dos.arch_full=none"),
                    ListenMain.class,
                    pair.near());
            String said = new String(listener.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            assertThat(said)
                    .startsWith("refused: ")
                    .contains(temporary.toString())
                    .contains("noexec")
                    .contains("-D" + String.join(".", "jSerialComm", "library", "path") + "=FOLDER")
                    .doesNotContain("\tat ");
            assertThat(listener.waitFor()).isZero();
        }
    }
}
