package settlemark.profile;

import java.util.Optional;

/** Whether source, framing, columns, tags, checksum and fields of a message fit each other: what no schema can say. */
final class LayoutCheck {
    private final Section section;
    private final MessageDraft message;
    private final Framing framing;
    private final boolean lines;

    private LayoutCheck(MessageDraft message, Framing framing) {
        this.section = message.section();
        this.message = message;
        this.framing = framing;
        this.lines = framing instanceof Framing.Line;
    }

    static void run(MessageDraft message) {
        message.framing().ifPresent(framing -> new LayoutCheck(message, framing).run());
    }

    private void run() {
        checkFraming();
        checkCarrier();
        checkPresentation();
        checkTagged();
        checkChecksum();
        if (message.fields().stream().filter(LayoutCheck::counts).count() > 1) {
            section.error("fields", "only one field can have counts: true");
        }
        for (Section field : section.items("fields")) {
            if (field.isClean()) {
                message.fields().stream()
                        .filter(f -> f.name().equals(field.text("name", "")))
                        .findFirst()
                        .ifPresent(f -> check(field, f));
            }
        }
    }

    private void checkFraming() {
        if (section.has("columns") && !lines) {
            section.error("columns", "columns need the framing line; remove them");
        }
        boolean unmarked = framing instanceof Framing.Fixed fixed
                        && fixed.start().isEmpty()
                || framing instanceof Framing.LengthField field && field.start().isEmpty();
        if (unmarked && !section.has("checksum") && message.checksum().isEmpty()) {
            String kind = framing instanceof Framing.Fixed ? "fixed frames need" : "frames with a length field need";
            section.error("framing", kind + " a start or a checksum: without them nothing shows where a frame begins");
        }
    }

    /** Whether what brings the bytes can carry the framing. */
    private void checkCarrier() {
        if (message.source().isEmpty()) {
            return;
        }
        Source source = message.source().get();
        boolean ble = Sources.isBle(source);
        if (framing instanceof Framing.Packet && !ble) {
            section.error(
                    "framing",
                    "packet needs a characteristic, service-data or company-data: a serial line has no packets");
        } else if (framing instanceof Framing.IdleGap && ble) {
            section.error(
                    "framing", "idle-gap needs a serial line: radio keeps no time between its packets; use packet");
        } else if (Sources.isAdvertised(source) && !(framing instanceof Framing.Packet)) {
            section.error("framing", "each advertisement is one frame: use packet, or leave framing out");
        }
    }

    /** A presentation format needs a number whose scale and unit it replaces. */
    private void checkPresentation() {
        boolean honoured = message.source()
                .filter(source -> source instanceof Source.Characteristic c && c.presentation())
                .isPresent();
        if (honoured && message.fields().stream().noneMatch(field -> field.content() instanceof Field.Binary)) {
            section.error("characteristic", "presentation-format needs a number in bytes among the fields; remove it");
        }
    }

    private void checkTagged() {
        if (section.has("tagged") && lines) {
            section.error("tagged", "tagged needs a binary frame; remove it");
        } else if (message.tagged().filter(tagged -> tagged.at() >= room()).isPresent()) {
            section.error(
                    "tagged",
                    "at must lie within the longest frame, which has room for " + room() + " bytes, got "
                            + message.tagged().get().at());
        }
    }

    private void checkChecksum() {
        if (message.checksum().isEmpty()) {
            return;
        }
        Checksum checksum = message.checksum().get();
        if (lines && !checksum.hex()) {
            section.error("checksum", "a checksum in a line must be text; add written: hex");
        } else if (checksum.coversFrom() + checksum.bytesAtEnd() >= FrameRoom.bytes(framing)) {
            section.error(
                    "checksum",
                    "the checksum covers nothing: it does not fit the frame of " + FrameRoom.bytes(framing) + " bytes");
        }
    }

    private void check(Section item, Field field) {
        if (field.place() instanceof Field.AtByte at) {
            checkOffset(item, at.offset(), bytes(field.content()));
        } else if (field.place() instanceof Field.ByTag tag) {
            checkTag(item, tag, bytes(field.content()));
        } else if (!lines) {
            item.error("a column or a pattern needs the framing line; use at for the offset in a binary frame");
        } else if (field.place() instanceof Field.InColumn column) {
            checkColumn(item, column.index());
        }
    }

    private void checkOffset(Section item, int offset, int bytes) {
        int end = offset + bytes;
        int room = room();
        if (lines) {
            item.error("at", "at needs a binary frame; use column or pattern in a line");
        } else if (end > room && item.has("register")) {
            int register = item.integer("register", 0);
            int missing = (end - room + 1) / 2;
            int last = register + (end - offset + 1) / 2 - 1;
            item.error(
                    "register",
                    "the field takes registers " + register + " to " + last + ", the last that is asked for is "
                            + (last - missing));
        } else if (end > room) {
            item.error(
                    "at",
                    "the field ends at byte " + end + ", after the " + room + " bytes that the longest frame has"
                            + (message.checksum().isPresent() ? " before its checksum" : ""));
        }
    }

    private void checkTag(Section item, Field.ByTag tag, int bytes) {
        if (message.tagged().isEmpty()) {
            if (!section.has("tagged")) {
                item.error(
                        "tag", "tag needs tagged: {...} in its message to say how tags and values follow each other");
            }
            return;
        }
        Tagged tagged = message.tagged().get();
        int tagBits = 8 * tagged.tag().bytes();
        if (tag.tag() >= 1L << tagBits) {
            item.error("tag", "tag must fit the " + tagBits + " bits of a tag, got " + tag.tag());
            return;
        }
        if (tagged.length().isPresent()) {
            return;
        }
        Optional<Integer> length = Optional.ofNullable(tagged.lengths().get(tag.tag()));
        if (length.isEmpty()) {
            item.error("tag", "tag " + item.node("tag") + " must have a length under tagged: lengths");
        } else if (length.get() != Tagged.SAID && tag.offset() + bytes > length.get()) {
            item.error(
                    item.has("at") ? "at" : "tag",
                    "the field ends at byte " + (tag.offset() + bytes) + " of its value, which has " + length.get());
        }
    }

    private void checkColumn(Section item, int index) {
        if (message.columns().isEmpty()) {
            if (!section.has("columns")) {
                item.error("column", "column needs columns: {separator: ...} to say how a line is cut");
            }
            return;
        }
        int count = message.columns().get().count();
        if (count > 0 && index >= count) {
            item.error(
                    "column",
                    "column must be less than the count of " + count + " columns (they count from 0), got " + index);
        }
    }

    /** Bytes of the longest frame before its checksum. */
    private int room() {
        return FrameRoom.bytes(framing)
                - message.checksum().map(Checksum::bytesAtEnd).orElse(0);
    }

    private static boolean counts(Field field) {
        return field.content() instanceof Field.Binary binary && binary.counts();
    }

    private static int bytes(Field.Content content) {
        if (content instanceof Field.Literal literal) {
            return literal.bytes().length();
        } else if (content instanceof Field.Characters characters) {
            return characters.bytes();
        }
        return content instanceof Field.Binary binary ? binary.wire().bytes() : 0;
    }
}
