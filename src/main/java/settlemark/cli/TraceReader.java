package settlemark.cli;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.util.Iterator;
import java.util.List;
import java.util.regex.Pattern;

/**
 * Reads samples from CSV with a header that names the columns {@code t_s} (seconds) and {@code value}; other columns are
 * passed over. An empty value is a moment without a reading. Each row is handed on as soon as its line has ended.
 */
final class TraceReader {
    /** Takes one row; the value is NaN where there was no reading. */
    @FunctionalInterface
    interface Row {
        void take(double timeSeconds, double value);
    }

    private static final String TIME = "t_s";
    private static final String VALUE = "value";
    private static final int LONGEST_FIELD = 64 * 1024;
    private static final int LONGEST_QUOTE = 40;
    private static final String BYTE_ORDER_MARK = "\uFEFF";
    private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d{1,4})?");

    private final String name;
    private int timeColumn;
    private int valueColumn;
    private int columns;

    /** @param name of the file, for messages */
    TraceReader(String name) {
        this.name = name;
    }

    /**
     * Reads to the end.
     *
     * @throws MalformedTraceException at the first row that is not as the header says; the rows before it were handed on
     */
    void read(Reader source, Row row) throws IOException, MalformedTraceException {
        long line = 1;
        try (CsvReader<CsvRecord> csv = CsvReader.builder()
                .maxBufferSize(LONGEST_FIELD)
                .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                .ofCsvRecord(source)) {
            Iterator<CsvRecord> records = csv.iterator();
            if (!records.hasNext()) {
                throw wrong(1, "the file is empty, expected the header " + TIME + "," + VALUE);
            }
            readHeader(records.next());
            while (records.hasNext()) {
                CsvRecord fields = records.next();
                line = fields.getStartingLineNumber();
                readRow(fields, line, row);
            }
        } catch (CsvParseException e) {
            throw wrong(line + 1, "cannot be read as CSV near here (" + e.getMessage() + "); check the quotes");
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    private void readHeader(CsvRecord header) throws MalformedTraceException {
        List<String> names = header.getFields().stream()
                .map(field -> field.replace(BYTE_ORDER_MARK, "").strip())
                .toList();
        timeColumn = names.indexOf(TIME);
        valueColumn = names.indexOf(VALUE);
        columns = names.size();
        if (timeColumn < 0 || valueColumn < 0) {
            throw wrong(
                    header.getStartingLineNumber(),
                    "the header must name the columns " + TIME + " and " + VALUE + ", got "
                            + quoted(String.join(",", names)) + " (add the line " + TIME + "," + VALUE
                            + " at the top)");
        }
    }

    private void readRow(CsvRecord fields, long line, Row row) throws MalformedTraceException {
        if (fields.getFieldCount() != columns) {
            throw wrong(
                    line,
                    "expected " + columns + " fields as in the header, got " + fields.getFieldCount()
                            + " (write decimals with a point)");
        }
        double time = number(fields.getField(timeColumn), TIME, line);
        String value = fields.getField(valueColumn);
        row.take(time, value.isBlank() ? Double.NaN : number(value, VALUE, line));
    }

    private double number(String text, String column, long line) throws MalformedTraceException {
        String stripped = text.strip();
        double number = NUMBER.matcher(stripped).matches() ? Double.parseDouble(stripped) : Double.NaN;
        if (!Double.isFinite(number)) {
            throw wrong(
                    line,
                    column + " must be a number, got " + quoted(text) + " (write it like 3.52"
                            + (column.equals(VALUE) ? ", or leave it empty where there was no reading)" : ")"));
        }
        return number;
    }

    private MalformedTraceException wrong(long line, String what) {
        return new MalformedTraceException(name, line, what);
    }

    private static String quoted(String text) {
        String shown = text.length() > LONGEST_QUOTE ? text.substring(0, LONGEST_QUOTE) + "..." : text;
        return '"' + shown.replaceAll("\\p{Cntrl}", "?") + '"';
    }
}
