package settlemark.cli;

import java.io.PrintWriter;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import settlemark.job.SettleForm;
import settlemark.settle.SettleAdjustment;
import settlemark.settle.SettleChoices;
import settlemark.settle.SettleKind;
import settlemark.settle.SettleSettings;

/** {@code settlemark settings}: settled detection in a workspace. */
@Command(
        name = "settings",
        description = {
            "Shows and changes the settings of settled detection in a workspace, which sessions begun after that have. A"
                    + " plan's own settings go before them; sessions that are stored keep theirs.",
            "Exit codes: 0 done, 1 the workspace cannot be written, 2 wrong usage or settings that cannot work, 5 the"
                    + " workspace is damaged."
        },
        header = {
            "Examples:",
            "  settlemark settings",
            "  settlemark settings --set gas.drift=0.01 --set \"air.drift=0.25 Cel\"",
            "  settlemark settings --reset",
            ""
        },
        mixinStandardHelpOptions = true,
        sortOptions = false)
final class SettingsCommand implements Callable<Integer> {
    private final Program program;

    @Mixin
    SettingOptions settings = new SettingOptions();

    @Option(names = "--reset", description = "Back to the defaults, before anything is set.")
    boolean reset;

    @Mixin
    WorkspaceOption workspace = new WorkspaceOption();

    @Option(names = "--json", description = "Print the settings as one JSON object.")
    boolean json;

    @Spec
    @Nullable
    CommandSpec spec;

    SettingsCommand(Program program) {
        this.program = program;
    }

    @Override
    public Integer call() throws Exception {
        CommandSpec own = Commands.spec(spec);
        SettleChoices choices = settings.choices(own);
        PrintWriter out = own.commandLine().getOut();
        return program.stored()
                .settings(
                        new StoredDesk.SettleSettings(choices, reset, workspace.file()),
                        now -> out.print(json ? json(now) : words(now)),
                        own.commandLine().getErr());
    }

    private static String words(SettleChoices choices) {
        StringBuilder text = new StringBuilder(String.format(
                Locale.ROOT,
                "%-6s %-14s %-14s %-9s %-22s %-7s %s%n",
                "kind",
                "drift",
                "band",
                "horizon",
                "windows",
                "dwell",
                "set"));
        for (SettleKind kind : SettleKind.values()) {
            SettleSettings its = choices.settings(kind);
            String unit = SettleForm.unit(kind).symbol();
            text.append(String.format(
                    Locale.ROOT,
                    "%-6s %-14s %-14s %-9s %-22s %-7s %s%n",
                    SettleForm.word(kind),
                    CsvRows.number(its.driftLimit(), 6) + " " + unit,
                    "±" + CsvRows.number(its.band(), 6) + " " + unit,
                    CsvRows.number(its.horizonSeconds(), 3) + " s",
                    String.join(
                                    ",",
                                    its.windowSeconds().stream()
                                            .map(w -> CsvRows.number(w, 3))
                                            .toList()) + " s",
                    CsvRows.number(its.dwellSeconds(), 3) + " s",
                    set(choices.of(kind))));
        }
        return text.toString();
    }

    private static String set(SettleAdjustment its) {
        if (its.equals(SettleAdjustment.NONE)) {
            return "defaults";
        }
        return Double.isNaN(its.huntingSeconds())
                ? "here"
                : "here, hunting of " + CsvRows.number(its.huntingSeconds(), 3) + " s expected";
    }

    private static String json(SettleChoices choices) {
        tools.jackson.databind.node.ObjectNode root = JsonLine.object();
        SettleForm.write(choices, root);
        return JsonLine.text(root) + "\n";
    }
}
