package settlemark.record;

/** Exported samples that cannot be read back; the message says file, line, value and what was expected. */
public final class MalformedSamplesException extends Exception {
    private static final long serialVersionUID = 1L;

    MalformedSamplesException(String file, long line, String what) {
        // The file's own words may be among these: nothing that a terminal would obey comes through.
        super(file + ":" + line + ": " + what.replaceAll("\\p{Cntrl}", "?"));
    }
}
