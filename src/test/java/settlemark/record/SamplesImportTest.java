package settlemark.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import settlemark.measure.Role;
import settlemark.measure.Unit;

/** What is wrong with a file is said with its line, the value and what was expected. */
final class SamplesImportTest {
    private static final String HEAD = "origin,session,time,session_nanos,probe,channel,role,value,unit_ucum,status\n";
    private static final String FIRST =
            "measured,visit,2026-03-14T09:31:00.500000000+01:00,500000000,gauge,port-1,inlet,3.5,[in_i'H2O],ok\n";
    private static final String SECOND =
            "measured,visit,2026-03-14T09:31:01.500000000+01:00,1500000000,gauge,port-1,inlet,NaN,[in_i'H2O],fault\n";

    @TempDir
    Path folder;

    private SamplesImport file(String text) throws Exception {
        return new SamplesImport(Files.writeString(folder.resolve("x.csv"), text, StandardCharsets.UTF_8));
    }

    @Test
    void aFileIsUnderstood() throws Exception {
        ImportedSamples found = file("\uFEFF" + HEAD + FIRST + SECOND).look();
        assertThat(found.key()).isEqualTo("visit");
        assertThat(found.simulated()).isFalse();
        assertThat(found.startedAt()).isEqualTo(Instant.parse("2026-03-14T08:31:00Z"));
        assertThat(found.zone().getId()).isEqualTo("+01:00");
        assertThat(found.samples()).isEqualTo(2);
        assertThat(found.endNanos()).isEqualTo(1_500_000_000L);
        assertThat(found.channels())
                .containsExactly(
                        new ImportedSamples.Column("gauge", "port-1", Unit.INCH_OF_WATER, Optional.of(Role.INLET)));
    }

    @Test
    void columnsMayStandInAnotherOrderWithOthersBetween() throws Exception {
        String head = "mine,status,unit_ucum,value,role,channel,probe,session_nanos,time,session,origin\n";
        String line = "\"a,b\",ok,Pa,-0.0,,supply,'=g,5,2026-03-14T09:31:00.000000005Z,v,SIMULATED\r\n";
        List<Object> samples = new ArrayList<>();
        ImportedSamples found = file(head + line).<RuntimeException>read((channel, time, value, status) -> {
            samples.add(time);
            samples.add(value);
        });
        assertThat(samples).containsExactly(5L, -0.0);
        assertThat(found.simulated()).isTrue();
        assertThat(found.channels().get(0).probe()).isEqualTo("=g");
        assertThat(found.channels().get(0).role()).isEmpty();
    }

    @Test
    void theThreeInchesStayApart() throws Exception {
        String other = "measured,visit,2026-03-14T09:31:00.500000000+01:00,500000000,gauge,port-2,,1,";
        ImportedSamples found =
                file(HEAD + FIRST + other + "[in_i'H2O]{60degF},ok\n").look();
        assertThat(found.channels().get(1).unit()).isEqualTo(Unit.inchOfWaterAt60F());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "3.5 | 3,5 | x.csv:2: expected 10 fields as in the header, got 11 (write decimals with a point)",
                "3.5 | abc | x.csv:2: value must be a number, such as 3.52 with a point, NaN or Infinity, got \"abc\"",
                "3.5 | =1+1 | x.csv:2: value must be a number",
                "measured | guessed | x.csv:2: origin must be measured or SIMULATED, got \"guessed\"",
                "500000000,gauge | 0.5,gauge | x.csv:2: session_nanos must be whole nanoseconds",
                "500000000,gauge | 99999999999999999999,gauge | x.csv:2: session_nanos must be",
                "2026-03-14T09:31:00.5 | 14.3.2026 | x.csv:2: time must be a time such as 2026-03-14T09:31",
                "gauge | '' | x.csv:2: probe must be a name of 1 to 200 characters, got \"\"",
                "port-1 | Port 1 | x.csv:2: channel must be a letter and then",
                "inlet | chimney | x.csv:2: role must be empty or one of inlet, manifold",
                "inlet | stack | x.csv:2: role must be one that goes with the unit",
                "[in_i'H2O],ok | inches,ok | x.csv:2: unit_ucum must be a UCUM code",
                "[in_i'H2O],ok | [in_i'H2O]{what},ok | x.csv:2: unit_ucum must be a UCUM code",
                "ok | good | x.csv:2: status must be one of fault, not_ready, ok, open_circuit, over_range, under_range,"
                        + " got \"good\""
            })
    void aWrongFieldIsSaidWithItsLine(String what, String with, String words) throws Exception {
        SamplesImport file = file(HEAD + FIRST.replace(what.strip(), with.strip()) + SECOND);
        assertThatThrownBy(file::look)
                .isInstanceOf(MalformedSamplesException.class)
                .hasMessageStartingWith(words.strip());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "measured | SIMULATED | x.csv:3: origin must be \"measured\" as in the lines before, got \"SIMULATED\"",
                "visit | other | x.csv:3: session must be \"visit\" as in the lines before",
                "09:31:01.5 | 09:31:02.5 | x.csv:3: time must be 1500000000 ns behind 2026-03-14T08:31:00Z",
                "[in_i'H2O] | Pa | x.csv:3: unit_ucum must be \"[in_i'H2O]\" as in the lines before",
                "inlet | manifold | x.csv:3: role must be \"inlet\" as in the lines before"
            })
    void aLineThatContradictsThoseBeforeIsSaid(String what, String with, String words) throws Exception {
        SamplesImport file = file(HEAD + FIRST + SECOND.replace(what.strip(), with.strip()));
        assertThatThrownBy(file::look)
                .isInstanceOf(MalformedSamplesException.class)
                .hasMessageStartingWith(words.strip());
    }

    @Test
    void aFileThatIsNoExportIsSaidToBeNone() throws Exception {
        refused("", "x.csv:1: the file is empty");
        refused("t_s,value\n1,2\n", "x.csv:1: the header lacks origin, session, time, session_nanos");
        refused("value," + HEAD + FIRST, "x.csv:1: the column value stands twice");
        refused(HEAD, "x.csv:1: there is no sample in it");
        refused(HEAD + FIRST + "\"measured,", "x.csv:3: expected 10 fields");
        refused(HEAD + "x".repeat(70_000), "x.csv:2: cannot be read as CSV near here");
        Path file = folder.resolve("x.csv");
        Files.write(file, (HEAD + FIRST.replace("gauge", "g\u00e4")).getBytes(StandardCharsets.ISO_8859_1));
        assertThatThrownBy(() -> new SamplesImport(file).look())
                .isInstanceOf(MalformedSamplesException.class)
                .hasMessageContaining("is not UTF-8 near here");
    }

    private void refused(String text, String words) throws Exception {
        SamplesImport file = file(text);
        assertThatThrownBy(file::look)
                .isInstanceOf(MalformedSamplesException.class)
                .hasMessageStartingWith(words);
    }
}
