package settlemark.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import settlemark.session.StoreException;

final class MountTableTest {
    private static final MountTable TABLE = MountTable.parse("""
            rootfs / rootfs rw 0 0
            /dev/sda1 / ext4 rw,relatime 0 0
            server:/home /home nfs4 rw,vers=4.2 0 0
            /dev/sdb1 /home/me/local\\040disk btrfs rw,noexec 0 0
            tmpfs /tmp tmpfs rw,nosuid,noexec 0 0
            me@there:/ /mnt/there fuse.sshfs rw 0 0
            /dev/sdc1 /mnt/stacked vfat rw 0 0
            //there/share /mnt/stacked cifs rw 0 0
            short line
            none swap swap rw 0 0
            /dev/sdd1 /mnt/a\\04 ext3 rw 0 0
            /dev/sde1 /mnt/b\\0899 xfs rw 0 0
            """);

    @ParameterizedTest
    @CsvSource(textBlock = """
            /var/x,                       ext4,       false
            /home/me/w,                   nfs4,       true
            /homes/w,                     ext4,       false
            /home/me/local disk/w,        btrfs,      false
            /mnt/there/w,                 fuse.sshfs, true
            /mnt/stacked/w,               cifs,       true
            /mnt/a\\04/w,                  ext3,       false
            /mnt/b\\0899/w,                xfs,        false
            """)
    void theDeepestAndLatestMountCounts(String path, String type, boolean remote) {
        MountTable.Mount mount = TABLE.of(Path.of(path)).orElseThrow();
        assertThat(mount.type()).isEqualTo(type);
        assertThat(mount.remote()).isEqualTo(remote);
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
            nfs, true
            nfs4, true
            cifs, true
            smb3, true
            SMBFS, true
            9p, true
            virtiofs, true
            vboxsf, true
            ceph, true
            fuse, true
            fuse.sshfs, true
            fuse.rclone, true
            fuse.anything-unknown, true
            fuse.ntfs-3g, false
            fuse.gocryptfs, false
            fuseblk, false
            ext4, false
            xfs, false
            btrfs, false
            zfs, false
            overlay, false
            tmpfs, false
            vfat, false
            exfat, false
            NTFS, false
            apfs, false
            """)
    void networkFileSystemsAreRemote(String type, boolean remote) {
        assertThat(new MountTable.Mount(Path.of("/"), type, java.util.Set.of()).remote())
                .isEqualTo(remote);
    }

    @Test
    void aWorkspaceOnANetworkFolderIsRefusedWithTheRemedyAndNotMade(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("w.settlemark");
        MountTable mounts = MountTable.parse("server:/x " + folder.toRealPath() + " nfs rw 0 0\n");
        assertThatThrownBy(() -> SqliteStore.open(WorkspacePlace.chosen(file), Fixtures::profile, mounts))
                .isInstanceOfSatisfying(
                        StoreException.class, e -> assertThat(e.kind()).isEqualTo(StoreException.Cause.FAULT))
                .hasMessageContaining(file.toString())
                .hasMessageContaining("nfs at " + folder.toRealPath())
                .hasMessageContaining("--workspace");
        assertThat(folder).isEmptyDirectory();
        Fixtures.open(file).close();
        assertThatThrownBy(() -> SqliteStore.openForReading(file, Fixtures::profile, mounts))
                .isInstanceOf(StoreException.class)
                .hasMessageContaining("network");
    }

    @Test
    void thisMachineKnowsItsRoot() {
        assertThat(MountTable.ofThisMachine().of(Path.of("/").toAbsolutePath())).isPresent();
        assertThat(new MountTable(java.util.List.of()).of(Path.of("\\\\server\\share")))
                .map(MountTable.Mount::remote)
                .isEqualTo(Optional.of(true));
        assertThat(new MountTable(java.util.List.of()).of(Path.of("").toAbsolutePath()))
                .isPresent();
        assertThat(Files.exists(Path.of("/nowhere/at/all"))).isFalse();
        assertThat(new MountTable(java.util.List.of()).of(Path.of("/nowhere/at/all")))
                .isEmpty();
    }
}
