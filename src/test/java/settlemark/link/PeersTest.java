package settlemark.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static settlemark.link.Fixtures.THREADS;
import static settlemark.link.Fixtures.serial;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;
import settlemark.profile.ProfileReader;
import settlemark.session.LinkChange;
import settlemark.session.LinkException;
import settlemark.session.ProbeLink;

/** Devices that somebody else speaks for, each in a process of its own, over pseudo terminals. */
@SuppressWarnings("try") // a link is there to be listened to
final class PeersTest {
    private static final Profile REGISTERS = ProfileLibrary.get("modbus-registers");
    private static final Profile SCPI = ProfileLibrary.get("scpi-meter");

    @TempDir
    private Path folder;

    private final SerialHost host = new SerialHost(THREADS);
    private SocatPair pair;
    private @Nullable Process peer;

    @BeforeEach
    void plugIn() throws IOException {
        pair = SocatPair.start(folder);
    }

    @AfterEach
    void pull() {
        if (peer != null) {
            peer.destroyForcibly();
        }
        pair.close();
    }

    private void start(Class<?> main) throws IOException {
        Process started = OtherProcess.start(
                List.of(), main, Path.of(pair.far()).toRealPath().toString());
        peer = started;
        BufferedReader said = started.inputReader(StandardCharsets.UTF_8);
        String line = said.readLine();
        while (line != null && !line.equals("UP")) {
            line = said.readLine();
        }
        assertThat(line).isEqualTo("UP");
    }

    @Test
    void twoModbusUnitsOnOneLineGiveTheirOwnNumbers() throws Exception {
        start(ModbusSlaveMain.class);
        Gathered seventeen = new Gathered(REGISTERS);
        Gathered eighteen = new Gathered(REGISTERS);
        try (ProbeLink one = host.open(serial(pair.near()), REGISTERS, Fixtures.ticker(), seventeen);
                ProbeLink two = host.open(serial(pair.near() + "@18"), REGISTERS, Fixtures.ticker(), eighteen)) {
            Await.until(
                    "both",
                    15_000,
                    () -> seventeen.of("manifold").size() > 3
                            && eighteen.of("manifold").size() > 3);
        }
        assertThat(seventeen.of("supply")).isNotEmpty().containsOnly("55.5");
        assertThat(seventeen.of("return")).containsOnly("-2.0");
        assertThat(seventeen.of("draught")).containsOnly("10.0");
        assertThat(seventeen.of("manifold")).containsOnly("1013.25");
        assertThat(eighteen.of("supply")).isNotEmpty().containsOnly("33.3");
        assertThat(eighteen.of("manifold")).containsOnly("-40.5");
        assertThat(seventeen.rejected()).isEmpty();
        assertThat(eighteen.rejected()).isEmpty();
        assertThat(seventeen.changes()).containsExactly(LinkChange.UP);
    }

    @Test
    void aUnitThatIsNotThereIsSaidAndTheOtherGoesOn() throws Exception {
        start(ModbusSlaveMain.class);
        Gathered there = new Gathered(REGISTERS);
        Gathered absent = new Gathered(REGISTERS);
        try (ProbeLink one = host.open(serial(pair.near()), REGISTERS, Fixtures.ticker(), there);
                ProbeLink two = host.open(serial(pair.near() + "@99"), REGISTERS, Fixtures.ticker(), absent)) {
            Await.until("the absent one", 25_000, () -> absent.changes().contains(LinkChange.LOST));
            int before = there.of("supply").size();
            Await.until("the other", 10_000, () -> there.of("supply").size() > before + 3);
        }
        assertThat(absent.said()).hasSize(2);
        assertThat(absent.said().get(1))
                .startsWith("LOST: no answer from unit 99 to registers")
                .endsWith("3 tries");
        assertThat(absent.of("supply")).isEmpty();
        assertThat(there.changes()).containsExactly(LinkChange.UP);
        assertThat(there.rejected()).isEmpty();
    }

    private static final String TWO_QUESTIONS = """
            language: 1
            id: two-questions
            name: Two questions
            link:
              modbus-rtu: {unit: 5, address-base: 0, baud: 19200, data-bits: 8, parity: even, stop-bits: 1, flow: none}
            messages:
              - id: first
                ask: {function: 3, register: 100, count: 4, period: 0.1, time-out: 0.3, retries: 1}
                fields:
                  - {name: a, register: 100, type: uint16}
              - id: second
                ask: {function: 3, register: 200, count: 4, period: 0.1, time-out: 0.3, retries: 1}
                fields:
                  - {name: b, register: 200, type: uint16}
            channels:
              - {id: a, label: A, field: a, unit: Pa}
              - {id: b, label: B, field: b, unit: Pa}
            """;

