package settlemark.record;

import settlemark.measure.Conversion;
import settlemark.measure.Unit;
import settlemark.session.JobRecord;
import settlemark.session.JobUnits;
import settlemark.session.RecordForm;

/**
 * The same record with its values shown in other units. Nothing is judged anew: outcomes stay what they were, and a
 * difference of temperatures is converted without the scale's offset.
 */
final class InUnits {
    private static final Unit KILOWATT = Unit.ucum("kW");
    private static final Unit BTU_PER_HOUR = Unit.ucum("[Btu_IT]/h");
    private static final Unit KELVIN = Unit.ucum("K").difference();

    private final Unit pressure;
    private final Unit temperature;
    private final Unit power;
    private final JobUnits job;

    private InUnits(Unit pressure, Unit temperature, Unit power) {
        this.pressure = pressure;
        this.temperature = temperature;
        this.power = power;
        job = new JobUnits(this::shown, this::said, SaidUnits::reason);
    }

    static JobRecord of(JobRecord record, RecordForm.Units units) {
        return switch (units) {
            case JOB -> record;
            case US -> new InUnits(Unit.INCH_OF_WATER, Unit.FAHRENHEIT, BTU_PER_HOUR).record(record);
            case SI -> new InUnits(Unit.PASCAL, Unit.CELSIUS, KILOWATT).record(record);
        };
    }

    /** A sentence of a formula's, which speaks in inches, for a record in SI. */
    static String siSentence(String words) {
        return new InUnits(Unit.PASCAL, Unit.CELSIUS, KILOWATT).said(words);
    }

    private Unit shown(Unit unit) {
        return switch (unit.dimension()) {
            case PRESSURE -> pressure;
            case TEMPERATURE -> temperature;
            case TEMPERATURE_DIFFERENCE -> temperature.equals(Unit.CELSIUS) ? KELVIN : temperature.difference();
            case POWER -> power;
            default -> unit;
        };
    }

    private JobRecord record(JobRecord record) {
        return new JobRecord(
                record.header().shownIn(pressure, temperature, job),
                job.job(record.job(), record.header().pressureUnit()),
                record.windows().stream().map(this::window).toList(),
                record.instruments(),
                record.events().stream()
                        .map(e -> new JobRecord.Happened(e.timeNanos(), said(e.words())))
                        .toList(),
                record.again(),
                record.beside());
    }

    private String said(String words) {
        return SaidUnits.in(words, this::shown);
    }

    private JobRecord.ReadingWindow window(JobRecord.ReadingWindow window) {
        return new JobRecord.ReadingWindow(
                window.step(),
                job.reading(window.reading()),
                window.fromNanos(),
                window.toNanos(),
                window.traces().stream().map(this::trace).toList());
    }

    private JobRecord.RoleTrace trace(JobRecord.RoleTrace trace) {
        Unit target = shown(trace.unit());
        Conversion to = trace.unit().to(target);
        double[] values = new double[trace.values().length];
        for (int i = 0; i < values.length; i++) {
            values[i] = to.apply(trace.values()[i]);
        }
        return new JobRecord.RoleTrace(trace.role(), target, trace.timesNanos(), values);
    }
}
