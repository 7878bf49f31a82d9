package settlemark.app;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import settlemark.cli.Program;
import settlemark.link.RadioBench;
import settlemark.profile.ProfileLibrary;

/** The program's window with a fake radio, as a person opens it. */
final class RadioDesk {
    private RadioDesk() {}

    /** Where its workspace lies. */
    static Path workspace(Path folder) {
        return folder.resolve("house.settlemark");
    }

    /** Opens it; the exit code comes when it is closed. */
    static CompletableFuture<Integer> open(RadioBench bench, Path folder, StringWriter err) {
        Program.Desk request = new Program.Desk(
                Optional.of(workspace(folder)),
                Optional.of(folder.resolve("records")),
                ProfileLibrary.ids().stream().map(ProfileLibrary::get).toList(),
                Optional.empty(),
                false,
                1280,
                720);
        PrintWriter quiet = new PrintWriter(err, true);
        return CompletableFuture.supplyAsync(() -> {
            try {
                return new Settlemark(new BenchRadio(bench)).desktop(request, quiet, quiet);
            } catch (Exception e) {
                throw new AssertionError(e);
            }
        });
    }
}
