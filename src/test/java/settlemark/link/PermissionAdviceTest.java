package settlemark.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class PermissionAdviceTest {
    private static final Path NODE = Path.of("/dev/ttyUSB0");
    private static final List<String> GROUP_FILE =
            List.of("root:x:0:", "dialout:x:20:kim", "# a comment", "odd:x:notanumber:anna", "plugdev:x:46:anna,kim");

    @Test
    void whoIsNotInTheGroupIsToldTheCommand() {
        assertThat(advice(20, 0660).words(session("anna", "1000 46")))
                .isEqualTo("permission denied for /dev/ttyUSB0: you are not in group dialout. Run: sudo usermod -a -G"
                        + " dialout anna ; then log out and in again");
    }

    @Test
    void whoJoinedTheGroupAfterTheLoginIsToldToLogInAgain() {
        assertThat(advice(20, 0660).words(session("kim", "1000")))
                .contains("kim is in group dialout")
                .contains("session is older")
                .doesNotContain("usermod");
    }

    @Test
    void whereTheGroupMayNotEitherMembershipIsNotOffered() {
        assertThat(advice(0, 0600).words(session("anna", "1000")))
                .contains("only its owner")
                .contains("udev")
                .doesNotContain("usermod");
    }

    @Test
    void whoIsInTheGroupAndIsStillDeniedIsToldOfPolicies() {
        assertThat(advice(20, 0660).words(session("kim", "1000 20"))).contains("sandbox");
    }

    @Test
    void aGroupWithoutANameIsNamedByNumber() {
        assertThat(advice(977, 0660).words(session("anna", "1000")))
                .contains("group number 977")
                .contains("-G 977 anna");
    }

    @Test
    void theGroupsOfThisSessionAreThoseOfItsProcessStatus() {
        assertThat(Accounts.sessionGroups(
                        List.of("Name:\tjava", "Uid:\t1000\t1000", "Gid:\t1000\t1001\t1000\t1000", "Groups:\t20 46 ")))
                .isEqualTo(Set.of(1000L, 1001L, 20L, 46L));
        assertThat(Accounts.ofThisProcess().sessionGroups()).isNotEmpty();
    }

    @Test
    void aNodesGroupAndModeAreReadFromIt(@TempDir Path folder) throws IOException {
        Path node = Files.createFile(folder.resolve("node"));
        Files.setPosixFilePermissions(node, PosixFilePermissions.fromString("rw-------"));
        assertThat(PermissionAdvice.of(node).mode() & 0777).isEqualTo(0600);
        assertThat(PermissionAdvice.of(node).groupNumber())
                .isEqualTo(((Number) Files.getAttribute(node, "unix:gid")).longValue());
    }

    private static PermissionAdvice advice(long group, int mode) {
        return new PermissionAdvice(NODE, group, mode);
    }

    private static Accounts session(String user, String groups) {
        return new Accounts(user, Accounts.sessionGroups(List.of("Groups:\t" + groups)), Accounts.groups(GROUP_FILE));
    }
}
