package settlemark.app;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import settlemark.profile.Profile;
import settlemark.session.DeviceList;
import settlemark.session.DeviceUse;
import settlemark.session.LinkException;
import settlemark.session.ProbeHost;
import settlemark.session.ProbeHost.FoundProbe;
import settlemark.session.StoreException;
import settlemark.store.SqliteStore;

/** Looks around for devices. What cannot be looked for is a remark, never the end of the others. */
final class DeviceSearch {
    private final Hosts hosts;
    private final Optional<Path> workspace;
    private final List<Profile> profiles;

    /** @param workspace whose devices are remembered, empty for the person's own */
    DeviceSearch(Hosts hosts, Optional<Path> workspace, List<Profile> profiles) {
        this.hosts = hosts;
        this.workspace = workspace;
        this.profiles = profiles;
    }

    DeviceList look() {
        List<String> remarks = new ArrayList<>();
        List<FoundProbe> found = new ArrayList<>();
        for (ProbeHost host : hosts.all()) {
            try {
                found.addAll(host.found());
            } catch (LinkException e) {
                remarks.add(String.valueOf(e.getMessage()));
            }
        }
        return DeviceList.of(found, remembered(remarks), profiles, Instant.now(), remarks);
    }

    private List<DeviceList.Remembered> remembered(List<String> remarks) {
        Path file = Workspaces.file(workspace);
        List<DeviceList.Remembered> remembered = new ArrayList<>();
        if (Files.exists(file)) {
            try (SqliteStore store = Workspaces.reading(Optional.of(file))) {
                for (DeviceUse use : store.devices()) {
                    remembered.add(new DeviceList.Remembered(use, use.lastBatteryPercent(store)));
                }
            } catch (StoreException e) {
                remarks.add("what is remembered of the devices cannot be read: " + e.getMessage());
            }
        }
        return remembered;
    }
}
