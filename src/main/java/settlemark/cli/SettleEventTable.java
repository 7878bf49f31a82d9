package settlemark.cli;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.PrintWriter;
import java.math.BigDecimal;
import java.math.RoundingMode;
import settlemark.settle.SettleEvent;

/** Prints settled and unsettled events as CSV, each at once. */
final class SettleEventTable {
    private static final int TIME_DECIMALS = 6;
    private static final int DECIMALS_BELOW_LIMIT = 3;

    private final PrintWriter out;
    private final CsvWriter csv;
    private final int decimals;

    /** @param driftLimit the numbers are written to about a thousandth of it */
    SettleEventTable(PrintWriter out, double driftLimit) {
        this.out = out;
        this.csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(out);
        this.decimals = Math.max(0, (int) Math.ceil(-Math.log10(driftLimit)) + DECIMALS_BELOW_LIMIT);
    }

    void header() {
        csv.writeRecord("file", "t_s", "event", "value", "uncertainty", "reason");
        flush();
    }

    void row(String file, SettleEvent event) {
        csv.writeRecord(
                file,
                number(event.timeSeconds(), TIME_DECIMALS),
                event.settled() ? "settled" : "unsettled",
                number(event.value(), decimals),
                number(event.uncertainty(), decimals),
                event.reason());
        flush();
    }

    private void flush() {
        try {
            csv.flush();
        } catch (IOException e) {
            throw new OutputLostException();
        }
        // A print writer swallows its errors; asking also flushes it.
        if (out.checkError()) {
            throw new OutputLostException();
        }
    }

    private static String number(double value, int decimals) {
        if (Double.isNaN(value)) {
            return "";
        }
        BigDecimal rounded = new BigDecimal(value).setScale(decimals, RoundingMode.HALF_EVEN);
        return (rounded.signum() == 0 ? BigDecimal.ZERO : rounded.stripTrailingZeros()).toPlainString();
    }
}
