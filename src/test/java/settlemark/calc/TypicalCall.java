package settlemark.calc;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/**
 * A formula with inputs as they come in field work.
 *
 * @param wide whether the uncertainties are too large for first order
 */
record TypicalCall(boolean wide, Formula formula, Inputs inputs) {
    static List<TypicalCall> all() throws IOException {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(TypicalCall.class.getResourceAsStream("typical-calls.txt")),
                StandardCharsets.UTF_8))) {
            return reader.lines()
                    .filter(line -> !line.startsWith("#"))
                    .map(TypicalCall::read)
                    .toList();
        }
    }

    private static TypicalCall read(String line) {
        String[] words = line.split("\\|", 2);
        return new TypicalCall(words[0].equals("wide"), Calls.formula(words[1]), Calls.inputs(words[1]));
    }

    @Override
    public String toString() {
        return formula + " " + (wide ? "with wide uncertainties " : "") + inputs.numbers() + inputs.choices();
    }
}
