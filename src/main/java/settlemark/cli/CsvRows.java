package settlemark.cli;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.PrintWriter;
import java.math.BigDecimal;
import java.math.RoundingMode;

/** Prints rows of CSV, each at once. */
final class CsvRows {
    private static final int TIME_DECIMALS = 6;
    private static final int DECIMALS_BELOW_LIMIT = 3;

    private final PrintWriter out;
    private final CsvWriter csv;

    CsvRows(PrintWriter out) {
        this.out = out;
        this.csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(out);
    }

    void write(String... fields) {
        csv.writeRecord(fields);
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

    /** Numbers are written to about a thousandth of the drift limit. */
    static int decimals(double driftLimit) {
        return Math.max(0, (int) Math.ceil(-Math.log10(driftLimit)) + DECIMALS_BELOW_LIMIT);
    }

    static String time(double seconds) {
        return number(seconds, TIME_DECIMALS);
    }

    /** Rounded, without trailing zeros; empty where there is none. */
    static String number(double value, int decimals) {
        if (Double.isNaN(value)) {
            return "";
        }
        BigDecimal rounded = new BigDecimal(value).setScale(decimals, RoundingMode.HALF_EVEN);
        return (rounded.signum() == 0 ? BigDecimal.ZERO : rounded.stripTrailingZeros()).toPlainString();
    }
}
