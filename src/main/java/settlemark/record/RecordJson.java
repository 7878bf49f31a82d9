package settlemark.record;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import settlemark.calc.Result;
import settlemark.job.Act;
import settlemark.job.Clocking;
import settlemark.job.JobState;
import settlemark.job.Limit;
import settlemark.job.RatingPlate;
import settlemark.job.SafetyNotice;
import settlemark.job.StagePlate;
import settlemark.job.StepKind;
import settlemark.job.StepState;
import settlemark.job.Verdict;
import settlemark.measure.Quantity;
import settlemark.session.JobRecord;
import settlemark.session.JobRecord.Instrument;
import settlemark.settle.ChannelReading;
import settlemark.settle.StageReading;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * The record for machines, as JSON by {@code record.schema.json}: units as UCUM codes, uncertainties at k = 2, times in ISO
 * 8601. A number that there is not, such as an open limit, is null.
 */
final class RecordJson {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();
    private static final int FORM = 1;

    private final JobRecord record;
    private final JobState job;
    private final Times times;
    private final Wording wording;

    RecordJson(JobRecord record) {
        this.record = record;
        this.job = record.job();
        this.times = new Times(record.header());
        this.wording = new Wording(job, times);
    }

    static ObjectNode object() {
        return MAPPER.createObjectNode();
    }

    String text() {
        ObjectNode root = MAPPER.createObjectNode();
        root.put("form", FORM)
                .put("origin", Cells.origin(record.header()))
                .put("program", record.header().version())
                .put("session", record.header().key())
                .put("title", record.header().title())
                .put("started", times.iso(0))
                .put("zone", record.header().zone().getId())
                .put("person", job.person())
                .put("verdict", wording.headline())
                .put("complete", missing().isEmpty());
        root.set("missing", missing());
        record.again().ifPresent(a -> root.set("decoded_again", again(a)));
        root.set(
                "plan",
                MAPPER.createObjectNode()
                        .put("id", job.plan().key())
                        .put("title", job.plan().title()));
        root.set("plate", plate(job.plate()));
        ArrayNode steps = root.putArray("steps");
        job.steps().forEach(s -> steps.add(step(s)));
        ArrayNode instruments = root.putArray("instruments");
        InstrumentFields known = new InstrumentFields(job, times);
        record.instruments().forEach(i -> instruments.add(known.add(instrument(i), i)));
        ArrayNode notes = root.putArray("notes");
        job.notes()
                .forEach(n -> notes.addObject()
                        .put("time", times.iso(n.timeNanos()))
                        .put("step", n.step())
                        .put("text", n.text()));
        ArrayNode notices = root.putArray("safety_notices");
        for (SafetyNotice notice : job.notices()) {
            ObjectNode one = notices.addObject()
                    .put("time", times.iso(notice.sinceNanos()))
                    .put("words", notice.words())
                    .put("caution", notice.caution());
            time(one, "seen", notice.seenNanos());
            time(one, "over", notice.curedNanos());
        }
        if (!job.visits().isEmpty()) {
            visits(root.putArray("visits"), job.visits());
        }
        if (!job.settings().isEmpty()) {
            ArrayNode changes = root.putArray("settings_changed");
            job.settings()
                    .forEach(c -> c.words()
                            .forEach(w -> changes.addObject()
                                    .put("time", times.iso(c.timeNanos()))
                                    .put("person", c.by().isEmpty() ? job.person() : c.by())
                                    .put("change", w)));
        }
        ArrayNode events = root.putArray("events");
        record.events()
                .forEach(e ->
                        events.addObject().put("time", times.iso(e.timeNanos())).put("words", e.words()));
        root.set("papers", papers(record.beside()));
        return SafeText.escaped(MAPPER.writerWithDefaultPrettyPrinter().writeValueAsString(root)) + "\n";
    }

    /** What lies beside the session: files by their digests, which the seal covers. */
    private static ObjectNode papers(JobRecord.Beside beside) {
        ObjectNode node = MAPPER.createObjectNode();
        ArrayNode notes = node.putArray("notes");
        beside.notes()
                .forEach(n -> notes.addObject()
                        .put("written", n.writtenAt().toString())
                        .put("text", n.text()));
        ArrayNode files = node.putArray("files");
        beside.files()
                .forEach(f -> files.addObject()
                        .put("name", f.file().name())
                        .put("media_type", f.file().mediaType())
                        .put("added", f.file().addedAt().toString())
                        .put("bytes", f.file().bytes())
                        .put("sha256", f.file().digest()));
        ArrayNode reviews = node.putArray("reviews");
        beside.reviews().forEach(r -> reviews.add(review(r)));
        return node;
    }

