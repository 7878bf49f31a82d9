package settlemark.ui;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import settlemark.job.JobPicture;
import settlemark.job.JobState;
import settlemark.job.PlanStep;
import settlemark.job.StepState;
import settlemark.job.Verdict;

/** What a job says in sentences, and which of them the window could not say in German. */
public final class GermanWords {
    private GermanWords() {}

    /** Every sentence of a job that can come to the screen. */
    public static Set<String> said(JobState job) {
        Set<String> said = new LinkedHashSet<>();
        said.add(job.plan().title());
        job.plan().fuels().forEach(f -> said.add(f.words()));
        job.plate().stages().forEach(s -> said.add(s.name()));
        job.steps().forEach(s -> step(s, said));
        said.addAll(JobPicture.of(job));
        job.notices().forEach(n -> said.addAll(List.of(n.words(), n.caution())));
        said.remove("");
        return said;
    }

    private static void step(StepState state, Set<String> said) {
        PlanStep step = state.step();
        said.addAll(List.of(step.title(), step.name(), step.instruction(), step.press(), step.caution()));
        said.addAll(step.ticks());
        said.addAll(state.remarks());
        state.marks().forEach(m -> said.add(m.words()));
        state.readings().forEach(r -> said.add(r.handReason()));
        state.clocking().runs().forEach(r -> said.add(r.why()));
        for (Verdict verdict : state.verdicts()) {
            said.add(verdict.subject());
            said.add(verdict.outcome().word());
            said.add(verdict.limit().source());
        }
    }

    /** Those that German has no words for, with the part that is missing. */
    public static List<String> unknown(Collection<String> sentences) {
        List<String> unknown = new ArrayList<>();
        for (String sentence : sentences) {
            if (!sentence.isEmpty()) {
                Translations.german().missing(sentence).forEach(part -> unknown.add(part + "  <  " + sentence));
            }
        }
        return unknown;
    }
}
