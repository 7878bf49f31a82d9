package settlemark.record;

/**
 * Text in a cell that no spreadsheet takes for a formula: an apostrophe stands before what could be one, and before an
 * apostrophe, so that it can be taken off again.
 */
final class GuardedText {
    /** The wide forms too, which some programs read as the narrow ones. */
    private static final String FORMULA = "=+-@\t\r\n'\uff1d\uff0b\uff0d\uff20";

    private GuardedText() {}

    static String of(String text) {
        return !text.isEmpty() && FORMULA.indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
    }

    static String read(String cell) {
        return cell.startsWith("'") ? cell.substring(1) : cell;
    }
}
