package settlemark.app;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import settlemark.cli.Program;
import settlemark.link.BleHost;
import settlemark.link.BlePeripheral;
import settlemark.measure.Role;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;
import settlemark.profile.Source;
import settlemark.rig.DemoInstrument;
import settlemark.rig.DemoRig;
import settlemark.rig.RadioVoice;
import settlemark.session.LinkException;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeLink;
import settlemark.session.ProbeSetup;
import settlemark.session.SessionEvent;
import settlemark.session.SessionHeader;
import settlemark.session.Ticker;

/**
 * The rig as a Bluetooth device on one adapter, read through another: each value goes by the radio. The rig waits until
 * what it has said has come in, so that a job takes as long as the radio needs, and no longer.
 */
final class RadioWiring implements DemoWiring {
    /** A frame of each instrument. */
    private static final long STEP_NANOS = 100_000_000;

    private static final long PATIENCE_SECONDS = 5;

    private final Profile profile = ProfileLibrary.get(RadioVoice.SET_PROFILE);
    private final BlePeripheral peripheral;
    private final BleHost host;
    private final String reading;
    private final BlockingQueue<SessionEvent> queue = new LinkedBlockingQueue<>();
    private @Nullable Consumer<SessionEvent> taken;
    private @Nullable ProbeLink link;
    private long sent;
    private long received;
    private long lost;

    private RadioWiring(BlePeripheral peripheral, BleHost host, String reading) {
        this.peripheral = peripheral;
        this.host = host;
        this.reading = reading;
    }

    /** @throws LinkException with the remedy, where the adapters cannot be used */
    static RadioWiring start(Program.Air air, DemoRig rig, Radio radio) throws LinkException {
        BleHost host = radio.host(air.reading());
        try {
            String reading = air.reading().isPresent() ? air.reading().get() : another(host, air.serving());
            Profile profile = ProfileLibrary.get(RadioVoice.SET_PROFILE);
            BlePeripheral peripheral = radio.serve(profile, "Demo set", air.serving(), (uuid, bytes) -> {});
            RadioWiring made = new RadioWiring(peripheral, host, reading);
            RadioVoice.connect(rig, profile, made::say);
            return made;
        } catch (LinkException e) {
            host.close();
            throw e;
        }
    }

    private static String another(BleHost host, String serving) throws LinkException {
        List<String> adapters = host.adapters();
        return adapters.stream()
                .filter(a -> !a.equals(serving))
                .findFirst()
                .orElseThrow(() -> new LinkException("an adapter does not hear itself, and beside " + serving
                        + " there is none: plug a second one in, or let another computer read \"settlemark rig --ble "
                        + serving + "\""));
    }

    private void say(int message, byte[] bytes) {
        boolean listened = peripheral.isListenedTo(message);
        if (peripheral.send(message, bytes) && listened) {
            sent++;
        }
    }

    @Override
    public List<ProbeSetup> probes() {
        Map<String, Role> roles = new HashMap<>();
        for (DemoInstrument instrument : DemoInstrument.values()) {
            roles.putAll(instrument.roles());
        }
        ProbeAddress address = new ProbeAddress(ProbeAddress.BLE, peripheral.address() + "@" + reading);
        return List.of(new ProbeSetup("set", address, profile, roles, peripheral.address()));
    }

    @Override
    public void open(SessionHeader header, Ticker ticker, Consumer<SessionEvent> consumer) throws LinkException {
        ProbeSetup probe = header.probes().get(0);
        taken = consumer;
        link = host.open(probe.address(), probe.profile(), ticker, WireWiring.listener(0, queue::add));
        drain();
    }

    @Override
    public long stepNanos() {
        return STEP_NANOS;
    }

    @Override
    public void settle() throws LinkException {
        drain();
        try {
            if (!peripheral.isListenedTo(0)) {
                // While the link is away, the furnace goes on in its own time.
                take(queue.poll(STEP_NANOS, TimeUnit.NANOSECONDS));
                return;
            }
            while (received < sent) {
                @Nullable SessionEvent event = queue.poll(PATIENCE_SECONDS, TimeUnit.SECONDS);
                if (event == null) {
                    lost += sent - received;
                    received = sent;
                    return;
                }
                take(event);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new LinkException("the demo was broken off", e);
        }
    }

    private void drain() {
        for (SessionEvent event = queue.poll(); event != null; event = queue.poll()) {
            take(event);
        }
    }

    private void take(@Nullable SessionEvent event) {
        if (event == null) {
            return;
        }
        if (event instanceof SessionEvent.Bytes bytes
                && isNotified(bytes.chunk().input())) {
            received++;
        }
        Consumer<SessionEvent> consumer = taken;
        if (consumer != null) {
            consumer.accept(event);
        }
    }

    private boolean isNotified(int input) {
        int message = profile.inputs().get(input).message();
        return profile.messages().get(message).source() instanceof Source.Characteristic c
                && c.by() == Source.By.NOTIFY;
    }

    /** What went by the radio, in a line. */
    String summary() {
        return sent + " values went by the radio, " + lost + " were lost";
    }

    @Override
    public void close() {
        if (link != null) {
            link.close();
        }
        host.close();
        peripheral.close();
    }
}
