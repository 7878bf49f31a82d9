package settlemark.record;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.Collectors;
import settlemark.job.CorrectionPoint;
import settlemark.job.InstrumentCard;
import settlemark.job.InstrumentUse;
import settlemark.job.JobState;
import settlemark.measure.Role;
import settlemark.session.JobRecord;
import settlemark.settle.ChannelReading;
import settlemark.settle.FromInstrument;

/** What is known of the instruments by their serial numbers, and what their corrections did, in sentences. */
final class InstrumentWords {
    private static final int MOST_POINTS = 12;
    private static final int DECIMALS = 3;

    private final JobState job;
    private final LocalDate day;

    /** @param day of the session, where it was */
    InstrumentWords(JobState job, LocalDate day) {
        this.job = job;
        this.day = day;
    }

    /** Of those that measured at one of a probe's places. */
    List<InstrumentUse> of(JobRecord.Instrument probe) {
        return job.instruments().stream()
                .filter(u -> u.places().keySet().stream().anyMatch(probe.roles()::contains))
                .toList();
    }

    /** One sentence after the other; empty where nothing is known. */
    String words(JobRecord.Instrument probe) {
        StringBuilder words = new StringBuilder();
        List<InstrumentUse> uses = of(probe);
        if (uses.isEmpty() && !probe.serial().isEmpty()) {
            words.append(" It says that its serial number is ")
                    .append(probe.serial())
                    .append('.');
        }
        uses.forEach(u -> words.append(words(u)));
        if (!Double.isNaN(probe.batteryPercent())) {
            words.append(" Battery ")
                    .append(Figures.plain(Math.rint(probe.batteryPercent())))
                    .append(" %.");
        }
        return words.toString();
    }

    private String words(InstrumentUse use) {
        InstrumentCard card = use.card();
        StringBuilder words = new StringBuilder(" Serial number ")
                .append(card.serial())
                .append(card.name().isEmpty() ? "" : " (" + card.name() + ")")
                .append(use.saidByProbe() ? ", as it says itself" : ", as the person said")
                .append(card.calibrated().map(d -> "; calibrated " + d).orElse("; no calibration is known"))
                .append(card.due().map(d -> ", due " + d).orElse(""))
                .append(card.overdue(day) ? ": OVERDUE on the day of this record" : "")
                .append('.');
        if (!card.points().isEmpty()) {
            words.append(" Corrected by straight lines between its points (true/indicated \u00B1U, k = 2): ")
                    .append(points(card))
                    .append('.');
            String applied = applied(card.serial());
            words.append(applied.isEmpty() ? " No reading was corrected." : " " + applied);
        }
        return words.toString();
    }

    private static String points(InstrumentCard card) {
        List<CorrectionPoint> points = card.points();
        String listed = points.stream()
                .limit(MOST_POINTS)
                .map(p -> (p.channel().isEmpty() ? "" : p.channel() + " ") + Figures.plain(p.trueValue()) + "/"
                        + Figures.plain(p.indicated()) + " \u00B1" + Figures.plain(p.expandedUncertainty()) + " "
                        + p.unit().symbol())
                .collect(Collectors.joining(", "));
        int more = points.size() - MOST_POINTS;
        return more > 0 ? listed + " and " + more + " more, in the session" : listed;
    }

    private String applied(String serial) {
        TreeMap<Role, List<ChannelReading>> parts = new TreeMap<>();
        job.steps().stream()
                .flatMap(s -> s.readings().stream())
                .flatMap(r -> r.channels().stream())
                .filter(c -> c.instrument().serial().equals(serial))
                .filter(c ->
                        c.instrument().corrects() || !c.instrument().remark().isEmpty())
                .forEach(c ->
                        parts.computeIfAbsent(c.role(), r -> new ArrayList<>()).add(c));
        List<String> said = new ArrayList<>();
        parts.forEach((role, all) -> said.add(role.word() + " " + applied(all)));
        return said.isEmpty() ? "" : "Applied: " + String.join("; ", said) + ".";
    }

    private static String applied(List<ChannelReading> parts) {
        List<FromInstrument> done = parts.stream()
                .map(ChannelReading::instrument)
                .filter(FromInstrument::corrects)
                .toList();
        int not = parts.size() - done.size();
        String outside = not == 0 ? "" : count(not) + " outside the points and not corrected";
        if (done.isEmpty()) {
            return outside;
        }
        double least =
                done.stream().mapToDouble(FromInstrument::correction).min().orElseThrow();
        double most =
                done.stream().mapToDouble(FromInstrument::correction).max().orElseThrow();
        double u = done.stream()
                .mapToDouble(FromInstrument::expandedUncertainty)
                .max()
                .orElseThrow();
        String range = signed(least).equals(signed(most)) ? signed(most) : signed(least) + " to " + signed(most);
        return count(done.size()) + " by " + range + " " + parts.get(0).unit().symbol() + ", with U up to "
                + Figures.value(u, DECIMALS) + (outside.isEmpty() ? "" : ", " + outside);
    }

    private static String count(int readings) {
        return readings + (readings == 1 ? " reading" : " readings");
    }

    private static String signed(double value) {
        String text = Figures.value(value, DECIMALS);
        return value > 0 && !text.startsWith("\u2212") ? "+" + text : text;
    }

    /** Each that was overdue, once. */
    List<String> overdue() {
        return job.instruments().stream()
                .filter(u -> u.card().overdue(day))
                .map(u -> "Instrument " + u.card().serial() + " ("
                        + u.places().keySet().stream().sorted().map(Role::word).collect(Collectors.joining(", "))
                        + "): its calibration was due on " + u.card().due().orElseThrow())
                .distinct()
                .toList();
    }
}