    @Test
    void aLateAnswerOnARealLineLandsInNoOtherRegister() throws Exception {
        Profile two = profile(TWO_QUESTIONS);
        Gathered heard = new Gathered(two);
        try (ScriptedSlave slave = new ScriptedSlave(
                        pair.far(),
                        (n, request) -> new ScriptedSlave.Answer(
                                n % 7 == 3 ? 450 : n % 11 == 5 ? 280 : 1, ScriptedSlave.registers(request, 4)));
                ProbeLink link = host.open(serial(pair.near()), two, Fixtures.ticker(), heard)) {
            Await.until(
                    "both",
                    40_000,
                    () -> heard.of("a").size() >= 15 && heard.of("b").size() >= 15);
        }
        assertThat(heard.of("a")).containsOnly("100.0");
        assertThat(heard.of("b")).containsOnly("200.0");
        assertThat(heard.rejected()).isNotEmpty().allMatch(w -> w.startsWith("stray"));
        assertThat(heard.said()).anyMatch(w -> w.startsWith("NOTED: unit 5 answers after its time-out"));
    }

    @Test
    void anExceptionAndAShortAnswerAreSaidWithTheirRegistersAndGiveNoNumber() throws Exception {
        Profile two = profile(TWO_QUESTIONS);
        Gathered five = new Gathered(two);
        Gathered six = new Gathered(two);
        try (ScriptedSlave slave = new ScriptedSlave(pair.far(), (n, request) -> {
                    boolean second = (request[3] & 0xFF) == 200;
                    byte[] answer = ScriptedSlave.registers(request, request[0] == 6 ? 1 : 4);
                    byte[] refusal = ScriptedSlave.sealed(request[0], (byte) (request[1] | 0x80), (byte) 2);
                    return new ScriptedSlave.Answer(1, second && request[0] == 5 ? refusal : answer);
                });
                ProbeLink one = host.open(serial(pair.near()), two, Fixtures.ticker(), five);
                ProbeLink other = host.open(serial(pair.near() + "@6"), two, Fixtures.ticker(), six)) {
            Await.until("short", 8_000, () -> six.changes().contains(LinkChange.LOST));
            Await.until("good", 20_000, () -> five.of("a").size() > 5);
        }
        assertThat(five.said())
                .contains("NOTED: unit 5: exception 2: illegal data address at registers 200 to 203 (function 3)");
        assertThat(five.of("a")).containsOnly("100.0");
        assertThat(five.of("b")).isEmpty();
        assertThat(six.said().get(1)).contains("the answer has 2 bytes of registers where 4 registers have 8");
        assertThat(six.of("a")).isEmpty();
        assertThat(six.of("b")).isEmpty();
    }

    @Test
    void aModbusDeviceThatIsUnpluggedIsReadAgainWithinTenSecondsOfItsReturn() throws Exception {
        start(ModbusSlaveMain.class);
        Gathered heard = new Gathered(REGISTERS);
        try (ProbeLink link = host.open(serial(pair.near()), REGISTERS, Fixtures.ticker(), heard)) {
            Await.until("the first", 10_000, () -> heard.of("supply").size() > 1);
            pair.unplug();
            java.util.Objects.requireNonNull(peer).destroyForcibly().waitFor();
            Await.until("lost", 2_000, () -> heard.changes().contains(LinkChange.LOST));
            int before = heard.of("supply").size();
            pair.plugInAgain();
            start(ModbusSlaveMain.class);
            long millis = Await.until("again", 10_000, () -> heard.of("supply").size() > before);
            System.out.println("first sample " + millis + " ms after the device was up again");
        }
        assertThat(heard.of("supply")).containsOnly("55.5");
        // On a busy computer an answer may come after its time, and is then stray.
        assertThat(heard.rejected()).allMatch(reason -> reason.startsWith("stray"));
    }

