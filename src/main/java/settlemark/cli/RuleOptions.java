package settlemark.cli;

import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import settlemark.job.SettleForm;
import settlemark.job.SettledBy;

/** The rule of a published test on the command line. */
final class RuleOptions {
    @Option(
            names = "--rule",
            paramLabel = "RULE",
            description = "A rule of a published test that is demanded as well: three-readings-3-degf,"
                    + " three-readings-5-degf, every-minute-half-degf, every-minute-1-degf, half-hour-2-degf or"
                    + " rates-2-percent.")
    String rule = "";

    @Option(names = "--rule-alone", description = "The rule is enough, without the statistical proof.")
    boolean alone;

    /** The rule asked; the proof where none is. */
    SettledBy settledBy(CommandSpec spec) {
        if (rule.isEmpty()) {
            if (alone) {
                throw SettingOptions.wrong(spec, "--rule-alone needs the rule: say --rule RULE");
            }
            return SettledBy.PROOF;
        }
        try {
            return SettleForm.settledBy(rule, alone);
        } catch (IllegalArgumentException e) {
            throw SettingOptions.wrong(spec, "--rule: " + e.getMessage());
        }
    }
}
