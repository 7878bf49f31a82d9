package settlemark.cli;

import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import settlemark.job.SettledBy;
import settlemark.settle.SettleChoices;

/** {@code settlemark whatif}: a stored session with other settings of settled detection. */
@Command(
        name = "whatif",
        description = {
            "Runs a stored session again with other settings of settled detection and says, reading by reading, what they"
                    + " change. Nothing that is stored is touched.",
            "What a person did stays as on the day: a reading that would not have settled before they went on is shown as it"
                    + " stood then, and as not settled.",
            "Exit codes: 0 done, 2 wrong usage or settings that cannot work, 5 the workspace is damaged."
        },
        header = {
            "Examples:",
            "  settlemark whatif latest --set gas.drift=0.01",
            "  settlemark whatif 7 --set air.horizon=240 --set air.dwell=30 --json",
            "  settlemark whatif latest --rule three-readings-3-degf",
            ""
        },
        synopsisHeading = "Usage: ",
        customSynopsis = "settlemark whatif SESSION [--set KIND.NAME=VALUE]... [--rule RULE] [OPTIONS]",
        mixinStandardHelpOptions = true,
        sortOptions = false)
final class WhatIfCommand implements Callable<Integer> {
    private final Program program;

    @Parameters(paramLabel = "SESSION", description = "Number or key of a session, or \"latest\".")
    String session = "";

    @Mixin
    SettingOptions settings = new SettingOptions();

    @Mixin
    RuleOptions rules = new RuleOptions();

    @Mixin
    KeyOptions keyOptions = new KeyOptions();

    @Mixin
    WorkspaceOption workspace = new WorkspaceOption();

    @Option(names = "--json", description = "Print the report as one JSON object.")
    boolean json;

    @Spec
    @Nullable
    CommandSpec spec;

    WhatIfCommand(Program program) {
        this.program = program;
    }

    @Override
    public Integer call() throws Exception {
        CommandSpec own = Commands.spec(spec);
        SettleChoices choices = settings.choices(own);
        SettledBy by = rules.settledBy(own);
        if (choices.isNone() && by.equals(SettledBy.PROOF)) {
            throw SettingOptions.wrong(own, "nothing is set: say what if, with --set KIND.NAME=VALUE or --rule RULE");
        }
        return program.stored()
                .whatIf(
                        new StoredDesk.WhatIf(
                                session,
                                choices,
                                by.rule().isPresent() ? Optional.of(by) : Optional.empty(),
                                workspace.file(),
                                keyOptions.keys(own)),
                        report -> own.commandLine()
                                .getOut()
                                .print(json ? WhatIfText.json(report) : WhatIfText.words(report)),
                        own.commandLine().getErr());
    }
}
