package settlemark.app;

import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import org.jspecify.annotations.Nullable;
import settlemark.cli.Program;
import settlemark.link.BlePeripheral;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;
import settlemark.rig.DemoInstrument;
import settlemark.rig.DemoRig;
import settlemark.rig.ProfileVoice;
import settlemark.rig.RadioVoice;
import settlemark.session.LinkException;

/** Something of the rig as a Bluetooth device on one adapter. */
final class RigRadio implements AutoCloseable {
    /** Both instruments in one device. */
    static final String SET = "set";

    private final Program.OnAir request;
    private final Profile profile;
    private final BlePeripheral peripheral;
    private final AtomicLong said = new AtomicLong();
    private @Nullable ProfileVoice voice;
    private String trouble = "";

    private RigRadio(Program.OnAir request, Profile profile, BlePeripheral peripheral) {
        this.request = request;
        this.profile = profile;
        this.peripheral = peripheral;
    }

    /** @throws LinkException with the remedy, where Bluetooth or the profile cannot be used */
    static RigRadio open(Program.OnAir request, DemoRig rig, Radio radio) throws LinkException {
        Profile profile = profile(request);
        ProfileVoice voice = null;
        try {
            if (request.profile().isPresent()) {
                voice = new ProfileVoice(profile, 0, rig.truth());
            }
        } catch (IllegalArgumentException e) {
            throw new LinkException("the rig cannot speak " + profile.id() + ": " + e.getMessage(), e);
        }
        String name = request.profile().isPresent() ? request.instrument() : "Demo " + request.instrument();
        RigRadio made =
                new RigRadio(request, profile, radio.serve(profile, name, request.adapter(), (uuid, bytes) -> {}));
        made.voice = voice;
        if (voice == null) {
            RadioVoice.connect(rig, profile, made::say);
        }
        return made;
    }

    private static Profile profile(Program.OnAir request) throws LinkException {
        if (request.profile().isPresent()) {
            return request.profile().get();
        }
        if (request.instrument().equals(SET)) {
            return ProfileLibrary.get(RadioVoice.SET_PROFILE);
        }
        Optional<DemoInstrument> instrument = DemoInstrument.ofKey(request.instrument());
        return RadioVoice.profileOf(instrument.orElseThrow(() -> new LinkException(
                "the rig has a gauge, an air instrument and both as a set, not \"" + request.instrument()
                        + "\"; say --ble ADAPTER for the set, or --profile " + request.instrument() + "=PROFILE")));
    }

    private void say(int message, byte[] bytes) {
        if (peripheral.send(message, bytes) && peripheral.isListenedTo(message)) {
            said.incrementAndGet();
        }
    }

    /**
     * Says what is due, where that is not left to the demo instruments.
     *
     * @return why it cannot be heard now, where that is new; else empty
     */
    String at(long nowNanos, DemoRig rig) {
        ProfileVoice own = voice;
        if (own != null) {
            own.byRadio(nowNanos, rig.truth()).forEach(this::say);
        }
        String now = peripheral.trouble();
        boolean fresh = !now.equals(trouble);
        trouble = now;
        return fresh ? now : "";
    }

    /** What it is for others, in a line. */
    String words() {
        return "serving " + request.instrument() + " by " + profile.id() + " at ble:" + peripheral.address();
    }

    String summary() {
        return "sent " + request.instrument() + " " + said.get() + " values to who listened";
    }

    @Override
    public void close() {
        peripheral.close();
    }
}
