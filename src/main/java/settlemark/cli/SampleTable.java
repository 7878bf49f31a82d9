package settlemark.cli;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.PrintWriter;
import java.math.BigDecimal;
import java.util.Locale;
import settlemark.measure.Channel;
import settlemark.measure.SampleStatus;
import tools.jackson.databind.node.ObjectNode;

/** Prints samples, a line each. */
sealed interface SampleTable {
    /**
     * Prints one sample.
     *
     * @param simulated it comes from an invented device
     * @throws OutputLostException where the output cannot be written any more; looked at now and then
     */
    void sample(String probe, boolean simulated, Channel channel, long timeNanos, double value, SampleStatus status);

    /** @throws OutputLostException where the output cannot be written any more */
    void flush();

    /** As CSV with a header, or as JSON lines. */
    static SampleTable of(PrintWriter out, boolean json) {
        return json ? new Json(out) : new Csv(out);
    }

    private static String seconds(long nanos) {
        return BigDecimal.valueOf(nanos, 9).toPlainString();
    }

    private static String word(SampleStatus status) {
        return status.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static String origin(boolean simulated) {
        return simulated ? "SIMULATED" : "measured";
    }

    private static void check(PrintWriter out) {
        // A print writer swallows its errors; asking also flushes it.
        if (out.checkError()) {
            throw new OutputLostException();
        }
    }

    /** Numbers with all their digits, so that the same bytes give the same text. */
    final class Csv implements SampleTable {
        private final PrintWriter out;
        private final CsvWriter csv;

        private Csv(PrintWriter out) {
            this.out = out;
            this.csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(out);
            csv.writeRecord("t_s", "probe", "channel", "value", "unit_ucum", "status", "origin");
        }

        @Override
        public void sample(
                String probe, boolean simulated, Channel channel, long timeNanos, double value, SampleStatus status) {
            csv.writeRecord(
                    seconds(timeNanos),
                    probe,
                    channel.name(),
                    Double.isFinite(value) ? Double.toString(value) : "",
                    channel.unit().code(),
                    word(status),
                    origin(simulated));
        }

        @Override
        public void flush() {
            try {
                csv.flush();
            } catch (IOException e) {
                throw new OutputLostException();
            }
            check(out);
        }
    }

    /** The same fields as objects. */
    final class Json implements SampleTable {
        private final PrintWriter out;

        private Json(PrintWriter out) {
            this.out = out;
        }

        @Override
        public void sample(
                String probe, boolean simulated, Channel channel, long timeNanos, double value, SampleStatus status) {
            ObjectNode line = JsonLine.object();
            line.put("t_s", BigDecimal.valueOf(timeNanos, 9));
            line.put("probe", probe);
            line.put("channel", channel.name());
            JsonLine.number(line, "value", value);
            line.put("unit_ucum", channel.unit().code());
            line.put("status", word(status));
            line.put("origin", origin(simulated));
            out.print(JsonLine.text(line) + "\n");
        }

        @Override
        public void flush() {
            check(out);
        }
    }
}
