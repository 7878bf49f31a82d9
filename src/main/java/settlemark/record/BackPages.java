package settlemark.record;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import settlemark.job.Progress;
import settlemark.job.SettingsChange;
import settlemark.job.StepKind;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.session.JobRecord;
import settlemark.session.SessionHeader;
import settlemark.session.SettleFit;
import settlemark.settle.SettleKind;
import settlemark.settle.SettleSettings;

/** What follows the first page: the windows as charts, the instruments, the rule, the bounds of it all, and a signature. */
final class BackPages {
    private static final int MOST_EVENTS = 12;
    private static final int DIGEST_SHOWN = 12;
    private static final double SIGNATURE = 36;
    /** Room below the last line that a page's foot does not need. */
    private static final double AFTER_LAST = 11;

    private final JobRecord record;
    private final Times times;
    private final Flow flow;
    private final String fingerprint;

    /** @param fingerprint of the key that seals the record, empty where there is none */
    BackPages(JobRecord record, Flow flow, String fingerprint) {
        this.fingerprint = fingerprint;
        this.record = record;
        this.times = new Times(record.header());
        this.flow = flow;
    }

    void write() throws IOException {
        if (flow.pages() == 1) {
            flow.page();
        } else {
            flow.down(6);
        }
        new WindowCharts(record, flow).write();
        flow.need(60);
        flow.rule();
        flow.labelled("Instruments", instruments(), Face.SMALL, Sheet.THEME.ink());
        flow.labelled("How it was decided", decided(), Face.SMALL, Sheet.THEME.ink());
        flow.labelled("Besides", happened(), Face.SMALL, Sheet.THEME.ink());
        new PhotoPages(record, flow).write();
        flow.need(end());
        flow.labelled("Not covered", notCovered(), Face.SMALL, Sheet.THEME.ink());
        signature();
    }

    /** What stands at the end stays together: a page with a line of the seal alone is a page that gets lost. */
    private double end() {
        double after = afterSignature();
        return flow.height(notCovered(), Face.SMALL) + SIGNATURE + (after > 0 ? after - AFTER_LAST : 0);
    }

    private double afterSignature() {
        double seal = fingerprint.isEmpty() ? 0 : flow.height(sealed(), Face.SMALL);
        double reviews = reviews().isEmpty() ? 0 : flow.height(reviews(), Face.SMALL);
        return seal + reviews;
    }

    private List<String> instruments() {
        InstrumentWords known = new InstrumentWords(record.job(), times.date());
        return record.instruments().stream()
                .map(i -> instrument(i) + known.words(i))
                .toList();
    }

    private static String instrument(JobRecord.Instrument i) {
        String roles = i.roles().stream().map(Role::word).collect(Collectors.joining(", "));
        String digest = i.profileDigest()
                .substring(0, Math.min(DIGEST_SHOWN, i.profileDigest().length()));
        String accuracy = i.accuracy().isEmpty() ? "accuracy not stated" : String.join("; ", i.accuracy());
        return i.name() + ", " + i.description() + " (profile " + i.profileId() + ", SHA-256 " + digest + "\u2026), at "
                + (roles.isEmpty() ? "no place" : roles) + ". " + accuracy + ". " + Figures.whole(i.samples())
                + " samples, " + Figures.whole(i.rejectedFrames()) + " frames refused, link lost " + i.losses()
                + (i.losses() == 1 ? " time." : " times.");
    }

    /** The rule in plain words, with its numbers in the job's units. */
    private List<String> decided() {
        List<String> lines = new ArrayList<>();
        List<Role> roles = record.job().steps().stream()
                .flatMap(s -> s.readings().stream())
                .flatMap(r -> r.channels().stream())
                .map(c -> c.role())
                .filter(this::isStreamed)
                .distinct()
                .sorted(Comparator.naturalOrder())
                .toList();
        SessionHeader header = record.header();
        List<String> said = new ArrayList<>();
        for (Role role : roles) {
            SettleSettings settings = SettleFit.settings(role, header.unit(role), header.settings());
            String name = settledName(role, settings.kind());
            if (!said.contains(name)) {
                said.add(name);
                lines.add(settledRule(name, settings, header.unit(role)));
            }
        }
        record.job().settings().forEach(change -> lines.add(changed(change)));
        lines.add("Verdict: simple acceptance (JCGM 106:2012, 8.2): the value itself decides. Close means that the"
                + " value with its U reaches over the limit. U is expanded with k = 2 (JCGM 100:2008, 6.2) from"
                + " settling, instrument, resolution and zero, " + corrected()
                + "and rounded up. Limits: " + sources() + ".");
        return lines;
    }

