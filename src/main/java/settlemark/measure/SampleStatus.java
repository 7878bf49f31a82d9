package settlemark.measure;

/** What a gauge says about its own value. Only {@link #OK} is a measurement. */
public enum SampleStatus {
    OK,
    OVER_RANGE,
    UNDER_RANGE,
    OPEN_CIRCUIT,
    NOT_READY,
    FAULT
}
