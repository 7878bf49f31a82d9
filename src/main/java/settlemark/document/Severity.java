package settlemark.document;

/** Whether a document can be used in spite of a problem. */
public enum Severity {
    ERROR,
    WARNING
}
