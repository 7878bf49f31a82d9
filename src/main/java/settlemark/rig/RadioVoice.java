package settlemark.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import settlemark.decode.Encoder;
import settlemark.measure.Channel;
import settlemark.measure.SampleStatus;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;

/**
 * The demo instruments as one Bluetooth device: what they measure, with their errors, in the messages of a profile whose
 * channels have the names and units of theirs. A message is said with each frame of the instrument that has its channels.
 */
public final class RadioVoice {
    /** The profile of all demo instruments in one device. */
    public static final String SET_PROFILE = "demo-set-ble";

    private final Profile profile;
    private final Encoder encoder;
    private final Mouth mouth;
    private final double[] values;

    /** Says a message; called on the thread that advances the rig. */
    @FunctionalInterface
    public interface Mouth {
        /** @param message index in the profile's messages, which is that of its input */
        void say(int message, byte[] bytes);
    }

    private RadioVoice(Profile profile, Mouth mouth) {
        this.profile = profile;
        this.encoder = new Encoder(profile);
        this.mouth = mouth;
        this.values = new double[profile.channels().size()];
    }

    /** The shipped Bluetooth profile of an instrument. */
    public static Profile profileOf(DemoInstrument instrument) {
        return ProfileLibrary.get(instrument.profileId() + "-ble");
    }

    /**
     * Lets a rig's instruments speak from now on.
     *
     * @throws IllegalArgumentException where no message of the profile has a channel of a demo instrument
     */
    public static void connect(DemoRig rig, Profile profile, Mouth mouth) {
        RadioVoice voice = new RadioVoice(profile, mouth);
        boolean any = false;
        for (DemoInstrument instrument : DemoInstrument.values()) {
            List<Integer> messages = voice.messagesOf(instrument);
            if (!messages.isEmpty()) {
                any = true;
                rig.listen(instrument, read -> voice.said(instrument, messages, read));
            }
        }
        if (!any) {
            throw new IllegalArgumentException("no channel of profile " + profile.id() + " is one of the demo's");
        }
    }

    /** Messages with a channel that has a place on the appliance; a battery belongs to whoever speaks first. */
    private List<Integer> messagesOf(DemoInstrument instrument) {
        List<Integer> messages = new ArrayList<>();
        for (int i = 0; i < profile.messages().size(); i++) {
            Optional<DemoInstrument> owner = owner(i);
            boolean orphan = owner.isEmpty() && instrument == firstOwner();
            if (orphan || owner.filter(o -> o == instrument).isPresent()) {
                messages.add(i);
            }
        }
        return messages;
    }

    private Optional<DemoInstrument> owner(int message) {
        for (int c = 0; c < values.length; c++) {
            if (profile.sources().get(c).message() == message) {
                for (DemoInstrument instrument : DemoInstrument.values()) {
                    if (instrument.roles().containsKey(profile.channels().get(c).name())) {
                        return Optional.of(instrument);
                    }
                }
            }
        }
        return Optional.empty();
    }

    private @Nullable DemoInstrument firstOwner() {
        for (int i = 0; i < profile.messages().size(); i++) {
            if (owner(i).isPresent()) {
                return owner(i).get();
            }
        }
        return null;
    }

    /** @param read by the channels of the instrument's own profile */
    private void said(DemoInstrument instrument, List<Integer> messages, double[] read) {
        List<Channel> own = instrument.profile().channels();
        for (int i = 0; i < own.size(); i++) {
            Channel from = own.get(i);
            double value = read[i];
            profile.channelIndex(from.name())
                    .ifPresent(c -> values[c] =
                            from.unit().to(profile.channels().get(c).unit()).apply(value));
        }
        for (int message : messages) {
            @Nullable SampleStatus[] statuses = new SampleStatus[values.length];
            for (int c = 0; c < values.length; c++) {
                statuses[c] = profile.sources().get(c).message() == message ? SampleStatus.OK : null;
            }
            mouth.say(message, encoder.encode(message, values, statuses));
        }
    }
}