    private static ObjectNode review(JobRecord.Reviewed review) {
        ObjectNode node = MAPPER.createObjectNode()
                .put("accepted", review.accepted())
                .put("person", review.person())
                .put("comment", review.comment())
                .put("made", review.madeAt().toString())
                .put("key", review.fingerprint())
                .put("signature_holds", review.holds());
        if (!review.under().isEmpty()) {
            ObjectNode again = node.putObject("judged_again");
            ArrayNode under = again.putArray("under");
            review.under().forEach(under::add);
            ArrayNode changes = again.putArray("changes");
            review.changes()
                    .forEach(c -> changes.addObject()
                            .put("step", c.step())
                            .put("figure", c.figure())
                            .put("from", c.from())
                            .put("to", c.to()));
        }
        return node;
    }

    private static ObjectNode again(JobRecord.Again again) {
        ObjectNode node = MAPPER.createObjectNode()
                .put("number", again.number())
                .put("made", again.madeAt().toString());
        ArrayNode instead = node.putArray("instead");
        for (JobRecord.Instead one : again.instead()) {
            instead.addObject()
                    .put("probe", one.probe())
                    .put("profile", one.profileId())
                    .put("profile_sha256", one.digest())
                    .put("former_profile_sha256", one.formerDigest());
        }
        return node;
    }

    private ArrayNode missing() {
        ArrayNode missing = MAPPER.createArrayNode();
        job.missing().stream().filter(s -> s.step().kind() != StepKind.RECORD).forEach(s -> missing.add(s.key()));
        return missing;
    }

    private ObjectNode plate(RatingPlate plate) {
        ObjectNode node = MAPPER.createObjectNode()
                .put("appliance", plate.appliance())
                .put("fuel", plate.fuel().words());
        ArrayNode stages = node.putArray("stages");
        for (StagePlate stage : plate.stages()) {
            ObjectNode one = stages.addObject().put("key", stage.key()).put("name", stage.name());
            one.set("manifold", limit(stage.manifoldLimit()));
            number(one, "input_btu_per_hour", stage.inputBtuPerHour());
        }
        node.set("inlet", limit(plate.inlet()));
        node.set("rise", limit(plate.rise()));
        if (!plate.statics().isOpen()) {
            node.set("statics", limit(plate.statics()));
        }
        if (!plate.control().isOpen()) {
            node.set("control", limit(plate.control()));
        }
        if (plate.site().known()) {
            ObjectNode site = node.putObject("altitude")
                    .put("feet", plate.site().altitudeFeet())
                    .put("derating", word(plate.site().derating().name()))
                    .put("share_left", plate.site().share());
            site.put("words", plate.site().words());
        }
        return node;
    }

    private ObjectNode step(StepState step) {
        ObjectNode node = MAPPER.createObjectNode()
                .put("key", step.key())
                .put("kind", word(step.step().kind().name()))
                .put("stage", step.step().stage())
                .put("title", step.step().title())
                .put("progress", word(step.progress().name()))
                .put("superseded", step.superseded())
                .put("skip_reason", step.skipReason())
                .put("caution", step.step().caution());
        if (step.again()) {
            node.put("corrects", step.corrects());
        }
        time(node, "opened", step.openedNanos());
        time(node, "done", step.doneNanos());
        ArrayNode readings = node.putArray("readings");
        step.readings().forEach(r -> readings.add(reading(r)));
        ArrayNode verdicts = node.putArray("verdicts");
        step.verdicts().forEach(v -> verdicts.add(verdict(v)));
        ArrayNode remarks = node.putArray("remarks");
        step.remarks().forEach(remarks::add);
        ArrayNode ticks = node.putArray("ticks");
        step.step().ticks().forEach(t -> ticked(ticks.addObject().put("item", t), t, step.ticked()));
        if (!step.clocking().runs().isEmpty()) {
            node.set("clocking", clocking(step.clocking()));
        }
        return node;
    }

    private void ticked(ObjectNode node, String item, Map<String, Long> ticked) {
        Long at = ticked.get(item);
        time(node, "time", at == null ? -1 : at);
    }

