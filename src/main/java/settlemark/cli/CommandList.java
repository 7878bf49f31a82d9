package settlemark.cli;

import picocli.CommandLine;
import picocli.CommandLine.Help;
import picocli.CommandLine.Help.Column;
import picocli.CommandLine.Help.Column.Overflow;
import picocli.CommandLine.Help.TextTable;
import picocli.CommandLine.Model.UsageMessageSpec;

/** The list of commands in the help, each with what it does: a command's own help begins with its examples instead. */
final class CommandList {
    private static final int INDENT = 2;

    private CommandList() {}

    /** Puts the list into the help of a command and of all below it. */
    static void in(CommandLine line) {
        line.getHelpSectionMap().put(UsageMessageSpec.SECTION_KEY_COMMAND_LIST, CommandList::text);
        line.getSubcommands().values().forEach(CommandList::in);
    }

    private static String text(Help help) {
        int names = INDENT
                + help.subcommands().keySet().stream()
                        .mapToInt(String::length)
                        .max()
                        .orElse(0);
        int width = help.commandSpec().usageMessage().width();
        TextTable table = TextTable.forColumns(
                help.colorScheme(),
                new Column(names, INDENT, Overflow.SPAN),
                new Column(width - names, INDENT, Overflow.WRAP));
        help.subcommands()
                .forEach((name, command) -> table.addRowValues(
                        help.colorScheme().commandText(name),
                        help.colorScheme().text(what(command.commandSpec().usageMessage()))));
        return table.toString();
    }

    private static String what(UsageMessageSpec usage) {
        String header = usage.header().length == 0 ? "" : usage.header()[0];
        boolean examples = header.isEmpty() || header.startsWith("Example");
        return examples && usage.description().length > 0 ? usage.description()[0] : header;
    }
}