    /** Deviates from what the lines before say. */
    private String changed(SettingsChange change) {
        // The name is often said at the end only, and it is one person's job.
        String by = change.by().isEmpty() ? record.job().person() : change.by();
        return "Changed at " + times.clock(change.timeNanos()) + (by.isEmpty() ? "" : " by " + by) + ": "
                + String.join("; ", change.words()) + ".";
    }

    private String corrected() {
        boolean any = record.job().steps().stream()
                .flatMap(s -> s.readings().stream())
                .flatMap(r -> r.channels().stream())
                .anyMatch(c -> c.instrument().corrects());
        return any ? "and where a correction was added from its U, " : "";
    }

    /** What was typed from an instrument has no rule of ours. */
    private boolean isStreamed(Role role) {
        return record.header().probes().stream().anyMatch(p -> p.roles().containsValue(role));
    }

    private static String settledName(Role role, SettleKind kind) {
        if (role.gasAnalysis()) {
            return "An analyser's " + Figures.subject(role.word());
        }
        return kind == SettleKind.GAS
                ? "A pressure"
                : kind == SettleKind.AIR ? "An air temperature" : "A stack temperature";
    }

    private static String settledRule(String name, SettleSettings settings, Unit unit) {
        String symbol = " " + (unit.equals(Unit.CELSIUS) ? "K" : unit.symbol());
        return name + " is settled when, with " + Figures.plain(100 * settings.confidence())
                + " % confidence, it could still move by no more than " + figure(settings.driftLimit()) + symbol
                + " within the next " + Figures.plain(settings.horizonSeconds()) + " s"
                + (settings.learnTimeConstant() ? " (less where its approach is proved to end sooner)" : "")
                + ", its swings stay within \u00B1" + figure(settings.band()) + symbol + ", and that has held for "
                + Figures.plain(settings.dwellSeconds()) + " s.";
    }

    /** Three digits: the limit was set in another unit, and its further digits mean nothing. */
    private static String figure(double value) {
        return Figures.plain(new BigDecimal(value).round(new MathContext(3)).doubleValue());
    }

    private String sources() {
        Map<String, Set<String>> subjects = new LinkedHashMap<>();
        record.job().steps().stream()
                .flatMap(s -> s.verdicts().stream())
                .forEach(v -> subjects.computeIfAbsent(v.limit().source(), x -> new LinkedHashSet<>())
                        .add(Figures.subject(v.subject())));
        return subjects.isEmpty()
                ? "none were applied"
                : subjects.entrySet().stream()
                        .map(e -> e.getKey() + " for " + String.join(", ", e.getValue()))
                        .collect(Collectors.joining("; "));
    }

    private List<String> happened() {
        List<String> lines = new ArrayList<>();
        record.events().stream()
                .limit(MOST_EVENTS)
                .forEach(e -> lines.add(times.clock(e.timeNanos()) + " " + e.words()));
        int more = record.events().size() - MOST_EVENTS;
        if (more > 0) {
            lines.add("and " + more + " more, in the session");
        }
        return lines;
    }

    /** What people might take to be in a record, and this one has not. */
    private List<String> absent() {
        List<String> absent = new ArrayList<>();
        if (!taken(StepKind.COMBUSTION)) {
            absent.add("no combustion analysis");
        }
        if (!held("tightness")) {
            absent.add("no test of tightness");
        }
        if (!held("let-by")) {
            absent.add("no let-by test of the valve");
        }
        if (!taken(StepKind.CLOCK)) {
            absent.add("no clocking of the meter");
        }
        if (!safetiesTried()) {
            absent.add("no check of safety devices");
        }
        absent.add("no check of venting");
        return absent;
    }

