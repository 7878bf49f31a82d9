package settlemark.profile;

import java.util.List;
import java.util.Optional;

/** Whether framing, columns, checksum and fields fit each other: what no schema can say. */
final class LayoutCheck {
    private final Section root;
    private final Framing framing;
    private final Optional<Checksum> checksum;

    LayoutCheck(Section root, Framing framing, Optional<Checksum> checksum) {
        this.root = root;
        this.framing = framing;
        this.checksum = checksum;
    }

    void run(List<Field> fields, Optional<Framing.Columns> columns) {
        boolean lines = framing instanceof Framing.Line;
        if (root.has("columns") && !lines) {
            root.error("columns", "columns need the framing line; remove them");
        }
        if (framing instanceof Framing.Fixed fixed && fixed.start().isEmpty() && checksum.isEmpty()) {
            root.error(
                    "framing",
                    "fixed frames need a start or a checksum: without them nothing shows where a frame begins");
        }
        checkChecksum(lines);
        if (fields.stream().filter(LayoutCheck::counts).count() > 1) {
            root.error("fields", "only one field can have counts: true");
        }
        for (Section section : root.items("fields")) {
            fields.stream()
                    .filter(field -> field.name().equals(section.text("name", "")) && section.isClean())
                    .forEach(field -> check(section, field, columns, lines));
        }
    }

    private void checkChecksum(boolean lines) {
        if (checksum.isEmpty()) {
            return;
        }
        if (lines && !checksum.get().hex()) {
            root.error("checksum", "a checksum in a line must be text; add written: hex");
        } else if (checksum.get().coversFrom() + checksum.get().bytesAtEnd() >= framing.maximumBytes()) {
            root.error(
                    "checksum",
                    "the checksum covers nothing: it does not fit the frame of " + framing.maximumBytes() + " bytes");
        }
    }

    private void check(Section section, Field field, Optional<Framing.Columns> columns, boolean lines) {
        if (field.place() instanceof Field.AtByte at) {
            checkOffset(section, at.offset() + bytes(field.content()), lines);
        } else if (!lines) {
            section.error("a column or a pattern needs the framing line; use at for the offset in a binary frame");
        } else if (field.place() instanceof Field.InColumn column) {
            checkColumn(section, column.index(), columns);
        }
    }

    private void checkOffset(Section section, int end, boolean lines) {
        int checksumBytes = checksum.map(Checksum::bytesAtEnd).orElse(0);
        int room = framing.maximumBytes() - checksumBytes;
        if (lines) {
            section.error("at", "at needs a binary frame; use column or pattern in a line");
        } else if (end > room) {
            section.error(
                    "at",
                    "the field ends at byte " + end + ", after the " + room + " bytes that the longest frame has"
                            + (checksumBytes > 0 ? " before its checksum" : ""));
        }
    }

    private void checkColumn(Section section, int index, Optional<Framing.Columns> columns) {
        if (columns.isEmpty()) {
            if (!root.has("columns")) {
                section.error("column", "column needs columns: {separator: ...} to say how a line is cut");
            }
        } else if (columns.get().count() > 0 && index >= columns.get().count()) {
            section.error(
                    "column",
                    "column must be less than the count of " + columns.get().count()
                            + " columns (they count from 0), got " + index);
        }
    }

    private static boolean counts(Field field) {
        return field.content() instanceof Field.Binary binary && binary.counts();
    }

    private static int bytes(Field.Content content) {
        if (content instanceof Field.Literal literal) {
            return literal.bytes().length();
        }
        return content instanceof Field.Binary binary ? binary.wire().bytes() : 0;
    }
}
