package settlemark.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.app.Main;

/** The program's own commands over pseudo terminals: the rig speaks, a capture listens, the capture is decoded. */
final class CaptureProcessTest {
    @TempDir
    private Path folder = Path.of("");

    /** A command in a process of its own; its data and its messages go to files. */
    private Process start(String name, Object... arguments) throws IOException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.add("-cp");
        command.add(System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")));
        command.add(Main.class.getName());
        Stream.of(arguments).map(Object::toString).forEach(command::add);
        return new ProcessBuilder(command)
                .redirectInput(ProcessBuilder.Redirect.PIPE)
                .redirectOutput(folder.resolve(name + ".out").toFile())
                .redirectError(folder.resolve(name + ".err").toFile())
                .start();
    }

    private String out(String name) throws IOException {
        return Files.readString(folder.resolve(name + ".out"));
    }

    private String err(String name) throws IOException {
        return Files.readString(folder.resolve(name + ".err"));
    }

    private static int end(Process process, int seconds) throws InterruptedException {
        assertThat(process.waitFor(seconds, TimeUnit.SECONDS)).isTrue();
        return process.exitValue();
    }

    private static boolean holds(Path file, String text) {
        try {
            return Files.exists(file) && Files.readString(file).contains(text);
        } catch (IOException e) {
            return false;
        }
    }

    @Test
    void whatTheRigSaysIsCapturedAndDecodedWhatEverTheCuts() throws Exception {
        Path file = folder.resolve("gauge.capture");
        try (SocatPair pair = SocatPair.start(folder)) {
            Process capture = start(
                    "capture", "capture", "--probe", "g=" + pair.near(), "--profile", "g=demo-gauge", "--out", file);
            Await.until("the capture's beginning", 60_000, () -> holds(file, " g up "));
            Process rig = start("rig", "rig", "--tty", "gauge=" + pair.far(), "--seconds", 4, "--no-drop-outs");
            assertThat(end(rig, 60)).as(err("rig")).isZero();
            capture.destroy();
            assertThat(end(capture, 30)).as(err("capture")).isEqualTo(143);
        }
        String sent = out("rig").lines().findFirst().orElseThrow();
        assertThat(sent).matches("sent gauge [0-9]{2} frames.*");
        int frames = Integer.parseInt(sent.split(" ", -1)[2]);
        assertThat(file)
                .content()
                .contains("# SIMULATED: g is an invented device")
                .contains("\nend ");

        assertThat(end(start("decode", "decode", file), 60)).as(err("decode")).isZero();
        assertThat(err("decode"))
                .contains("g (SIMULATED): " + frames + " frames, " + 3 * frames + " samples, 0 rejected");
        assertThat(out("decode").lines()).hasSize(1 + 3 * frames);
        assertThat(out("capture")).isEqualTo("captured g " + capturedBytes(file) + " bytes\n");

        long seed = System.nanoTime();
        Path cut = Files.writeString(folder.resolve("cut.capture"), cut(Files.readString(file), new Random(seed)));
        assertThat(end(start("again", "decode", cut), 60)).isZero();
        assertThat(out("again")).as("seed %d", seed).isEqualTo(out("decode"));
    }

    private static long capturedBytes(Path file) throws IOException {
        try (Stream<String> lines = Files.lines(file)) {
            return lines.filter(line -> line.matches("[0-9.]+ g 0 .*"))
                    .mapToLong(line -> HexFormat.ofDelimiter(" ").parseHex(line.split(" ", 4)[3]).length)
                    .sum();
        }
    }

    /** Each chunk in pieces that keep its time. */
    private static String cut(String capture, Random random) {
        StringBuilder pieces = new StringBuilder();
        capture.lines().forEach(line -> {
            String[] words = line.split(" ", -1);
            if (!line.matches("[0-9.]+ g 0 .*")) {
                pieces.append(line).append('\n');
                return;
            }
            for (int i = 3; i < words.length; i++) {
                boolean begins = i == 3 || random.nextInt(3) == 0;
                pieces.append(begins && i > 3 ? "\n" : "")
                        .append(begins ? String.join(" ", words[0], words[1], words[2]) : "")
                        .append(' ')
                        .append(words[i]);
            }
            pieces.append('\n');
        });
        return pieces.toString();
    }

    @Test
    void aKilledCaptureLosesLittleMoreThanASecond() throws Exception {
        Path file = folder.resolve("killed.capture");
        Instant killed;
        try (SocatPair pair = SocatPair.start(folder)) {
            Process capture =
                    start("capture", "capture", "--probe", "demo-gauge=" + pair.near(), "--out", file.toString());
            Process rig = start("rig", "rig", "--tty", "gauge=" + pair.far(), "--seconds", 120);
            try {
                Await.until("bytes in the file", 60_000, () -> holds(file, " demo-gauge 0 "));
                Await.until(
                        "more bytes in the file", 60_000, () -> file.toFile().length() > 4000);
                killed = Instant.now();
                capture.destroyForcibly();
                assertThat(end(capture, 30)).isEqualTo(137);
            } finally {
                rig.destroyForcibly();
            }
        }
        String text = Files.readString(file, StandardCharsets.UTF_8);
        List<String> lines =
                text.lines().filter(line -> line.matches("[0-9.]+ .*")).toList();
        String start = text.lines()
                .filter(line -> line.startsWith("start "))
                .findFirst()
                .orElseThrow();
        double last = Double.parseDouble(lines.get(lines.size() - 2).split(" ", 2)[0]);
        Instant lastWritten =
                ZonedDateTime.parse(start.substring(6)).toInstant().plusMillis(Math.round(last * 1000));
        assertThat(Duration.between(lastWritten, killed)).isLessThan(Duration.ofMillis(1500));

        assertThat(end(start("decode", "decode", file), 60)).isZero();
        assertThat(err("decode")).contains("warning: ").contains("0 rejected");
        assertThat(out("decode").lines()).hasSizeGreaterThan(60);
    }

    @Test
    void aPortThatIsNotThereLeavesNoFileBehind() throws Exception {
        Path file = folder.resolve("none.capture");
        Process capture = start("capture", "capture", "--probe", "demo-gauge=/dev/ttyNone", "--out", file);
        assertThat(end(capture, 60)).isEqualTo(4);
        assertThat(err("capture")).contains("there is no device /dev/ttyNone");
        assertThat(file).doesNotExist();
    }
}