    private ObjectNode reading(StageReading reading) {
        ObjectNode node = MAPPER.createObjectNode()
                .put("purpose", reading.purpose())
                .put("time", times.iso(reading.timeNanos()))
                .put("by_hand", reading.byHand())
                .put("hand_reason", reading.handReason());
        ArrayNode channels = node.putArray("channels");
        for (ChannelReading channel : reading.channels()) {
            ObjectNode one = channels.addObject().put("role", channel.role().word());
            number(one, "value", channel.value());
            number(one, "expanded_uncertainty", channel.expandedUncertainty());
            number(one, "zero_taken_off", channel.zeroOffset());
            one.put("unit", channel.unit().code())
                    .put("settled", channel.settled())
                    .put("reason", channel.reason())
                    .put("from", times.iso(channel.fromNanos()))
                    .put("to", times.iso(channel.toNanos()));
            probe(one, channel);
            InstrumentFields.share(one, channel.instrument());
        }
        return node;
    }

    /** Which probe gave it, and by which profile; what was typed has neither. */
    private void probe(ObjectNode node, ChannelReading channel) {
        record.instruments().stream()
                .filter(i ->
                        i.roles().contains(channel.role()) && !channel.reason().startsWith("typed"))
                .findFirst()
                .ifPresent(i -> node.put("probe", i.name()).put("profile_sha256", i.profileDigest()));
    }

    private static void visits(ArrayNode visits, List<Act.Former> former) {
        for (Act.Former visit : former) {
            ArrayNode left = visits.addObject().put("date", visit.when()).putArray("left");
            visit.left()
                    .forEach(f -> left.addObject()
                            .put("stage", f.stage())
                            .put("role", f.role().word())
                            .put("value", f.value())
                            .put("expanded_uncertainty", f.expandedUncertainty())
                            .put("unit", f.unit().code()));
        }
    }

    private ObjectNode verdict(Verdict verdict) {
        ObjectNode node = MAPPER.createObjectNode().put("subject", verdict.subject());
        number(node, "value", verdict.value());
        number(node, "expanded_uncertainty", verdict.expandedUncertainty());
        node.set("limit", limit(verdict.limit()));
        return node.put("outcome", verdict.outcome().word())
                .put("accepted", verdict.outcome().accepted());
    }

    private ObjectNode limit(Limit limit) {
        ObjectNode node = MAPPER.createObjectNode();
        number(node, "least", limit.lower());
        number(node, "most", limit.upper());
        return node.put("unit", limit.unit().code()).put("source", limit.source());
    }

    private ObjectNode clocking(Clocking clocking) {
        ObjectNode node = MAPPER.createObjectNode()
                .put("dial_cubic_feet", clocking.dialCubicFeet())
                .put("btu_per_cubic_foot", clocking.heat().btuPerCubicFoot())
                .put("heat_source", clocking.heat().source());
        ArrayNode runs = node.putArray("runs");
        for (Clocking.Run run : clocking.runs()) {
            ObjectNode one = runs.addObject()
                    .put("turns", run.turns())
                    .put("seconds", run.seconds())
                    .put("progress", word(run.progress().name()))
                    .put("why", run.why());
            input(one, clocking.input(run).map(Result::quantity).orElse(null));
        }
        input(node, clocking.input().map(Result::quantity).orElse(null));
        return node;
    }

    private static void input(ObjectNode node, @org.jspecify.annotations.Nullable Quantity input) {
        number(node, "input_btu_per_hour", input == null ? Double.NaN : input.value());
        number(node, "input_expanded_uncertainty", input == null ? Double.NaN : input.expandedUncertainty());
    }

    private static ObjectNode instrument(Instrument instrument) {
        ObjectNode node = MAPPER.createObjectNode()
                .put("name", instrument.name())
                .put("description", instrument.description())
                .put("profile", instrument.profileId())
                .put("profile_sha256", instrument.profileDigest())
                .put("samples", instrument.samples())
                .put("rejected_frames", instrument.rejectedFrames())
                .put("losses", instrument.losses());
        ArrayNode roles = node.putArray("roles");
        instrument.roles().forEach(r -> roles.add(r.word()));
        ArrayNode accuracy = node.putArray("accuracy");
        instrument.accuracy().forEach(accuracy::add);
        return node;
    }

    private void time(ObjectNode node, String key, long nanos) {
        if (nanos < 0) {
            node.putNull(key);
        } else {
            node.put(key, times.iso(nanos));
        }
    }

    private static void number(ObjectNode node, String key, double value) {
        if (Double.isFinite(value)) {
            node.put(key, value);
        } else {
            node.putNull(key);
        }
    }

    private static String word(String constant) {
        return constant.toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
