package settlemark.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.sqlite.NativeLibraryNotFoundException;

final class NativeLibraryTest {
    private static final MountTable FREE =
            new MountTable(List.of(new MountTable.Mount(Path.of("/"), "ext4", Set.of("rw"))));
    private static final MountTable FORBIDDING =
            new MountTable(List.of(new MountTable.Mount(Path.of("/"), "ext4", Set.of("rw", "noexec"))));

    @Test
    void aLibraryThatCannotBeLoadedNamesTheFolderAndTheRemedy() {
        String folder = System.getProperty("java.io.tmpdir");
        SQLException failure = new SQLException("opening", new UnsatisfiedLinkError("x.so: not permitted"));
        assertThat(NativeLibrary.refusal(failure, FORBIDDING).orElseThrow())
                .contains("temp folder forbids execution: " + folder + " (mounted noexec)")
                .contains("-Dorg.sqlite.tmpdir=");
        assertThat(NativeLibrary.refusal(failure, FREE).orElseThrow())
                .contains("temp folder forbids execution: " + folder)
                .contains("not permitted");
        assertThat(NativeLibrary.refusal(new SQLException(new NativeLibraryNotFoundException("none")), FREE))
                .isPresent();
    }

    @Test
    void otherFailuresAreNotItsBusiness() {
        assertThat(NativeLibrary.refusal(new SQLException("disk I/O error"), FORBIDDING))
                .isEmpty();
    }
}
