package settlemark.cli;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import settlemark.job.CorrectionPoint;
import settlemark.job.InstrumentCard;
import settlemark.measure.Unit;
import settlemark.session.Instruments.Kept;
import settlemark.session.LastUse;
import settlemark.settle.FromInstrument;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Instruments as lines for people and as JSON. */
final class InstrumentText {
    private static final String ROW = "%-16s %-20s %-18s %-11s %-22s %6s %8s %s%n";

    private static final int LONGEST = 40;

    private InstrumentText() {}

    /** What somebody wrote, safe on a terminal. */
    static String shown(String text) {
        String cut = text.length() > LONGEST ? text.substring(0, LONGEST) + "..." : text;
        return cut.replaceAll("[\\p{Cc}\\p{Cf}]", "?");
    }

    static String table(List<Kept> all, LocalDate today) {
        StringBuilder text = new StringBuilder(String.format(
                Locale.ROOT, ROW, "serial", "name", "kind", "calibrated", "due", "points", "battery", "last zero"));
        for (Kept kept : all) {
            InstrumentCard card = kept.card();
            text.append(String.format(
                    Locale.ROOT,
                    ROW,
                    card.serial(),
                    card.name(),
                    card.kind(),
                    card.calibrated().map(LocalDate::toString).orElse("-"),
                    due(card, today),
                    card.points().size(),
                    battery(kept.lastUse()),
                    kept.lastUse().zeros().stream()
                            .map(z -> z.channel() + " " + CsvRows.number(z.value(), 4) + " "
                                    + z.unit().symbol())
                            .reduce((a, b) -> a + ", " + b)
                            .orElse("-")));
        }
        return text.toString();
    }

    private static String battery(LastUse use) {
        return Double.isNaN(use.batteryPercent()) ? "-" : CsvRows.number(use.batteryPercent(), 0) + " %";
    }

    /** The day, and how it stands. */
    static String due(InstrumentCard card, LocalDate today) {
        return card.due()
                .map(day -> card.overdue(today)
                        ? day + " OVERDUE"
                        : day + ", " + ChronoUnit.DAYS.between(today, day) + " days")
                .orElse("-");
    }

    static String words(Kept kept, LocalDate today) {
        InstrumentCard card = kept.card();
        StringBuilder text = new StringBuilder();
        row(text, "serial", card.serial());
        row(text, "name", card.name().isEmpty() ? "-" : card.name());
        row(text, "kind", card.kind().isEmpty() ? "-" : card.kind());
        row(text, "calibrated", card.calibrated().map(LocalDate::toString).orElse("-"));
        row(text, "due", due(card, today));
        LastUse use = kept.lastUse();
        row(text, "battery", battery(use) + use.batteryAt().map(at -> ", " + at).orElse(""));
        for (LastUse.Zero zero : use.zeros()) {
            row(
                    text,
                    "last zero",
                    zero.channel() + " " + CsvRows.number(zero.value(), 4) + " "
                            + zero.unit().symbol() + ", " + zero.takenAt() + ", session " + zero.session());
        }
        if (card.points().isEmpty()) {
            row(text, "points", "none: readings are not corrected");
        }
        for (CorrectionPoint point : card.points()) {
            row(
                    text,
                    "point",
                    (point.channel().isEmpty() ? "" : point.channel() + ": ") + "true "
                            + CsvRows.number(point.trueValue(), 6) + ", indicated "
                            + CsvRows.number(point.indicated(), 6) + " "
                            + point.unit().symbol() + ": correction " + signed(point.correction()) + " \u00b1"
                            + CsvRows.number(point.expandedUncertainty(), 6) + " (k = 2)");
        }
        return text.toString();
    }

    private static void row(StringBuilder text, String what, String said) {
        text.append(String.format(Locale.ROOT, "%-11s %s%n", what, said));
    }

    private static String signed(double value) {
        return (value > 0 ? "+" : "") + CsvRows.number(value, 6);
    }

    /** What is added where it indicates a value. */
    static String at(InstrumentCard card, String channel, Unit unit, double indicated) {
        FromInstrument its = card.at(channel, unit, indicated);
        if (!its.corrects()) {
            return its.remark().isEmpty() ? "no correction points for " + unit.symbol() : its.remark();
        }
        return CsvRows.number(indicated, 6) + " " + unit.symbol() + " indicated: correction "
                + signed(its.correction()) + " \u00b1" + CsvRows.number(its.expandedUncertainty(), 6)
                + " (k = 2), corrected " + CsvRows.number(indicated + its.correction(), 6) + " " + unit.symbol();
    }

    static String json(Kept kept, LocalDate today) {
        InstrumentCard card = kept.card();
        ObjectNode node = JsonLine.object()
                .put("serial", card.serial())
                .put("name", card.name())
                .put("kind", card.kind());
        node.put("calibrated", card.calibrated().map(LocalDate::toString).orElse(null));
        node.put("due", card.due().map(LocalDate::toString).orElse(null));
        node.put("overdue", card.overdue(today));
        ArrayNode points = node.putArray("points");
        for (CorrectionPoint point : card.points()) {
            ObjectNode one = points.addObject().put("channel", point.channel());
            JsonLine.number(one, "true", point.trueValue());
            JsonLine.number(one, "indicated", point.indicated());
            JsonLine.number(one, "expanded_uncertainty", point.expandedUncertainty());
            one.put("unit", point.unit().code());
        }
        JsonLine.number(node, "battery_percent", kept.lastUse().batteryPercent());
        node.put("battery_at", kept.lastUse().batteryAt().map(Object::toString).orElse(null));
        ArrayNode zeros = node.putArray("last_zeros");
        for (LastUse.Zero zero : kept.lastUse().zeros()) {
            ObjectNode one = zeros.addObject().put("channel", zero.channel());
            JsonLine.number(one, "value", zero.value());
            one.put("unit", zero.unit().code())
                    .put("taken_at", zero.takenAt().toString())
                    .put("session", zero.session());
        }
        return JsonLine.text(node);
    }
}
