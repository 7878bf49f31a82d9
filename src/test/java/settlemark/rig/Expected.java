package settlemark.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import settlemark.decode.DecodeSink;
import settlemark.decode.ProbeDecoder;
import settlemark.decode.Rejected;
import settlemark.measure.Channel;
import settlemark.measure.Chunk;
import settlemark.measure.Role;
import settlemark.measure.Sample;
import settlemark.measure.SampleStatus;
import settlemark.measure.Unit;

/** Decodes what the rig sends and compares it with what was true; in inches of water and degrees Fahrenheit. */
final class Expected {
    final DemoRig rig;
    final Map<Role, List<Sample>> samples = new EnumMap<>(Role.class);
    final List<Chunk> chunks = new ArrayList<>();
    final List<Rejected> rejected = new ArrayList<>();
    private final Map<DemoInstrument, ProbeDecoder> decoders = new EnumMap<>(DemoInstrument.class);

    Expected(DemoRig rig) {
        this.rig = rig;
        for (DemoInstrument instrument : DemoInstrument.values()) {
            ProbeDecoder decoder = new ProbeDecoder(instrument.profile());
            DecodeSink sink = sink(instrument);
            decoders.put(instrument, decoder);
            rig.connect(instrument, chunk -> {
                chunks.add(chunk);
                decoder.accept(chunk, sink);
            });
        }
    }

    private DecodeSink sink(DemoInstrument instrument) {
        List<Channel> channels = instrument.profile().channels();
        return new DecodeSink() {
            @Override
            public void sample(int channel, long timeNanos, double value, SampleStatus status) {
                Role role = instrument.roles().get(channels.get(channel).name());
                if (role != null) {
                    assertThat(status).isEqualTo(SampleStatus.OK);
                    double inUnit = channels.get(channel).unit().to(unit(role)).apply(value);
                    samples.computeIfAbsent(role, r -> new ArrayList<>())
                            .add(new Sample(channel, timeNanos, inUnit, status));
                }
            }

            @Override
            public void rejected(Rejected bytes) {
                rejected.add(bytes);
            }
        };
    }

    ProbeDecoder decoder(DemoInstrument instrument) {
        return Objects.requireNonNull(decoders.get(instrument));
    }

    static Unit unit(Role role) {
        return role == Role.INLET || role == Role.MANIFOLD ? Unit.INCH_OF_WATER : Unit.FAHRENHEIT;
    }

    static Channel channel(Role role) {
        for (DemoInstrument instrument : DemoInstrument.values()) {
            for (Channel channel : instrument.profile().channels()) {
                if (instrument.roles().get(channel.name()) == role) {
                    return channel;
                }
            }
        }
        throw new IllegalArgumentException("nothing is at " + role);
    }

    /** Half-width of the maker's statement around a value in {@link #unit}. */
    static double accuracy(Role role, double value) {
        Channel channel = channel(role);
        double inChannel = unit(role).to(channel.unit()).apply(value);
        return channel.unit().to(unit(role)).applyDifference(channel.accuracy().halfWidth(inChannel));
    }

    static double truth(RigTruth truth, Role role) {
        return switch (role) {
            case INLET -> truth.inletAtGaugeInH2o();
            case MANIFOLD -> truth.manifoldAtGaugeInH2o();
            case SUPPLY -> truth.supplyDegF();
            case RETURN -> truth.returnDegF();
            default -> throw new IllegalArgumentException("nothing is at " + role);
        };
    }

    void runTo(double seconds) {
        rig.advanceTo((long) (seconds * 1e9));
    }

    double lastMean(Role role, int count) {
        List<Sample> of = samples.getOrDefault(role, List.of());
        return of.subList(of.size() - count, of.size()).stream()
                .mapToDouble(Sample::value)
                .average()
                .orElseThrow();
    }
}
