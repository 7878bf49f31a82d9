package settlemark.record;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import settlemark.job.JobState;
import settlemark.job.Limit;
import settlemark.job.RatingPlate;
import settlemark.job.StagePlate;
import settlemark.job.StepState;
import settlemark.job.Verdict;
import settlemark.measure.Conversion;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.session.JobRecord;
import settlemark.session.RecordForm;
import settlemark.session.SessionHeader;
import settlemark.settle.ChannelReading;
import settlemark.settle.StageReading;

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

    private InUnits(Unit pressure, Unit temperature, Unit power) {
        this.pressure = pressure;
        this.temperature = temperature;
        this.power = power;
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
                header(record.header()),
                job(record.job(), record.header().pressureUnit()),
                record.windows().stream().map(this::window).toList(),
                record.instruments(),
                record.events().stream()
                        .map(e -> new JobRecord.Happened(e.timeNanos(), said(e.words())))
                        .toList(),
                record.again(),
                record.beside());
    }

    private SessionHeader header(SessionHeader header) {
        return header.shownIn(pressure, temperature);
    }

    private String said(String words) {
        return SaidUnits.in(words, this::shown);
    }

    private JobState job(JobState job, Unit jobPressure) {
        Conversion zero = jobPressure.to(pressure);
        Map<Role, Double> zeros = new EnumMap<>(Role.class);
        job.zeroOffsets().forEach((role, offset) -> zeros.put(role, zero.applyDifference(offset)));
        return new JobState(
                job.plan(),
                plate(job.plate()),
                job.steps().stream().map(this::step).toList(),
                job.current(),
                zeros,
                job.person(),
                job.notes(),
                job.notices().stream()
                        .map(n -> new settlemark.job.SafetyNotice(
                                n.key(), n.sinceNanos(), n.curedNanos(), n.seenNanos(), said(n.words()), n.caution()))
                        .toList());
    }

    private RatingPlate plate(RatingPlate plate) {
        List<StagePlate> stages = new ArrayList<>();
        for (StagePlate stage : plate.stages()) {
            Conversion to = stage.unit().to(pressure);
            stages.add(new StagePlate(
                    stage.key(),
                    stage.name(),
                    to.apply(stage.manifoldTarget()),
                    to.applyDifference(stage.manifoldTolerance()),
                    pressure,
                    stage.inputBtuPerHour()));
        }
        return new RatingPlate(plate.appliance(), plate.fuel(), stages, limit(plate.inlet()), limit(plate.rise()));
    }

    private Limit limit(Limit limit) {
        return limit.to(shown(limit.unit()));
    }

    private StepState step(StepState step) {
        return new StepState(
                step.key(),
                step.step(),
                step.progress(),
                step.adjusting(),
                step.superseded(),
                step.openedNanos(),
                step.armedNanos(),
                step.doneNanos(),
                step.readings().stream().map(this::reading).toList(),
                step.verdicts().stream().map(this::verdict).toList(),
                step.ticked(),
                step.marks().stream()
                        .map(m -> new StepState.Mark(m.timeNanos(), said(m.words())))
                        .toList(),
                step.remarks().stream().map(this::said).toList(),
                said(step.waitingFor()),
                step.skipReason(),
                step.clocking());
    }

    private Verdict verdict(Verdict verdict) {
        Conversion to = verdict.limit().unit().to(shown(verdict.limit().unit()));
        return new Verdict(
                verdict.subject(),
                to.apply(verdict.value()),
                Math.abs(to.applyDifference(verdict.expandedUncertainty())),
                limit(verdict.limit()),
                verdict.outcome());
    }

    private StageReading reading(StageReading reading) {
        return new StageReading(
                reading.step(),
                reading.purpose(),
                reading.timeNanos(),
                reading.byHand(),
                reading.handReason(),
                reading.channels().stream().map(this::channel).toList());
    }

    private ChannelReading channel(ChannelReading channel) {
        Unit target = shown(channel.unit());
        Conversion to = channel.unit().to(target);
        return new ChannelReading(
                channel.role(),
                to.apply(channel.value()),
                Math.abs(to.applyDifference(channel.standardUncertainty())),
                Math.abs(to.applyDifference(channel.settleUncertainty())),
                to.applyDifference(channel.zeroOffset()),
                target,
                channel.fromNanos(),
                channel.toNanos(),
                channel.settled(),
                SaidUnits.reason(channel.reason(), to),
                channel.rule());
    }

    private JobRecord.ReadingWindow window(JobRecord.ReadingWindow window) {
        return new JobRecord.ReadingWindow(
                window.step(),
                reading(window.reading()),
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
