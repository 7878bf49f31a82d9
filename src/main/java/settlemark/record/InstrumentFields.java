package settlemark.record;

import java.time.LocalDate;
import settlemark.job.CorrectionPoint;
import settlemark.job.InstrumentCard;
import settlemark.job.InstrumentUse;
import settlemark.job.JobState;
import settlemark.measure.Role;
import settlemark.session.JobRecord;
import settlemark.settle.FromInstrument;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** What is known of instruments by their serial numbers, in the record for machines; nothing where nothing is. */
final class InstrumentFields {
    private final InstrumentWords words;
    private final Times times;

    InstrumentFields(JobState job, Times times) {
        this.words = new InstrumentWords(job, times.date());
        this.times = times;
    }

    /** What a channel's instrument adds to its reading. */
    static void share(ObjectNode channel, FromInstrument its) {
        if (its.equals(FromInstrument.NONE)) {
            return;
        }
        ObjectNode node = channel.putObject("instrument").put("serial", its.serial());
        if (its.corrects()) {
            node.put("correction", its.correction()).put("correction_expanded_uncertainty", its.expandedUncertainty());
        } else {
            node.putNull("correction").putNull("correction_expanded_uncertainty");
        }
        node.put("remark", its.remark());
    }

    ObjectNode add(ObjectNode node, JobRecord.Instrument probe) {
        if (!probe.serial().isEmpty()) {
            node.put("serial_number_told", probe.serial());
        }
        if (!Double.isNaN(probe.batteryPercent())) {
            node.put("battery_percent", probe.batteryPercent());
        }
        if (!words.of(probe).isEmpty()) {
            ArrayNode known = node.putArray("known");
            words.of(probe).forEach(u -> known.add(use(u)));
        }
        return node;
    }

    private ObjectNode use(InstrumentUse use) {
        InstrumentCard card = use.card();
        ObjectNode node = RecordJson.object()
                .put("serial", card.serial())
                .put("name", card.name())
                .put("profile", card.kind())
                .put("said_by_probe", use.saidByProbe())
                .put("since", times.iso(use.sinceNanos()));
        ArrayNode roles = node.putArray("roles");
        use.places().keySet().stream().sorted().map(Role::word).forEach(roles::add);
        node.put("calibrated", card.calibrated().map(LocalDate::toString).orElse(null))
                .put("due", card.due().map(LocalDate::toString).orElse(null))
                .put("overdue", card.overdue(times.date()));
        ArrayNode points = node.putArray("points");
        for (CorrectionPoint point : card.points()) {
            points.addObject()
                    .put("channel", point.channel())
                    .put("true", point.trueValue())
                    .put("indicated", point.indicated())
                    .put("expanded_uncertainty", point.expandedUncertainty())
                    .put("unit", point.unit().code());
        }
        return node;
    }
}