    private boolean safetiesTried() {
        return record.job().steps().stream()
                .anyMatch(s -> s.step().key().equals("safeties") && !s.superseded() && s.progress() == Progress.TAKEN);
    }

    /** Whether a trapped pressure was watched from one reading to another for that; other plans may call it otherwise. */
    private boolean held(String key) {
        return record.job().steps().stream()
                .anyMatch(s -> s.step().kind() == StepKind.HOLD
                        && s.step().key().contains(key)
                        && !s.superseded()
                        && s.progress() == Progress.TAKEN
                        && !s.verdicts().isEmpty());
    }

    private boolean taken(StepKind kind) {
        return record.job().steps().stream()
                .anyMatch(s -> s.step().kind() == kind && !s.superseded() && s.progress() == Progress.TAKEN);
    }

    private List<String> notCovered() {
        List<String> lines = new ArrayList<>();
        if (record.header().simulated()) {
            lines.add("SIMULATED: the appliance and the instruments are simulated; nothing here is about a real one.");
        }
        lines.add("This record says what was measured. It authorises nothing: the rating plate, the maker's"
                + " instructions, the local code and the licensed or registered person decide. It holds "
                + String.join(", ", absent()) + ".");
        if (!Printable.whole(record)) {
            lines.add(
                    Printable.MISSING
                            + " on a page stands for a character that its typeface does not have; the workspace keeps the text as it was typed.");
        }
        return lines;
    }

    private List<String> sealed() {
        return List.of(
                "Sealed with the key " + fingerprint + ". \u201Csettlemark verify\u201D names what was changed since."
                        + " A seal proves that this key's holder sealed exactly this; not who that is, nor that the clock or"
                        + " the gauge was right.");
    }

    private void signature() throws IOException {
        flow.need(SIGNATURE);
        flow.down(14);
        flow.structure().in("P", this::signatureLines);
        // A little more than a line where the page has room for it.
        flow.down(flow.room() >= 24 + afterSignature() ? 24 : 17);
        if (!fingerprint.isEmpty()) {
            flow.labelled("Seal", sealed(), Face.SMALL, Sheet.THEME.ink2());
        }
        flow.labelled("Reviews", reviews(), Face.SMALL, Sheet.THEME.ink());
    }

    private List<String> reviews() {
        return record.beside().reviews().stream()
                .map(r -> (r.accepted() ? "Accepted" : "RETURNED") + " by " + r.person() + ", "
                        + times.dayAndMinute(r.madeAt()) + ", signed with the key " + r.fingerprint()
                        + (r.holds() ? "" : "; THE SIGNATURE DOES NOT HOLD")
                        + (r.comment().isBlank() ? "" : ": " + r.comment())
                        + (r.comment().isBlank() && r.under().isEmpty() ? "." : again(r)))
                .toList();
    }

    private static String again(JobRecord.Reviewed review) {
        if (review.under().isEmpty()) {
            return "";
        }
        String changes = review.changes().stream()
                .map(c -> c.step() + " " + Figures.subject(c.figure()) + " " + c.from() + " became " + c.to())
                .collect(Collectors.joining("; "));
        return "; judged again under " + String.join(", ", review.under()) + ": "
                + (changes.isEmpty() ? "no verdict is another." : changes + ".");
    }

    private void signatureLines() {
        Sheet sheet = flow.sheet();
        double half = (Flow.WIDTH - 20) / 2;
        String person = record.job().person();
        double line = flow.y();
        if (!person.isBlank()) {
            sheet.text(Face.NAME.cut(person, half - 4), Flow.LEFT + 2, line - 3, Face.NAME);
        }
        sheet.line(Flow.LEFT, line, Flow.LEFT + half, line, Sheet.THEME.rule(), 0.8);
        sheet.line(Flow.RIGHT - half, line, Flow.RIGHT, line, Sheet.THEME.rule(), 0.8);
        sheet.text("Readings by", Flow.LEFT, line + 9, Face.SMALL, Sheet.THEME.ink2());
        sheet.text("Signature and date", Flow.RIGHT - half, line + 9, Face.SMALL, Sheet.THEME.ink2());
    }
}
