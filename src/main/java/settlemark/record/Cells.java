package settlemark.record;

import settlemark.session.SessionHeader;

/** Cells of the CSV files. */
final class Cells {
    /** The wide forms too, which some programs read as the narrow ones. */
    private static final String FORMULA = "=+-@\t\r\n\uff1d\uff0b\uff0d\uff20";

    private Cells() {}

    /** Text that a spreadsheet cannot take for a formula. */
    static String text(String text) {
        String visible = SafeText.visible(text);
        return !visible.isEmpty() && FORMULA.indexOf(visible.charAt(0)) >= 0 ? "'" + visible : visible;
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
