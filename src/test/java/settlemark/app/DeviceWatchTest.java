package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import settlemark.link.RadioBench;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;
import settlemark.session.DeviceView;
import settlemark.session.LinkException;
import settlemark.session.LinkListener;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeHost;
import settlemark.session.ProbeLink;
import settlemark.session.Ticker;

/** Looking around for a screen, which must not wait. */
@Timeout(60)
final class DeviceWatchTest {
    @TempDir
    private Path folder = Path.of("");

    private DeviceWatch watch(ProbeHost... all) {
        Hosts hosts = new Hosts(all);
        List<Profile> profiles = List.of(ProfileLibrary.get("ble-environment"));
        return new DeviceWatch(hosts, new DeviceSearch(hosts, Optional.of(folder.resolve("none")), profiles));
    }

    @Test
    void wiredAndRadioDevicesAreFoundTogetherAndAgainByTheSameHosts() throws Exception {
        PluggedGauges plugged = new PluggedGauges();
        plugged.plugIn("/dev/ttyUSB0", "usb:1209:0001:A1", "1\n");
        try (RadioBench bench = new RadioBench()) {
            bench.probe("C0:FF:EE:00:00:01", "Sensor").advertises(RadioBench.ENVIRONMENT);
            try (DeviceWatch watch = watch(plugged, bench.host(Optional.empty()))) {
                assertThat(watch.devices().devices()).isEmpty();
                watch.look();
                RadioBench.await("looked", () -> !watch.isLooking());
                assertThat(watch.devices().devices())
                        .extracting(d -> d.probe().address().toString())
                        .containsExactly("serial:/dev/ttyUSB0", "ble:C0:FF:EE:00:00:01");
                DeviceView radio = watch.devices().devices().get(1);
                assertThat(radio.fitting()).extracting(Profile::id).containsExactly("ble-environment");
                assertThat(radio.health()).isEmpty();
                bench.probe("C0:FF:EE:00:00:02", "Second");
                watch.look();
                RadioBench.await("looked again", () -> !watch.isLooking());
                assertThat(watch.devices().devices()).hasSize(3);
                assertThat(folder.resolve("none"))
                        .as("a look makes no workspace")
                        .doesNotExist();
            }
        }
    }

    @Test
    void aLookThatGoesOnIsNotBegunTwiceAndOneThatFailsIsARemark() throws Exception {
        CountDownLatch go = new CountDownLatch(1);
        AtomicInteger looks = new AtomicInteger();
        try (DeviceWatch watch = watch(new Slow(go, looks))) {
            watch.look();
            RadioBench.await("begun", () -> looks.get() == 1);
            watch.look();
            assertThat(watch.isLooking()).isTrue();
            go.countDown();
            RadioBench.await("ended", () -> !watch.isLooking());
            assertThat(looks).hasValue(1);
            assertThat(watch.devices().remarks()).containsExactly("nothing to be seen here");
        }
    }

    private record Slow(CountDownLatch go, AtomicInteger looks) implements ProbeHost {
        @Override
        public String scheme() {
            return "ble";
        }

        @Override
        public List<FoundProbe> found() throws LinkException {
            looks.incrementAndGet();
            try {
                assertThat(go.await(20, TimeUnit.SECONDS)).isTrue();
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
            throw new LinkException("nothing to be seen here");
        }

        @Override
        public ProbeLink open(ProbeAddress address, Profile profile, Ticker ticker, LinkListener listener)
                throws LinkException {
            throw new LinkException("not opened by a look");
        }
    }
}
