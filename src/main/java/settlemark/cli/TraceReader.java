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
 * Reads samples from CSV with a header that names a column of times (seconds) and those of values, by default {@code t_s}
 * and {@code value}; other columns are passed over. An empty value is a moment without a reading. Each row is handed on as
 * soon as its line has ended.
 */
final class TraceReader {
    /** Takes one row; a value is NaN where there was no reading. */
    @FunctionalInterface
    interface Row {
        /** @param values in the order of the columns asked for; the array is used again for the next row */
        void take(double timeSeconds, double[] values);
    }

    static final String TIME = "t_s";
    static final String VALUE = "value";
    private static final int LONGEST_FIELD = 64 * 1024;
    private static final int LONGEST_QUOTE = 40;
    private static final String BYTE_ORDER_MARK = "\uFEFF";
    private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d{1,4})?");

    private final String name;
    private final String time;
    private final List<String> wanted;
    private final int[] valueColumns;
    private final double[] values;
    private int timeColumn;
    private int columns;

    /**
     * @param name of the file, for messages
     * @param time name of the column of times
     * @param wanted names of the columns of values
     */
    TraceReader(String name, String time, List<String> wanted) {
        this.name = name;
        this.time = time;
        this.wanted = List.copyOf(wanted);
        this.valueColumns = new int[wanted.size()];
        this.values = new double[wanted.size()];
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
                throw wrong(1, "the file is empty, expected the header " + expected());
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
        timeColumn = names.indexOf(time);
        boolean all = timeColumn >= 0;
        for (int i = 0; i < valueColumns.length; i++) {
            valueColumns[i] = names.indexOf(wanted.get(i));
            all &= valueColumns[i] >= 0;
        }
        columns = names.size();
        if (!all) {
            throw wrong(
                    header.getStartingLineNumber(),
                    "the header must name the columns " + time + " and " + String.join(", ", wanted) + ", got "
                            + quoted(String.join(",", names)) + " (" + remedy() + ")");
        }
    }

    private boolean usual() {
        return time.equals(TIME) && wanted.equals(List.of(VALUE));
    }

    private String expected() {
        return time + "," + String.join(",", wanted);
    }

    private String remedy() {
        return usual() ? "add the line " + expected() + " at the top" : "name the file's own with --time and --value";
    }

    private void readRow(CsvRecord fields, long line, Row row) throws MalformedTraceException {
        if (fields.getFieldCount() != columns) {
            throw wrong(
                    line,
                    "expected " + columns + " fields as in the header, got " + fields.getFieldCount()
                            + " (write decimals with a point)");
        }
        double seconds = number(fields.getField(timeColumn), time, false, line);
        for (int i = 0; i < values.length; i++) {
            String value = fields.getField(valueColumns[i]);
            values[i] = value.isBlank() ? Double.NaN : number(value, wanted.get(i), true, line);
        }
        row.take(seconds, values);
    }

    private double number(String text, String column, boolean mayBeEmpty, long line) throws MalformedTraceException {
        String stripped = text.strip();
        double number = NUMBER.matcher(stripped).matches() ? Double.parseDouble(stripped) : Double.NaN;
        if (!Double.isFinite(number)) {
            throw wrong(
                    line,
                    column + " must be a number, got " + quoted(text) + " (write it like 3.52"
                            + (mayBeEmpty ? ", or leave it empty where there was no reading)" : ")"));
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
