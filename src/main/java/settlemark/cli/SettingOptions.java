package settlemark.cli;

import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import settlemark.job.SettleForm;
import settlemark.settle.SettleChoices;

/** Settings of settled detection on the command line. */
final class SettingOptions {
    @Option(
            names = "--set",
            paramLabel = "KIND.NAME=VALUE",
            description =
                    "A setting of gas, air or stack: drift or band (in inches of water or degrees Fahrenheit, or with"
                            + " a UCUM code after a space: \"gas.drift=2.5 Pa\"), horizon, windows (20,40,60), dwell or hunting (the"
                            + " slowest period of hunting expected) in seconds. May be said again.")
    List<String> set = new ArrayList<>();

    /** What is set; what cannot work for any channel is refused. */
    SettleChoices choices(CommandSpec spec) {
        SettleChoices choices;
        try {
            choices = SettingText.read(set);
        } catch (IllegalArgumentException e) {
            throw wrong(spec, "--set " + e.getMessage());
        }
        List<String> problems = SettleForm.problems(choices);
        if (!problems.isEmpty()) {
            throw wrong(spec, String.join(System.lineSeparator(), problems));
        }
        return choices;
    }

    static ParameterException wrong(CommandSpec spec, String message) {
        return new ParameterException(spec.commandLine(), message);
    }
}
