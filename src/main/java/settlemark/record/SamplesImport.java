package settlemark.record;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.MalformedInputException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;

/** Reads exported samples: columns by name in any order, others passed over, every line checked. */
public final class SamplesImport {
    private static final int LONGEST_FIELD = 64 * 1024;
    private static final int LONGEST_QUOTE = 40;
    private static final String BYTE_ORDER_MARK = "\uFEFF";

    private final Path file;
    private final String name;

    public SamplesImport(Path file) {
        this.file = file;
        this.name = String.valueOf(file.getFileName());
    }

    /** Reads all of it once and says what it holds. */
    public ImportedSamples look() throws IOException, MalformedSamplesException {
        return this.<RuntimeException>read((channel, time, value, status) -> {});
    }

    /**
     * Hands over every sample.
     *
     * @throws MalformedSamplesException at the first line that is wrong; those before it were handed on
     */
    public <E extends Exception> ImportedSamples read(ImportedSamples.Sink<E> sink)
            throws IOException, MalformedSamplesException, E {
        long line = 1;
        try (Reader source = Files.newBufferedReader(file, StandardCharsets.UTF_8);
                CsvReader<CsvRecord> csv = CsvReader.builder()
                        .maxBufferSize(LONGEST_FIELD)
                        .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                        .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                        .ofCsvRecord(source)) {
            Iterator<CsvRecord> records = csv.iterator();
            if (!records.hasNext()) {
                throw wrong(1, "the file is empty, expected the header " + String.join(",", SampleColumns.ALL));
            }
            int[] places = places(records.next());
            SampleLines lines = new SampleLines();
            while (records.hasNext()) {
                CsvRecord fields = records.next();
                line = fields.getStartingLineNumber();
                line(fields, places, line, lines, sink);
            }
            if (lines.samples() == 0) {
                throw wrong(line, "there is no sample in it");
            }
            return lines.imported();
        } catch (CsvParseException e) {
            throw wrong(line + 1, "cannot be read as CSV near here (" + e.getMessage() + "); check the quotes");
        } catch (MalformedInputException e) {
            throw wrong(line + 1, "is not UTF-8 near here; save it as UTF-8");
        } catch (UncheckedIOException e) {
            if (e.getCause() instanceof MalformedInputException) {
                throw wrong(line + 1, "is not UTF-8 near here; save it as UTF-8");
            }
            throw e.getCause();
        }
    }

    /** Where each of the columns stands, and behind them how many there are. */
    private int[] places(CsvRecord header) throws MalformedSamplesException {
        List<String> names = header.getFields().stream()
                .map(f -> f.replace(BYTE_ORDER_MARK, "").strip())
                .toList();
        int[] places = new int[SampleColumns.ALL.size() + 1];
        List<String> missing = new ArrayList<>();
        for (int i = 0; i < SampleColumns.ALL.size(); i++) {
            places[i] = names.indexOf(SampleColumns.ALL.get(i));
            if (places[i] < 0) {
                missing.add(SampleColumns.ALL.get(i));
            } else if (places[i] != names.lastIndexOf(SampleColumns.ALL.get(i))) {
                throw wrong(1, "the column " + SampleColumns.ALL.get(i) + " stands twice in the header");
            }
        }
        if (!missing.isEmpty()) {
            throw wrong(
                    1,
                    "the header lacks " + String.join(", ", missing) + ", got " + quoted(String.join(",", names))
                            + "; the file must be one that \"export --csv\" wrote");
        }
        places[SampleColumns.ALL.size()] = names.size();
        return places;
    }

    private <E extends Exception> void line(
            CsvRecord fields, int[] places, long line, SampleLines lines, ImportedSamples.Sink<E> sink)
            throws MalformedSamplesException, E {
        int count = places[SampleColumns.ALL.size()];
        if (fields.getFieldCount() != count) {
            throw wrong(
                    line,
                    "expected " + count + " fields as in the header, got " + fields.getFieldCount()
                            + " (write decimals with a point)");
        }
        String[] values = new String[SampleColumns.ALL.size()];
        for (int i = 0; i < values.length; i++) {
            values[i] = fields.getField(places[i]);
        }
        try {
            lines.take(values);
        } catch (SampleLines.WrongFieldException e) {
            throw wrong(line, e.column() + " must be " + e.getMessage() + ", got " + quoted(e.value()));
        }
        sink.take(lines.channel(), lines.timeNanos(), lines.value(), lines.status());
    }

    private MalformedSamplesException wrong(long line, String what) {
        return new MalformedSamplesException(name, line, what);
    }

    /** Not too much of it. */
    static String quoted(String text) {
        String shown = text.length() > LONGEST_QUOTE ? text.substring(0, LONGEST_QUOTE) + "..." : text;
        return '"' + shown + '"';
    }
}
