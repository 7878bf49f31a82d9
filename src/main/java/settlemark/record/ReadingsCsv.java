package settlemark.record;

import de.siegmar.fastcsv.writer.CsvWriter;
import java.io.IOException;
import java.io.Writer;
import java.util.List;
import java.util.Optional;
import settlemark.job.StepState;
import settlemark.job.Verdict;
import settlemark.measure.Unit;
import settlemark.session.JobRecord;
import settlemark.settle.ChannelReading;
import settlemark.settle.StageReading;

/** The readings as CSV: a line for each channel of each reading, and one for each verdict on something else. */
final class ReadingsCsv {
    private static final List<String> HEAD = List.of(
            "origin",
            "session",
            "step",
            "purpose",
            "taken",
            "role",
            "value",
            "unit_ucum",
            "expanded_uncertainty_k2",
            "zero_taken_off",
            "limit_low",
            "limit_high",
            "limit_source",
            "outcome",
            "settled",
            "by_hand",
            "by_hand_reason",
            "window_start",
            "window_end",
            "detector",
            "instrument",
            "correction_added",
            "correction_expanded_uncertainty_k2",
            "correction_remark");

    private final JobRecord record;
    private final Times times;

    ReadingsCsv(JobRecord record) {
        this.record = record;
        this.times = new Times(record.header());
    }

    void write(Writer writer) throws IOException {
        CsvWriter csv = CsvWriter.builder().build(writer);
        csv.writeRecord(HEAD);
        for (StepState step : record.job().steps()) {
            Optional<StageReading> last = step.reading();
            for (StageReading reading : step.readings()) {
                boolean judged = last.filter(r -> r == reading).isPresent();
                for (ChannelReading channel : reading.channels()) {
                    channel(csv, step, reading, channel, judged);
                }
            }
            last.ifPresent(reading -> others(csv, step, reading));
        }
        csv.flush();
    }

    private void channel(CsvWriter csv, StepState step, StageReading reading, ChannelReading channel, boolean judged) {
        Optional<Verdict> verdict =
                judged ? StageColumns.verdict(step, channel.role().word()) : Optional.empty();
        line(
                csv,
                step,
                reading,
                List.of(
                        channel.role().word(),
                        Cells.number(channel.value()),
                        channel.unit().code(),
                        Cells.number(channel.expandedUncertainty()),
                        Cells.number(channel.zeroOffset())),
                verdict,
                List.of(
                        Cells.yes(channel.settled()),
                        Cells.yes(reading.byHand()),
                        Cells.text(reading.handReason()),
                        times.iso(channel.fromNanos()),
                        times.iso(channel.toNanos()),
                        Cells.text(channel.reason()),
                        Cells.text(channel.instrument().serial()),
                        Cells.number(channel.instrument().correction()),
                        Cells.number(channel.instrument().expandedUncertainty()),
                        Cells.text(channel.instrument().remark())));
    }

    /** Verdicts on what is no channel of the reading, such as the rise. */
    private void others(CsvWriter csv, StepState step, StageReading reading) {
        for (Verdict verdict : step.verdicts()) {
            boolean channel = reading.channels().stream()
                    .anyMatch(c -> StageColumns.verdict(step, c.role().word())
                            .filter(v -> v == verdict)
                            .isPresent());
            if (!channel) {
                Unit unit = verdict.limit().unit();
                line(
                        csv,
                        step,
                        reading,
                        List.of(
                                Cells.text(verdict.subject()),
                                Cells.number(verdict.value()),
                                unit.code(),
                                Cells.number(verdict.expandedUncertainty()),
                                ""),
                        Optional.of(verdict),
                        List.of(
                                "",
                                Cells.yes(reading.byHand()),
                                Cells.text(reading.handReason()),
                                "",
                                "",
                                "",
                                "",
                                "",
                                "",
                                ""));
            }
        }
    }

    private void line(
            CsvWriter csv,
            StepState step,
            StageReading reading,
            List<String> value,
            Optional<Verdict> verdict,
            List<String> rest) {
        CsvWriter.CsvWriterRecord line = csv.writeRecord();
        line.writeField(Cells.origin(record.header()))
                .writeField(Cells.text(record.header().key()))
                .writeField(Cells.text(step.key()))
                .writeField(Cells.text(reading.purpose()))
                .writeField(times.iso(reading.timeNanos()));
        value.forEach(line::writeField);
        line.writeField(verdict.map(v -> Cells.number(v.limit().lower())).orElse(""))
                .writeField(verdict.map(v -> Cells.number(v.limit().upper())).orElse(""))
                .writeField(verdict.map(v -> Cells.text(v.limit().source())).orElse(""))
                .writeField(verdict.map(v -> v.outcome().word()).orElse(""));
        rest.forEach(line::writeField);
        line.endRecord();
    }
}
