package settlemark.profile;

/**
 * How a line is cut into columns.
 *
 * @param separator one ASCII character; a blank stands for any run of blanks
 * @param count columns that a line must have; 0 for any number that holds all fields
 */
public record Columns(char separator, int count) {
    public Columns {
        if (separator > 0x7E || count < 0) {
            throw new IllegalArgumentException("columns have an ASCII separator and a count of 0 or more");
        }
    }
}
