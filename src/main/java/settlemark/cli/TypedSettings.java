package settlemark.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import settlemark.job.Act;
import settlemark.job.SettingsChange;
import settlemark.job.SettleForm;
import settlemark.session.SessionHeader;
import settlemark.session.SettleFit;
import settlemark.session.Snapshot;
import settlemark.settle.SettleChoices;
import settlemark.settle.SettleKind;
import settlemark.settle.SettleSettings;

/** What counts as settled in the course of a typed job: shown, and set otherwise from now on. */
final class TypedSettings {
    private final SessionHeader header;
    private final SettleChoices before;

    TypedSettings(Snapshot now) {
        header = now.header();
        List<SettingsChange> said = now.job().map(j -> j.settings()).orElse(List.of());
        before = said.isEmpty() ? header.settings() : said.get(said.size() - 1).to();
    }

    /** A line for each kind of channel that the job's probes measure, by the names that set it. */
    List<String> lines() {
        List<String> lines = new ArrayList<>();
        for (SettleKind kind : kinds()) {
            SettleSettings its = before.settings(kind);
            String unit = " " + SettleForm.unit(kind).symbol();
            double hunting = before.of(kind).huntingSeconds();
            lines.add(SettleForm.word(kind) + ": drift " + CsvRows.number(its.driftLimit(), 6) + unit + ", band \u00b1"
                    + CsvRows.number(its.band(), 6) + unit + ", horizon " + CsvRows.number(its.horizonSeconds(), 3)
                    + " s, windows "
                    + its.windowSeconds().stream()
                            .map(w -> CsvRows.number(w, 3))
                            .collect(Collectors.joining(","))
                    + " s, dwell " + CsvRows.number(its.dwellSeconds(), 3) + " s"
                    + (Double.isNaN(hunting) ? "" : ", hunting " + CsvRows.number(hunting, 3) + " s"));
        }
        return lines;
    }

    private List<SettleKind> kinds() {
        return header.probes().stream()
                .flatMap(p -> p.roles().values().stream())
                .filter(r -> !r.gasAnalysis())
                .map(SettleForm::kind)
                .distinct()
                .sorted()
                .toList();
    }

    /**
     * The act that sets what is typed from now on, such as {@code gas.drift=0.01 air.dwell=8}; empty where all of it is so
     * already.
     *
     * @throws IllegalArgumentException where it cannot be read, cannot work, or is of no channel of the job
     */
    Optional<Act.Settings> typed(String line) {
        SettleChoices typed = SettingText.read(SettingText.several(line));
        List<SettleKind> measured = kinds();
        for (SettleKind kind : typed.adjustments().keySet()) {
            if (!measured.contains(kind)) {
                throw new IllegalArgumentException("no probe of this job measures " + SettleForm.word(kind)
                        + "; it has "
                        + measured.stream().map(SettleForm::word).collect(Collectors.joining(", ")));
            }
        }
        SettleChoices chosen = typed.over(before);
        List<String> problems = SettleFit.problems(header.withSettings(chosen));
        if (!problems.isEmpty()) {
            throw new IllegalArgumentException(String.join("; ", problems));
        }
        return new SettingsChange(0, before, chosen, "").words().isEmpty()
                ? Optional.empty()
                : Optional.of(new Act.Settings(before, chosen));
    }
}
