package settlemark.record;

import java.util.List;

/** The columns of exported samples, in their order. */
final class SampleColumns {
    static final String ORIGIN = "origin";
    static final String SESSION = "session";
    static final String TIME = "time";
    static final String NANOS = "session_nanos";
    static final String PROBE = "probe";
    static final String CHANNEL = "channel";
    static final String ROLE = "role";
    static final String VALUE = "value";
    static final String UNIT = "unit_ucum";
    static final String STATUS = "status";
    static final String SIMULATED = "SIMULATED";
    static final String MEASURED = "measured";

    static final List<String> ALL = List.of(ORIGIN, SESSION, TIME, NANOS, PROBE, CHANNEL, ROLE, VALUE, UNIT, STATUS);

    private SampleColumns() {}
}
