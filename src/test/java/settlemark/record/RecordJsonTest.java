package settlemark.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import settlemark.document.Document;
import settlemark.document.DocumentLimits;
import settlemark.document.DocumentSchema;
import settlemark.document.Problem;
import settlemark.job.StepState;
import settlemark.session.JobRecord;
import settlemark.settle.ChannelReading;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The record for machines. */
final class RecordJsonTest {
    private final JobRecord record = AshLane.job().record();
    private final String text = new RecordJson(record).text();

    private static DocumentSchema schema() throws IOException {
        try (InputStream in = RecordJsonTest.class.getResourceAsStream("record.schema.json")) {
            return DocumentSchema.of(Objects.requireNonNull(in).readAllBytes());
        }
    }

    private static List<Problem> problems(String json) throws IOException {
        List<Problem> problems = new ArrayList<>();
        Document document = Document.read(
                        "record.json", json.getBytes(StandardCharsets.UTF_8), DocumentLimits.DEFAULT, problems)
                .orElseThrow();
        schema().check(document, problems);
        return problems;
    }

    @Test
    void itFollowsItsSchema() throws IOException {
        assertThat(problems(text)).isEmpty();
    }

    @Test
    void theSchemaBites() throws IOException {
        assertThat(problems(text.replace("\"origin\" : \"SIMULATED\"", "\"origin\" : \"real\"")))
                .isNotEmpty();
        assertThat(problems(text.replace("\"complete\"", "\"whole\""))).isNotEmpty();
    }

    @Test
    void everyReadingAndVerdictIsInIt() {
        JsonNode root = JsonMapper.builder().build().readTree(text);
        assertThat(root.path("origin").stringValue()).isEqualTo("SIMULATED");
        for (StepState step : record.job().steps()) {
            JsonNode node = root.path("steps")
                    .valueStream()
                    .filter(n -> n.path("key").stringValue().equals(step.key()))
                    .findFirst()
                    .orElseThrow();
            assertThat(node.path("readings").size()).isEqualTo(step.readings().size());
            assertThat(node.path("verdicts").size()).isEqualTo(step.verdicts().size());
            step.reading().ifPresent(r -> {
                JsonNode channels =
                        node.path("readings").path(step.readings().size() - 1).path("channels");
                for (int i = 0; i < r.channels().size(); i++) {
                    ChannelReading channel = r.channels().get(i);
                    assertThat(channels.path(i).path("value").doubleValue()).isEqualTo(channel.value());
                    assertThat(channels.path(i).path("role").stringValue())
                            .isEqualTo(channel.role().word());
                }
            });
        }
    }

    @Test
    void theSameRecordGivesTheSameText() {
        assertThat(new RecordJson(AshLane.job().record()).text()).isEqualTo(text);
    }
}
