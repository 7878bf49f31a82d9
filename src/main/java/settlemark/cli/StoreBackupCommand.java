package settlemark.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code settlemark store backup}: a whole copy, also while a program writes. */
@Command(
        name = "backup",
        headerHeading = "Examples:%n" + "  settlemark store backup --to backup.settlemark%n"
                + "  settlemark store backup w.settlemark --to /media/disk/w-friday.settlemark%n%n",
        header = "Copy a workspace whole, also while a program writes to it.",
        description = {
            "",
            "A copy made with a file manager lacks what is still in the log beside the workspace; this one does not. It"
                    + " is checked before it gets its name. The key that seals records is another file, which a backup"
                    + " leaves where it is.",
            "Exit codes: 0 done, 1 it cannot be read or written, 5 the workspace is damaged and was not copied."
        },
        synopsisHeading = "%nUsage: ",
        mixinStandardHelpOptions = true)
final class StoreBackupCommand implements Callable<Integer> {
    private final Program program;

    @Mixin
    NewFileOptions options = new NewFileOptions();

    @Spec
    @Nullable
    CommandSpec spec;

    StoreBackupCommand(Program program) {
        this.program = program;
    }

    @Override
    public Integer call() throws Exception {
        CommandSpec own = Commands.spec(spec);
        Path source = options.source(own, program);
        own.commandLine().getOut().print(StoreText.words(program.tools().backup(source, options.target)));
        return Program.DONE;
    }
}