    @Test
    void questionsFollowEachOtherAsFastAsTheLineAllows() throws Exception {
        start(ModbusSlaveMain.class);
        Profile fast = profile("""
                language: 1
                id: fast
                name: Fast
                link:
                  modbus-rtu: {unit: 17, address-base: 0, baud: 115200, data-bits: 8, parity: even, stop-bits: 1, flow: none}
                messages:
                  - id: there
                    ask: {function: 3, register: 107, count: 1, period: 0.001}
                    fields:
                      - {name: supply, register: 107, type: int16, scale: 0.1}
                channels:
                  - {id: supply, label: Supply, field: supply, unit: Cel}
                """);
        Gathered heard = new Gathered(fast);
        try (ProbeLink link = host.open(serial(pair.near()), fast, Fixtures.ticker(), heard)) {
            Await.until("five hundred", 120_000, () -> heard.of("supply").size() >= 500);
        }
        long[] gaps = new long[400];
        for (int i = 0; i < gaps.length; i++) {
            gaps[i] = heard.nanos().get(i + 100) - heard.nanos().get(i + 99);
        }
        Arrays.sort(gaps);
        System.out.println("from answer to answer: median " + gaps[200] / 1000 + " us, 99 of 100 within "
                + gaps[396] / 1000 + " us; 1750 us of it are the silence before a request");
        // The silence that must be kept before a request above 19200 Bd (Modbus over Serial Line 1.02, 2.5.1.1).
        assertThat(gaps[200]).isGreaterThan(1_750_000);
    }

    @Test
    void twoProfilesThatWantDifferentLinesCannotShareAPort() throws Exception {
        Gathered heard = new Gathered(REGISTERS);
        Profile slow = profile(new String(REGISTERS.text().getBytes(StandardCharsets.UTF_8), StandardCharsets.UTF_8)
                .replace("baud: 19200", "baud: 9600"));
        try (ProbeLink link = host.open(serial(pair.near()), REGISTERS, Fixtures.ticker(), heard)) {
            assertThatThrownBy(() -> host.open(serial(pair.near() + "@18"), slow, Fixtures.ticker(), heard))
                    .isInstanceOf(LinkException.class)
                    .hasMessageContaining("19200 baud")
                    .hasMessageContaining("9600 baud");
            assertThatThrownBy(() -> host.open(serial(pair.near() + "@248"), REGISTERS, Fixtures.ticker(), heard))
                    .hasMessageContaining("a Modbus unit is 1 to 247, got @248");
        }
        assertThatThrownBy(() -> host.open(serial(pair.near() + "@3"), SCPI, Fixtures.ticker(), heard))
                .hasMessageContaining("is not for Modbus");
        // the port is free again
        host.open(serial(pair.near()), SCPI, Fixtures.ticker(), heard).close();
    }

    @Test
    void anInstrumentIsAskedInText() throws Exception {
        start(ScpiMain.class);
        Gathered heard = new Gathered(SCPI);
        try (ProbeLink link = host.open(serial(pair.near()), SCPI, Fixtures.ticker(), heard)) {
            Await.until("all six forms", 20_000, () -> heard.of("pressure").size() >= 7);
            assertThatThrownBy(() -> link.act("polish")).hasMessageContaining("has no action \"polish\"");
        }
        assertThat(heard.of("pressure"))
                .startsWith("-12.0", "871.8", "871.8", "OVER_RANGE", "FAULT", "UNDER_RANGE", "-12.0");
        assertThat(heard.rejected()).isEmpty();
        assertThat(heard.said()).hasSize(1);
    }

    @Test
    void aQuestionThatAnInstrumentDoesNotKnowIsSaidAndSpoilsNoOther() throws Exception {
        start(ScpiMain.class);
        Profile profile = profile(SCPI.text()
                .replace("text: \"*IDN?\\n\", time-out: 2, retries: 1", "text: \"NOPE?\\n\", time-out: 0.3, retries: 1")
                .replace("period: 10", "period: 0.5"));
        Gathered heard = new Gathered(profile);
        try (ProbeLink link = host.open(serial(pair.near()), profile, Fixtures.ticker(), heard)) {
            Await.until("readings", 30_000, () -> heard.of("pressure").size() >= 12);
        }
        assertThat(heard.said())
                .contains("NOTED: no answer from the device to \"NOPE?\\n\" after 2 tries")
                .noneMatch(w -> w.startsWith("LOST"));
        // What came right after the missing answer may have been the missing answer: it is not used.
        assertThat(heard.rejected()).hasSizeLessThan(4).allMatch(w -> w.startsWith("stray"));
        assertThat(heard.of("pressure")).containsOnly("-12.0", "871.8", "OVER_RANGE", "FAULT", "UNDER_RANGE");
    }

    private static Profile profile(String yaml) {
        return ProfileReader.read("test.yaml", yaml.getBytes(StandardCharsets.UTF_8))
                .profile()
                .orElseThrow();
    }
}
