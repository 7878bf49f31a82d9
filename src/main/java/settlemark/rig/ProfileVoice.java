package settlemark.rig;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import settlemark.decode.Encoder;
import settlemark.exchange.Responder;
import settlemark.measure.Channel;
import settlemark.measure.Dimension;
import settlemark.measure.SampleStatus;
import settlemark.measure.Unit;
import settlemark.profile.Example;
import settlemark.profile.Message;
import settlemark.profile.Profile;
import settlemark.profile.Source;

/**
 * A device of any profile on the simulated furnace: it sends what the profile says that it sends by itself, and answers
 * what it may be asked. Its readings are the truth without errors of an instrument: pressures those of manifold and inlet,
 * temperatures those of supply and return, by the channels' names where they say so, else in this order; shares and
 * anything else stand still.
 *
 * <p>For one thread at a time.
 */
public final class ProfileVoice {
    private static final double DEFAULT_PERIOD_SECONDS = 1;
    private static final double SHARE_PERCENT = 45;
    private static final double BATTERY_PERCENT = 87;

    private final Profile profile;
    private final Encoder encoder;
    private final Responder responder;
    private final long[] nextNanos;
    private RigTruth truth;

    /**
     * Prepares to speak.
     *
     * @param unit address on a Modbus line, 0 for the profile's own
     * @param truth before the first {@link #at}
     * @throws IllegalArgumentException where the profile's frames cannot be written, with the remedy
     */
    public ProfileVoice(Profile profile, int unit, RigTruth truth) {
        this.profile = profile;
        this.encoder = new Encoder(profile);
        this.truth = truth;
        this.responder = new Responder(profile, unit, this::frame);
        this.nextNanos = new long[profile.messages().size()];
    }

    /** What the device says by itself at this moment, may be nothing. */
    public byte[] at(long nowNanos, RigTruth now) {
        truth = now;
        byte[] said = new byte[0];
        for (int i = 0; i < nextNanos.length; i++) {
            if (profile.messages().get(i).source() instanceof Source.Unasked && nowNanos >= nextNanos[i]) {
                byte[] frame = frame(i);
                byte[] all = Arrays.copyOf(said, said.length + frame.length);
                System.arraycopy(frame, 0, all, said.length, frame.length);
                said = all;
                nextNanos[i] = Math.max(nextNanos[i], nowNanos - periodNanos(i)) + periodNanos(i);
            }
        }
        return said;
    }

    /**
     * What the device holds ready or says by radio at this moment.
     *
     * @return bytes by message, may be none
     */
    public Map<Integer, byte[]> byRadio(long nowNanos, RigTruth now) {
        truth = now;
        Map<Integer, byte[]> said = new TreeMap<>();
        for (int i = 0; i < nextNanos.length; i++) {
            Source source = profile.messages().get(i).source();
            boolean radio = source instanceof Source.Characteristic
                    || source instanceof Source.ServiceData
                    || source instanceof Source.CompanyData;
            if (radio && nowNanos >= nextNanos[i]) {
                said.put(i, frame(i));
                nextNanos[i] = Math.max(nextNanos[i], nowNanos - periodNanos(i)) + periodNanos(i);
            }
        }
        return said;
    }

    /** Takes what a master asks; gives the answers, may be nothing. */
    public byte[] asked(byte[] bytes, int from, int to) {
        return responder.received(bytes, from, to);
    }

    private byte[] frame(int message) {
        double[] values = new double[profile.sources().size()];
        @Nullable SampleStatus[] statuses = new SampleStatus[values.length];
        int pressures = 0;
        int temperatures = 0;
        for (int i = 0; i < values.length; i++) {
            Channel channel = profile.sources().get(i).channel();
            boolean pressure = channel.dimension() == Dimension.PRESSURE;
            boolean temperature = channel.dimension() == Dimension.TEMPERATURE;
            values[i] = value(channel, pressure ? pressures++ : temperature ? temperatures++ : 0);
            statuses[i] = isSaid(message, i) ? SampleStatus.OK : null;
        }
        return encoder.encode(message, values, statuses);
    }

    /** Where an example shows a frame of the message, only its channels are said: not every tag need stand in each. */
    private boolean isSaid(int message, int channel) {
        if (profile.sources().get(channel).message() != message) {
            return false;
        }
        Optional<Example> shown = profile.examples().stream()
                .filter(e -> e.isGood() && e.message() == message)
                .findFirst();
        String name = profile.sources().get(channel).channel().name();
        return shown.isEmpty() || shown.get().gives().containsKey(name);
    }

    private double value(Channel channel, int rank) {
        String name = (channel.name() + " " + channel.label()).toLowerCase(Locale.ROOT);
        return switch (channel.dimension()) {
            case PRESSURE -> {
                boolean inlet = name.contains("inlet") || rank == 1 && !name.contains("manifold");
                double inches = inlet ? truth.inletAtGaugeInH2o() : truth.manifoldAtGaugeInH2o();
                yield Unit.INCH_OF_WATER.to(channel.unit()).apply(rank > 1 && !inlet ? 0 : inches);
            }
            case TEMPERATURE -> {
                boolean isReturn = name.contains("return") || rank == 1 && !name.contains("supply");
                yield Unit.FAHRENHEIT.to(channel.unit()).apply(isReturn ? truth.returnDegF() : truth.supplyDegF());
            }
            case FRACTION ->
                Unit.PERCENT.to(channel.unit()).apply(name.contains("battery") ? BATTERY_PERCENT : SHARE_PERCENT);
            default -> 1;
        };
    }

    private long periodNanos(int message) {
        double seconds = profile.sources().stream()
                .filter(s -> s.message() == message)
                .mapToDouble(s -> s.channel().periodSeconds())
                .filter(s -> s > 0)
                .min()
                .orElse(DEFAULT_PERIOD_SECONDS);
        return Math.round(seconds * 1e9);
    }

    /** The messages that somebody must ask for. */
    public List<String> askedFor() {
        return profile.messages().stream()
                .filter(m -> !(m.source() instanceof Source.Unasked))
                .map(Message::id)
                .toList();
    }
}
