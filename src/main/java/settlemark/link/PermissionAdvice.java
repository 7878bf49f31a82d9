package settlemark.link;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import settlemark.link.Accounts.Group;

/**
 * Why a device node may not be opened, and what to do.
 *
 * @param node the device
 * @param groupNumber the group that owns it
 * @param mode its permission bits
 */
record PermissionAdvice(Path node, long groupNumber, int mode) {
    private static final int GROUP_READ_WRITE = 0060;

    static PermissionAdvice of(Path node) throws IOException {
        return new PermissionAdvice(node, number(node, "unix:gid"), (int) number(node, "unix:mode"));
    }

    private static long number(Path node, String attribute) throws IOException {
        return Files.getAttribute(node, attribute) instanceof Number number ? number.longValue() : 0;
    }

    String words(Accounts accounts) {
        Group group = accounts.groups().get(groupNumber);
        String name = group == null ? "number " + groupNumber : group.name();
        String denied = "permission denied for " + node + ": ";
        if ((mode & GROUP_READ_WRITE) != GROUP_READ_WRITE) {
            return denied + "only its owner may use it. Ask for a udev rule that gives it to a group, then plug it in"
                    + " again";
        }
        if (accounts.sessionGroups().contains(groupNumber)) {
            return denied + "this session is in group " + name
                    + ", so a sandbox, container or security policy stands in between. Start the program outside it";
        }
        if (group != null && group.members().contains(accounts.user())) {
            return denied + accounts.user() + " is in group " + name
                    + ", but this session is older than that. Log out and in again";
        }
        return denied + "you are not in group " + name + ". Run: sudo usermod -a -G "
                + (group == null ? groupNumber : name) + " " + accounts.user() + " ; then log out and in again";
    }
}
