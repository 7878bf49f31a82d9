package settlemark.session;

import java.util.EnumMap;
import java.util.Map;
import java.util.function.BiFunction;
import java.util.function.UnaryOperator;
import settlemark.job.JobState;
import settlemark.job.Limit;
import settlemark.job.RatingPlate;
import settlemark.job.SafetyNotice;
import settlemark.job.StagePlate;
import settlemark.job.StepState;
import settlemark.job.Verdict;
import settlemark.measure.Conversion;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.settle.ChannelReading;
import settlemark.settle.FromInstrument;
import settlemark.settle.StageReading;

/**
 * A job's values in other units, for a screen or a page. Nothing is judged anew: outcomes stay what they were; zeros,
 * uncertainties and widths are converted as differences, without a scale's offset. What a person typed stays in the unit
 * that they typed.
 *
 * @param shown the unit for each that occurs; itself where it stays
 * @param said a sentence that speaks of values; as it is where sentences stay
 * @param reason a detector's reason, with what the values of its channel are converted by
 */
public record JobUnits(
        UnaryOperator<Unit> shown, UnaryOperator<String> said, BiFunction<String, Conversion, String> reason) {
    /** Sentences stay as they were said. */
    public static JobUnits ofValues(UnaryOperator<Unit> shown) {
        return new JobUnits(shown, UnaryOperator.identity(), (reason, conversion) -> reason);
    }

    /** @param pressure unit of the job's zero offsets */
    public JobState job(JobState job, Unit pressure) {
        Conversion zero = pressure.to(shown.apply(pressure));
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
                job.notices().stream().map(this::notice).toList(),
                job.instruments(),
                job.visits(),
                job.settings());
    }

    private SafetyNotice notice(SafetyNotice notice) {
        return new SafetyNotice(
                notice.key(),
                notice.sinceNanos(),
                notice.curedNanos(),
                notice.seenNanos(),
                said.apply(notice.words()),
                notice.caution());
    }

    /** Of a plate's limits and targets; inputs stay in Btu/h. */
    public RatingPlate plate(RatingPlate plate) {
        return new RatingPlate(
                plate.appliance(),
                plate.fuel(),
                plate.stages().stream().map(this::stage).toList(),
                limit(plate.inlet()),
                limit(plate.rise()),
                limit(plate.statics()),
                limit(plate.control()),
                plate.site());
    }

    private StagePlate stage(StagePlate stage) {
        Unit unit = shown.apply(stage.unit());
        Conversion to = stage.unit().to(unit);
        return new StagePlate(
                stage.key(),
                stage.name(),
                to.apply(stage.manifoldTarget()),
                width(to, stage.manifoldTolerance()),
                unit,
                stage.inputBtuPerHour());
    }

    private Limit limit(Limit limit) {
        return limit.to(shown.apply(limit.unit()));
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
                        .map(m -> new StepState.Mark(m.timeNanos(), said.apply(m.words())))
                        .toList(),
                step.remarks().stream().map(said).toList(),
                said.apply(step.waitingFor()),
                step.skipReason(),
                step.clocking(),
                step.typed());
    }

    private Verdict verdict(Verdict verdict) {
        Conversion to = verdict.limit().unit().to(shown.apply(verdict.limit().unit()));
        return new Verdict(
                verdict.subject(),
                to.apply(verdict.value()),
                width(to, verdict.expandedUncertainty()),
                limit(verdict.limit()),
                verdict.outcome());
    }

    public StageReading reading(StageReading reading) {
        return new StageReading(
                reading.step(),
                reading.purpose(),
                reading.timeNanos(),
                reading.byHand(),
                reading.handReason(),
                reading.channels().stream().map(this::channel).toList());
    }

    private ChannelReading channel(ChannelReading channel) {
        Unit target = shown.apply(channel.unit());
        Conversion to = channel.unit().to(target);
        return new ChannelReading(
                channel.role(),
                to.apply(channel.value()),
                width(to, channel.standardUncertainty()),
                width(to, channel.settleUncertainty()),
                to.applyDifference(channel.zeroOffset()),
                target,
                channel.fromNanos(),
                channel.toNanos(),
                channel.settled(),
                reason.apply(channel.reason(), to),
                channel.rule(),
                instrument(channel.instrument(), to));
    }

    static FromInstrument instrument(FromInstrument its, Conversion to) {
        return its.corrects()
                ? new FromInstrument(
                        its.serial(),
                        to.applyDifference(its.correction()),
                        width(to, its.standardUncertainty()),
                        its.remark())
                : its;
    }

    /** A difference without its sign. */
    static double width(Conversion conversion, double difference) {
        return Math.abs(conversion.slope()) * difference;
    }
}
