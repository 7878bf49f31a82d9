package settlemark.cli;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import settlemark.session.WhatIfReport;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** What other settings make of a session, for a person and for a program. */
final class WhatIfText {
    private static final double NANOS = 1e9;
    private static final List<String> HEAD =
            List.of("reading", "channel", "before", "at", "settled", "after", "at", "settled", "unit", "");

    private WhatIfText() {}

    static String words(WhatIfReport report) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(HEAD);
        report.lines().forEach(line -> rows.add(row(line)));
        StringBuilder text = new StringBuilder();
        String what = report.job() ? "stage readings" : "settled stretches";
        text.append("session ")
                .append(report.session())
                .append(": ")
                .append(report.changed())
                .append(" of ")
                .append(report.lines().size())
                .append(" ")
                .append(what)
                .append(" are others\n");
        if (!report.lines().isEmpty()) {
            table(text, rows);
        }
        for (WhatIfReport.Line line : report.lines()) {
            if (line.changed()) {
                text.append(reasons(line));
            }
        }
        if (report.otherThanStored() > 0) {
            text.append("This version gives ")
                    .append(report.otherThanStored())
                    .append(
                            " readings otherwise than the day stored them, with the day's own settings as well; \"before\""
                                    + " is what this version gives.\n");
        }
        return text.toString();
    }

    private static List<String> row(WhatIfReport.Line line) {
        List<String> row = new ArrayList<>();
        row.add(line.step().isEmpty() ? line.purpose() : line.step() + " (" + line.purpose() + ")");
        row.add(line.role().word());
        row.addAll(value(line.before()));
        row.addAll(value(line.after()));
        row.add(line.unit().symbol());
        row.add(line.changed() ? "other" : "same");
        return row;
    }

    private static List<String> value(Optional<WhatIfReport.Value> value) {
        if (value.isEmpty()) {
            return List.of("none", "-", "-");
        }
        WhatIfReport.Value v = value.get();
        return List.of(
                figure(v.value(), v.expandedUncertainty()),
                String.format(Locale.ROOT, "%.1f s", v.timeNanos() / NANOS),
                v.byHand() ? "by hand" : v.settled() ? "yes" : "no");
    }

    private static String figure(double value, double expanded) {
        return number(value, expanded) + " ±" + number(expanded, expanded);
    }

    private static String number(double value, double uncertainty) {
        if (!Double.isFinite(value)) {
            return "no value";
        }
        boolean known = uncertainty > 0 && Double.isFinite(uncertainty);
        int decimals = known ? Math.max(0, 1 - (int) Math.floor(Math.log10(uncertainty))) : 3;
        return new BigDecimal(value).setScale(decimals, RoundingMode.HALF_EVEN).toPlainString();
    }

    private static void table(StringBuilder text, List<List<String>> rows) {
        int[] widths = new int[HEAD.size()];
        for (List<String> row : rows) {
            for (int i = 0; i < widths.length; i++) {
                widths[i] = Math.max(widths[i], row.get(i).length());
            }
        }
        for (List<String> row : rows) {
            StringBuilder line = new StringBuilder();
            for (int i = 0; i < widths.length; i++) {
                line.append(row.get(i)).append(" ".repeat(widths[i] - row.get(i).length() + 2));
            }
            text.append("  ").append(line.toString().stripTrailing()).append('\n');
        }
    }

    /** Why a line is another one now: what is said of it after, or that there is none any more. */
    private static String reasons(WhatIfReport.Line line) {
        String name = line.step().isEmpty()
                ? line.role().word()
                : line.step() + " (" + line.purpose() + ") " + line.role().word();
        String after = line.after().map(WhatIfReport.Value::reason).orElse("none");
        return name + ": " + (line.step().isEmpty() && line.after().isEmpty() ? "not settled then" : after) + "\n";
    }

    static String json(WhatIfReport report) {
        ObjectNode root = JsonLine.object();
        root.put("session", report.session())
                .put("job", report.job())
                .put("changed", report.changed())
                .put("other_than_stored", report.otherThanStored());
        ArrayNode lines = root.putArray("readings");
        for (WhatIfReport.Line line : report.lines()) {
            ObjectNode node = lines.addObject();
            node.put("step", line.step())
                    .put("purpose", line.purpose())
                    .put("role", line.role().word())
                    .put("unit_ucum", line.unit().code())
                    .put("changed", line.changed());
            value(node, "before", line.before());
            value(node, "after", line.after());
        }
        return JsonLine.text(root) + "\n";
    }

    private static void value(ObjectNode node, String field, Optional<WhatIfReport.Value> value) {
        if (value.isEmpty()) {
            node.putNull(field);
            return;
        }
        WhatIfReport.Value v = value.get();
        ObjectNode part = node.putObject(field);
        part.put("time_s", v.timeNanos() / NANOS);
        JsonLine.number(part, "value", v.value());
        JsonLine.number(part, "expanded_uncertainty", v.expandedUncertainty());
        part.put("settled", v.settled()).put("by_hand", v.byHand()).put("reason", v.reason());
    }
}
