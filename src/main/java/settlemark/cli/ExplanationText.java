package settlemark.cli;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Locale;
import settlemark.decode.FrameExplanation;
import settlemark.decode.FrameExplanation.FieldReading;
import settlemark.decode.FrameExplanation.NumberReading;
import settlemark.measure.SampleStatus;
import settlemark.measure.Unit;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** What became of each frame, for people and as JSON. */
final class ExplanationText {
    private static final MathContext FIFTEEN = new MathContext(15);

    private ExplanationText() {}

    /** A frame with its fields: name, offsets, bytes, raw value, and the value with its unit or why there is none. */
    static String text(FrameExplanation frame) {
        if (!frame.isGood()) {
            return "rejected at byte " + frame.offset() + ": " + frame.rejection() + "\n";
        }
        StringBuilder text = new StringBuilder("frame at byte " + frame.offset() + ": " + frame.content() + "\n");
        int names = width(frame.fields().stream().map(FieldReading::name).toList());
        int places = width(frame.fields().stream().map(ExplanationText::place).toList());
        int bytes = width(frame.fields().stream().map(FieldReading::hex).toList());
        int raws = width(frame.fields().stream().map(FieldReading::raw).toList());
        for (FieldReading field : frame.fields()) {
            String line = "  " + padded(field.name(), names) + "  " + padded(place(field), places) + "  "
                    + padded(field.hex(), bytes) + "  " + padded(field.raw(), raws) + "  "
                    + field.reading().map(ExplanationText::value).orElse("");
            text.append(line.stripTrailing()).append('\n');
        }
        return text.toString();
    }

    /** Such as {@code port-1 = 6.83 [in_i'H2O]}; a bare number where the unit is the number one. */
    static String value(NumberReading reading) {
        String channel = reading.channel().isEmpty() ? "" : reading.channel() + " = ";
        if (reading.status() != SampleStatus.OK) {
            return channel + word(reading.status());
        }
        return channel
                + digits(reading.value())
                + reading.unit()
                        .map(Unit::code)
                        .filter(code -> !code.equals("1"))
                        .map(code -> " " + code)
                        .orElse("");
    }

    /** Fifteen digits, which hide that tenths have no exact double. */
    private static String digits(double value) {
        BigDecimal rounded = new BigDecimal(value).round(FIFTEEN).stripTrailingZeros();
        return Double.toString(rounded.doubleValue());
    }

    private static String place(FieldReading field) {
        return field.to() - field.from() <= 1 ? Integer.toString(field.from()) : field.from() + "-" + (field.to() - 1);
    }

    private static int width(List<String> words) {
        return words.stream().mapToInt(String::length).max().orElse(0);
    }

    private static String padded(String word, int width) {
        return word + " ".repeat(Math.max(0, width - word.length()));
    }

    private static String word(SampleStatus status) {
        return status.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    static ObjectNode json(String message, FrameExplanation frame) {
        ObjectNode object = JsonLine.object();
        object.put("message", message);
        object.put("offset", frame.offset());
        object.put("good", frame.isGood());
        if (!frame.isGood()) {
            return object.put("rejection", frame.rejection());
        }
        object.put("content", frame.content());
        ArrayNode fields = object.putArray("fields");
        for (FieldReading field : frame.fields()) {
            ObjectNode one = fields.addObject()
                    .put("name", field.name())
                    .put("from", field.from())
                    .put("to", field.to())
                    .put("hex", field.hex())
                    .put("raw", field.raw());
            field.reading().ifPresent(reading -> number(one, reading));
        }
        return object;
    }

    private static void number(ObjectNode field, NumberReading reading) {
        if (!reading.channel().isEmpty()) {
            field.put("channel", reading.channel());
        }
        JsonLine.number(field, "value", reading.value());
        reading.unit().map(Unit::code).ifPresent(code -> field.put("unit_ucum", code));
        field.put("status", word(reading.status()));
    }
}
