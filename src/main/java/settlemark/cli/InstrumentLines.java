package settlemark.cli;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import settlemark.job.CorrectionPoint;
import settlemark.job.InstrumentCard;

/** Instruments out of CSV, a line an instrument or one of its correction points. */
final class InstrumentLines {
    private static final Set<String> COLUMNS = Set.of(
            "serial", "name", "kind", "calibrated", "due", "channel", "true", "indicated", "uncertainty", "unit");
    private static final int MOST = 10_000;
    private static final String BYTE_ORDER_MARK = "\uFEFF";

    private InstrumentLines() {}

    /** An instrument while its lines come. */
    private static final class Draft {
        private final Map<String, String> words = new LinkedHashMap<>();
        private final List<CorrectionPoint> points = new ArrayList<>();
        private final long line;

        Draft(long line) {
            this.line = line;
        }
    }

    /**
     * All of them, in the order of their first lines.
     *
     * @param name of the file, for messages
     * @throws IllegalArgumentException with the line, what is wrong and the remedy
     */
    static List<InstrumentCard> read(String name, String text) {
        Map<String, Draft> drafts = new LinkedHashMap<>();
        String plain = text.startsWith(BYTE_ORDER_MARK) ? text.substring(1) : text;
        try (CsvReader<NamedCsvRecord> csv = CsvReader.builder().ofNamedCsvRecord(plain);
                Stream<NamedCsvRecord> records = csv.stream()) {
            records.forEach(record -> {
                String place = name + ":" + record.getStartingLineNumber();
                if (record.getStartingLineNumber() > MOST) {
                    throw new IllegalArgumentException(place + ": more than " + MOST + " lines; take the file apart");
                }
                line(place, record, drafts);
            });
        } catch (CsvParseException | IOException e) {
            throw new IllegalArgumentException(
                    name + ": cannot be read as CSV (" + e.getMessage() + "); check the quotes", e);
        }
        if (drafts.isEmpty()) {
            throw new IllegalArgumentException(name + ":1: there is no instrument in it; expected a header with serial,"
                    + " and a line for each instrument or point");
        }
        List<InstrumentCard> cards = new ArrayList<>();
        drafts.forEach((serial, draft) -> cards.add(card(name + ":" + draft.line, serial, draft)));
        return cards;
    }

    private static void line(String place, NamedCsvRecord record, Map<String, Draft> drafts) {
        for (String column : record.getHeader()) {
            if (!COLUMNS.contains(column.strip())) {
                throw new IllegalArgumentException(place + ": unknown column \"" + InstrumentText.shown(column)
                        + "\"; the columns are serial, name, kind, calibrated, due, channel, true, indicated,"
                        + " uncertainty and unit");
            }
        }
        String serial = field(record, "serial");
        if (serial.isEmpty()) {
            throw new IllegalArgumentException(place + ": the line names no serial number");
        }
        Draft draft = drafts.computeIfAbsent(serial, s -> new Draft(record.getStartingLineNumber()));
        for (String column : List.of("name", "kind", "calibrated", "due")) {
            String said = field(record, column);
            String before = draft.words.getOrDefault(column, "");
            if (!said.isEmpty() && !before.isEmpty() && !said.equals(before)) {
                throw new IllegalArgumentException(place + ": " + column + " of " + InstrumentText.shown(serial)
                        + " is \"" + InstrumentText.shown(said) + "\", and was \"" + InstrumentText.shown(before)
                        + "\" in a line before");
            }
            if (!said.isEmpty()) {
                draft.words.put(column, said);
            }
        }
        if (!field(record, "true").isEmpty() || !field(record, "indicated").isEmpty()) {
            try {
                draft.points.add(new CorrectionPoint(
                        field(record, "channel"),
                        AddInstrumentCommand.number(field(record, "true"), "true"),
                        AddInstrumentCommand.number(field(record, "indicated"), "indicated"),
                        AddInstrumentCommand.number(field(record, "uncertainty"), "uncertainty"),
                        AddInstrumentCommand.unit(field(record, "unit"), "unit")));
            } catch (IllegalArgumentException e) {
                throw new IllegalArgumentException(place + ": " + e.getMessage(), e);
            }
        }
    }

    private static String field(NamedCsvRecord record, String column) {
        return record.findField(column).map(String::strip).orElse("");
    }

    private static InstrumentCard card(String place, String serial, Draft draft) {
        try {
            return new InstrumentCard(
                    serial,
                    draft.words.getOrDefault("name", ""),
                    draft.words.getOrDefault("kind", ""),
                    AddInstrumentCommand.day(draft.words.get("calibrated"), "calibrated"),
                    AddInstrumentCommand.day(draft.words.get("due"), "due"),
                    draft.points);
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(place + ": " + e.getMessage(), e);
        }
    }
}
