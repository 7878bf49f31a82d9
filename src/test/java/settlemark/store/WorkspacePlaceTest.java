package settlemark.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class WorkspacePlaceTest {
    /** Linux: XDG Base Directory Specification 0.8. The others by their vendors' custom. */
    @ParameterizedTest
    @CsvSource(textBlock = """
            Linux,       XDG_DATA_HOME, /data/me, /data/me/settlemark
            Linux,       XDG_DATA_HOME, relative, /home/me/.local/share/settlemark
            Linux,       XDG_DATA_HOME, '',       /home/me/.local/share/settlemark
            Linux,       OTHER,         x,        /home/me/.local/share/settlemark
            FreeBSD,     OTHER,         x,        /home/me/.local/share/settlemark
            Mac OS X,    XDG_DATA_HOME, /data/me, /home/me/Library/Application Support/Settlemark
            Windows 11,  LOCALAPPDATA,  /local,   /local/Settlemark
            Windows 10,  OTHER,         x,        /home/me/AppData/Local/Settlemark
            Windows 10,  LOCALAPPDATA,  '',       /home/me/AppData/Local/Settlemark
            """)
    void theDefaultFollowsThePlatform(String os, String variable, String value, String folder) {
        Map<String, String> environment = Map.of(variable, value);
        Path home = Path.of("/home/me");
        assertThat(WorkspacePlace.ofPerson(os, environment, home))
                .isEqualTo(new WorkspacePlace(Path.of(folder, "workspace.settlemark"), true));
        assertThat(WorkspacePlace.ofDemo(os, environment, home))
                .isEqualTo(new WorkspacePlace(Path.of(folder, "demo.settlemark"), true));
    }

    @Test
    void aChosenFilesFolderIsNotMade() {
        assertThat(WorkspacePlace.chosen(Path.of("x")).makeFolder()).isFalse();
    }
}
