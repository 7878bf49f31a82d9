package settlemark.ui;

import java.awt.event.KeyEvent;
import java.io.File;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;
import settlemark.session.DeviceList;
import settlemark.session.DeviceView;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeHost.FoundProbe;
import settlemark.session.ProbeView.Health;
import settlemark.session.ProbeView.HealthClass;
import settlemark.session.Reception;

/** Takes pictures of the window before a job, done by hand: arguments are the folder and {@code light} or {@code dark}. */
public final class StartScreenshotMain {
    private StartScreenshotMain() {}

    public static void main(String[] args) throws Exception {
        File folder = new File(args[0]);
        FakeStart host = new FakeStart();
        host.finds(new DeviceList(List.of(gauge(), air(), second(), port()), List.of()));
        DesktopStart start = DesktopStart.show(
                new DesktopOptions(args[1].equals("dark"), Optional.empty(), 1280, 720), "Settlemark");
        start.choose(host);
        WindowHands hands = new WindowHands();
        hands.awaitSeen("1, Try the demo rig");
        hands.picture(new File(folder, "first-start-" + args[1] + "-1280.png"), 1280, 720);
        hands.click("2, Connect probes");
        plate(hands);
        hands.picture(new File(folder, "plate-" + args[1] + "-1280.png"), 1280, 720);
        hands.key(KeyEvent.VK_ENTER);
        hands.click("probe of the Inlet");
        hands.choose("Gauge A, P1");
        hands.click("probe of the Manifold");
        hands.choose("Gauge A, P2");
        hands.click("probe of the Supply");
        hands.choose("Air probes, Probe 1");
        hands.click("probe of the Return");
        hands.choose("Air probes, Probe 2");
        hands.awaitWords("Return: Air probes, Probe 2");
        hands.picture(new File(folder, "probes-" + args[1] + "-1280.png"), 1280, 720);
        start.close();
        System.exit(0);
    }

    private static void plate(WindowHands hands) {
        hands.fill("Place and job", "Quarry Rise 3, two stage furnace");
        hands.fill("Appliance", "two stage furnace");
        hands.fill("Manifold, low", "1.7");
        hands.fill("Allowed to either side, low", "0.2");
        hands.fill("Manifold, high", "3.5");
        hands.fill("Allowed to either side, high", "0.35");
        hands.fill("Inlet, least", "4.5");
        hands.fill("Inlet, most", "10.5");
        hands.fill("Air temperature rise, least", "30");
        hands.fill("Air temperature rise, most", "60");
    }

    private static DeviceView gauge() {
        return radio("C0:FF:EE:00:00:01", "Gauge A", "demo-gauge-ble", -52, 81, Optional.empty());
    }

    private static DeviceView air() {
        return radio(
                "C0:FF:EE:00:00:02",
                "Air probes",
                "demo-air-ble",
                -71,
                14,
                Optional.of(new Health(HealthClass.MAINTENANCE_REQUIRED, "its battery has 14 %: charge or change it")));
    }

    private static DeviceView second() {
        return radio(
                "C0:FF:EE:00:00:03",
                "Gauge B",
                "demo-gauge-ble",
                -93,
                66,
                Optional.of(new Health(HealthClass.OUT_OF_SPECIFICATION, "its signal is weak (-93 dBm)")));
    }

    private static DeviceView port() {
        return new DeviceView(
                new FoundProbe(new ProbeAddress(ProbeAddress.SERIAL, "/dev/ttyUSB1"), "Port ttyUSB1"),
                List.of(),
                Optional.empty(),
                DeviceView.Battery.UNKNOWN,
                Optional.empty());
    }

    private static DeviceView radio(
            String address, String name, String profile, int dbm, double battery, Optional<Health> health) {
        Profile fitting = ProfileLibrary.get(profile);
        Reception reception = new Reception(OptionalInt.of(dbm), 0.5, false, false, battery, Map.of(), Map.of());
        return new DeviceView(
                new FoundProbe(
                        new ProbeAddress(ProbeAddress.BLE, address),
                        name,
                        Optional.empty(),
                        address,
                        Optional.of(reception)),
                List.of(fitting),
                Optional.empty(),
                new DeviceView.Battery(battery, false),
                health);
    }
}
