package settlemark.cli;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.Optional;
import settlemark.profile.Profile;
import settlemark.session.Correction;
import settlemark.session.ReadingChange;
import settlemark.session.RereadReport;
import settlemark.settle.ChannelReading;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** What came of a rereading, for a person and for a program. */
final class RereadText {
    private static final int DIGEST_SHOWN = 12;
    private static final int DIGITS_OF_UNCERTAINTY = 2;

    private static final double NANOS = 1e9;

    private RereadText() {}

    static String words(RereadReport report) {
        StringBuilder text = new StringBuilder();
        report.kept()
                .ifPresent(r ->
                        line(text, "session " + r.session() + ", rereading " + r.number() + ", made " + r.madeAt()));
        report.probes().forEach(p -> probe(text, p));
        report.lost().forEach(l -> line(text, l.probe() + ": lost " + l.what() + ": " + l.why()));
        if (report.kept().isEmpty()) {
            line(text, "not kept: nothing was stored, and what was decoded on the day stays as it is");
            return text.toString();
        }
        line(text, changed(report.changes().size()));
        report.changes().forEach(c -> change(text, c));
        return text.toString();
    }

    private static void line(StringBuilder text, String words) {
        text.append(words).append('\n');
    }

    private static String changed(int changes) {
        return switch (changes) {
            case 0 -> "no stage reading changed";
            case 1 -> "1 stage reading changed:";
            default -> changes + " stage readings changed:";
        };
    }

    private static void probe(StringBuilder text, RereadReport.Probe probe) {
        String profiles = probe.sameProfile()
                ? "the same profile, " + named(probe.after())
                : named(probe.before()) + " -> " + named(probe.after());
        line(text, probe.name() + ": " + profiles);
        line(text, "  samples  " + fromTo(probe.samplesBefore(), probe.samplesAfter()));
        line(text, "  refused  " + fromTo(probe.rejectedBefore(), probe.rejectedAfter()));
        if (probe.samplesAfter() == 0) {
            String why = probe.firstRejected().isEmpty() ? "" : "; the first was refused: " + probe.firstRejected();
            line(
                    text,
                    probe.bytes() == 0
                            ? "  the session has no bytes of this probe"
                            : "  not one sample from " + probe.bytes() + " bytes: " + named(probe.after())
                                    + " does not fit this device" + why);
        }
    }

    private static String named(Profile profile) {
        return profile.id() + " " + profile.digest().substring(0, DIGEST_SHOWN);
    }

    private static String fromTo(long before, long after) {
        return before == after ? before + ", the same number" : before + " -> " + after;
    }

    private static void change(StringBuilder text, ReadingChange change) {
        ChannelReading any = change.before().or(change::after).orElseThrow();
        line(
                text,
                String.format(
                        Locale.ROOT,
                        "  %s (%s), %s: %s -> %s %s%s",
                        change.step(),
                        change.purpose(),
                        change.role().word(),
                        figure(change.before()),
                        figure(change.after()),
                        any.unit().symbol(),
                        moved(change)));
    }

    /** Where the window is another one: the figures may then look the same. */
    private static String moved(ReadingChange change) {
        long before = change.before().map(ChannelReading::toNanos).orElse(0L);
        long after = change.after().map(ChannelReading::toNanos).orElse(0L);
        boolean both = change.before().isPresent() && change.after().isPresent();
        return both && before != after
                ? String.format(Locale.ROOT, ", read %+.1f s from then", (after - before) / NANOS)
                : "";
    }

    /** The value and its expanded uncertainty, as far as that says anything. */
    private static String figure(Optional<ChannelReading> reading) {
        return reading.map(r -> number(r.value(), r.expandedUncertainty()) + " \u00b1"
                        + number(r.expandedUncertainty(), r.expandedUncertainty()))
                .orElse("none");
    }

    private static String number(double value, double uncertainty) {
        if (!Double.isFinite(value)) {
            return "no value";
        }
        if (!(uncertainty > 0) || !Double.isFinite(uncertainty)) {
            return new BigDecimal(value, MathContext.DECIMAL32).toPlainString();
        }
        int decimals = Math.max(0, DIGITS_OF_UNCERTAINTY - 1 - (int) Math.floor(Math.log10(uncertainty)));
        return new BigDecimal(value).setScale(decimals, RoundingMode.HALF_EVEN).toPlainString();
    }

    static String json(RereadReport report) {
        ObjectNode root = JsonLine.object();
        root.put("session", report.session());
        report.kept()
                .ifPresentOrElse(
                        r -> root.put("rereading", r.number())
                                .put("made_at", r.madeAt().toString()),
                        () -> root.putNull("rereading").putNull("made_at"));
        ArrayNode probes = root.putArray("probes");
        report.probes().forEach(p -> probe(probes.addObject(), p));
        ArrayNode lost = root.putArray("lost");
        for (Correction.Lost what : report.lost()) {
            lost.addObject().put("probe", what.probe()).put("what", what.what()).put("why", what.why());
        }
        ArrayNode changes = root.putArray("changes");
        report.changes().forEach(c -> change(changes.addObject(), c));
        return JsonLine.text(root) + "\n";
    }

    private static void probe(ObjectNode node, RereadReport.Probe probe) {
        node.put("probe", probe.name()).put("same_profile", probe.sameProfile()).put("fits", probe.fits());
        profile(node.putObject("profile_before"), probe.before());
        profile(node.putObject("profile_after"), probe.after());
        node.put("bytes", probe.bytes())
                .put("samples_before", probe.samplesBefore())
                .put("samples_after", probe.samplesAfter())
                .put("rejected_before", probe.rejectedBefore())
                .put("rejected_after", probe.rejectedAfter())
                .put("first_rejected", probe.firstRejected());
    }

    private static void profile(ObjectNode node, Profile profile) {
        node.put("id", profile.id()).put("digest", profile.digest());
    }

    private static void change(ObjectNode node, ReadingChange change) {
        ChannelReading any = change.before().or(change::after).orElseThrow();
        node.put("step", change.step())
                .put("purpose", change.purpose())
                .put("role", change.role().word())
                .put("unit_ucum", any.unit().code());
        reading(node, "before", change.before());
        reading(node, "after", change.after());
    }

    private static void reading(ObjectNode node, String field, Optional<ChannelReading> reading) {
        if (reading.isEmpty()) {
            node.putNull(field);
            return;
        }
        ObjectNode part = node.putObject(field);
        JsonLine.number(part, "value", reading.get().value());
        JsonLine.number(part, "expanded_uncertainty", reading.get().expandedUncertainty());
        part.put("from_s", reading.get().fromNanos() / NANOS)
                .put("to_s", reading.get().toNanos() / NANOS);
        part.put("settled", reading.get().settled());
    }
}
