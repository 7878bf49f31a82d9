package settlemark.app;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import settlemark.cli.Program;
import settlemark.measure.Role;
import settlemark.profile.Profile;
import settlemark.session.DeviceUse;
import settlemark.session.SessionStore;
import settlemark.session.StoreException;

/**
 * Where the channels of a log's probes are connected: as the person says, else as the device was used the last time. The
 * sessions of the workspace are the memory.
 */
final class RememberedRoles {
    private final Consumer<String> said;
    private final List<DeviceUse> uses;
    private final Set<Role> taken = EnumSet.noneOf(Role.class);

    /** @param said hears what was remembered, a sentence a probe */
    RememberedRoles(Program.Log request, SessionStore store, Consumer<String> said) throws StoreException {
        this.said = said;
        this.uses = request.rememberRoles() ? store.devices() : List.of();
        request.probes().forEach(p -> p.roles().forEach(r -> taken.add(r.role())));
    }

    /** @param identity of the probe's device, empty where nothing is known */
    Map<String, Role> of(Program.Probe probe, String identity) {
        if (!probe.roles().isEmpty()) {
            return probe.roles().stream().collect(Collectors.toMap(Program.RoleOf::channel, Program.RoleOf::role));
        }
        Map<String, Role> roles = new TreeMap<>();
        uses.stream()
                .filter(use -> use.isOf(identity, probe.address()))
                .findFirst()
                .ifPresent(use -> new TreeMap<>(use.setup().roles()).forEach((channel, role) -> {
                    if (fits(probe.profile(), channel, role) && taken.add(role)) {
                        roles.put(channel, role);
                    }
                }));
        if (!roles.isEmpty()) {
            said.accept(probe.name() + ": "
                    + roles.entrySet().stream()
                            .map(e -> e.getKey() + " is the " + e.getValue().word())
                            .collect(Collectors.joining(", "))
                    + ", as this device was used the last time; --role says otherwise, --no-roles takes none");
        }
        return roles;
    }

    private static boolean fits(Profile profile, String channel, Role role) {
        return profile.channelIndex(channel)
                .filter(i -> profile.channels().get(i).dimension() == role.dimension())
                .isPresent();
    }
}
