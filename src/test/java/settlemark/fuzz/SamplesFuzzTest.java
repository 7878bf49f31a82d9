package settlemark.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import settlemark.measure.SampleStatus;
import settlemark.record.ImportedSamples;
import settlemark.record.MalformedSamplesException;
import settlemark.record.SamplesImport;

/** Whatever a file of samples holds, it is imported whole or refused with the line, and the same each time. */
final class SamplesFuzzTest {
    private static final String HEAD = "origin,session,time,session_nanos,probe,channel,role,value,unit_ucum,status\n";
    private static final String WHOLE = HEAD
            + "measured,visit,2026-03-14T09:31:00.500000000+01:00,500000000,gauge,port-1,inlet,3.5,[in_i'H2O],ok\n"
            + "measured,visit,2026-03-14T09:31:01.500000000+01:00,1500000000,gauge,port-1,inlet,NaN,[in_i'H2O],fault\n"
            + "measured,visit,2026-03-14T09:30:59.000000000+01:00,-1000000000,air,left,,-0.0,[degF],ok\n";

    static Stream<Arguments> files() {
        return Stream.of(
                        WHOLE,
                        WHOLE.replace("\n", "\r\n"),
                        "\uFEFF" + WHOLE,
                        WHOLE.replace("visit", "\"vi\"\"sit, 2\""),
                        WHOLE.replace("3.5", "NaN:7ff8000000000001"),
                        WHOLE.replace("fault", "\u001Bfault"),
                        WHOLE.replaceFirst("visit", "vi\u0000sit"),
                        WHOLE.substring(0, 130),
                        HEAD)
                .map(text -> Arguments.of(
                        Named.of(text.length() + " characters of samples", text.getBytes(StandardCharsets.UTF_8))));
    }

    private record Sample(int channel, long timeNanos, long valueBits, SampleStatus status) {}

    @MethodSource("files")
    @FuzzTest(maxDuration = "10m")
    void anyFileIsImportedWholeOrRefusedWithItsLine(byte[] bytes) throws IOException {
        Path file = Files.createTempFile("samples", ".csv");
        try {
            Files.write(file, bytes);
            SamplesImport samples = new SamplesImport(file);
            List<Sample> taken = new ArrayList<>();
            ImportedSamples found = samples.<RuntimeException>read((channel, time, value, status) ->
                    taken.add(new Sample(channel, time, Double.doubleToRawLongBits(value), status)));
            assertThat(samples.look()).isEqualTo(found);
            assertThat(found.samples()).isPositive().isEqualTo(taken.size());
            assertThat(found.channels()).isNotEmpty().doesNotHaveDuplicates();
            long latest = 0;
            for (Sample sample : taken) {
                assertThat(sample.channel()).isBetween(0, found.channels().size() - 1);
                latest = Math.max(latest, sample.timeNanos());
            }
            assertThat(found.endNanos()).isEqualTo(latest);
        } catch (MalformedSamplesException e) {
            assertThat(e.getMessage())
                    .startsWith(file.getFileName() + ":")
                    .matches("[^:]*:[1-9][0-9]*: .*")
                    .hasSizeLessThan(600)
                    .doesNotContainPattern("\\p{Cntrl}");
        } finally {
            Files.delete(file);
        }
    }
}
