package settlemark.record;

import settlemark.session.SessionHeader;

/** Cells of the CSV files. */
final class Cells {
    private Cells() {}

    /** Text that a spreadsheet cannot take for a formula. */
    static String text(String text) {
        if (text.isEmpty()) {
            return text;
        }
        return switch (text.charAt(0)) {
            case '=', '+', '-', '@', '\t', '\r', '\n' -> "'" + text;
            default -> text;
        };
    }

    /** All digits of a number, empty where it is none; an open end is empty too. */
    static String number(double value) {
        return Double.isFinite(value) ? Double.toString(value) : "";
    }

    /** Where a line comes from. */
    static String origin(SessionHeader header) {
        return header.simulated() ? "SIMULATED" : "measured";
    }

    static String yes(boolean value) {
        return value ? "yes" : "no";
    }
}
