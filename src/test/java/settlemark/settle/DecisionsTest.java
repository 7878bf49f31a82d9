package settlemark.settle;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tools.jackson.databind.JsonNode;

/**
 * What was decided and said on the examples when it was last looked at, so that work on speed or clarity changes nothing
 * unseen. It proves nothing to be right: the other tests do. Where a decision is meant to change, run with {@code
 * -Dsettle.decisions=FOLDER}, which writes the files anew, and look at the difference.
 */
final class DecisionsTest {
    private static final int STATE_EVERY = 20;

    private static List<String> decided(SettleKind kind) {
        List<String> lines = new ArrayList<>();
        for (JsonNode trace : Traces.json("examples/truth.json")) {
            for (JsonNode channel : trace.get("channels")) {
                if (channel.get("kind").stringValue().equalsIgnoreCase(kind.name())) {
                    String file = channel.get("file").stringValue();
                    lines.add("# " + file);
                    decide(kind, Traces.read("examples/" + file), lines);
                }
            }
        }
        return lines;
    }

    private static void decide(SettleKind kind, Traces.Trace trace, List<String> lines) {
        SettleDetector detector = new SettleDetector(
                SettleSettings.defaults(kind),
                Double.NaN,
                e -> lines.add(
                        digits(e.timeSeconds(), e.value(), e.uncertainty(), e.windowStartSeconds()) + e.reason()));
        for (int i = 0; i < trace.seconds().length; i++) {
            detector.accept(trace.seconds()[i], trace.values()[i]);
            if (i % STATE_EVERY == 0) {
                SettleState state = detector.state();
                lines.add(digits(state.swing(), state.secondsToGo(), state.windowStartSeconds()) + state.phase() + " "
                        + state.reason());
                detector.forecast()
                        .ifPresent(
                                f -> lines.add("forecast " + digits(f.value(), f.uncertainty(), f.secondsToSettled())));
            }
        }
    }

    private static String digits(double... numbers) {
        StringBuilder text = new StringBuilder();
        for (double number : numbers) {
            text.append(String.format(Locale.ROOT, "%.4g ", number));
        }
        return text.toString();
    }

    @ParameterizedTest
    @EnumSource(SettleKind.class)
    void theExamplesAreJudgedAsBefore(SettleKind kind) throws IOException {
        List<String> decided = decided(kind);
        String name = kind.name().toLowerCase(Locale.ROOT) + ".txt";
        String folder = System.getProperty("settle.decisions", "");
        if (!folder.isEmpty()) {
            Files.write(Path.of(folder).resolve(name), decided);
        }
        try (InputStream in = DecisionsTest.class.getResourceAsStream("/settle/decisions/" + name)) {
            assertThat(in).as(name).isNotNull();
            List<String> before = new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .toList();
            assertThat(decided).hasSizeGreaterThan(100).containsExactlyElementsOf(before);
        }
    }
}
