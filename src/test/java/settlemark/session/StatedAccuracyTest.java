package settlemark.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import settlemark.measure.Chunk;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.profile.Input;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;

/** What a Bluetooth sensor states about itself by the descriptor 0x290C goes before what its profile says. */
class StatedAccuracyTest {
    private static final Profile PROFILE = ProfileLibrary.get("ble-environment");

    /** The descriptor of the shipped profile's example: every 60 s, uncertainty 4 x 0.5 %. */
    private static final byte[] DESCRIPTOR = HexFormat.ofDelimiter(" ").parseHex("00 00 02 0A 00 00 3C 00 00 01 04");

    private static Chunk chunk(long nanos, Input.Kind kind, String channel, byte[] bytes) {
        int message = PROFILE.sources()
                .get(PROFILE.channelIndex(channel).orElseThrow())
                .message();
        return new Chunk(nanos, PROFILE.inputs().indexOf(new Input(kind, message)), bytes);
    }

    private static LiveSession session() {
        ProbeSetup probe = new ProbeSetup(
                "air", new ProbeAddress("ble", "00:11:22:33:44:55"), PROFILE, Map.of("temperature", Role.SUPPLY));
        return new LiveSession(new SessionHeader(
                "key",
                "title",
                Instant.EPOCH,
                ZoneOffset.UTC,
                Unit.INCH_OF_WATER,
                Unit.FAHRENHEIT,
                List.of(probe),
                Optional.empty(),
                Optional.empty(),
                "test"));
    }

    @Test
    void theDescriptorReplacesAccuracyAndPeriod() {
        LiveSession session = session();
        session.take(new SessionEvent.Bytes(0, chunk(1, Input.Kind.MEASUREMENT, "temperature", DESCRIPTOR)));
        // 25.00 degC
        session.take(new SessionEvent.Bytes(
                0, chunk(2, Input.Kind.FRAMES, "temperature", new byte[] {(byte) 0xC4, 0x09})));
        ChannelView supply = session.snapshot(Instant.EPOCH).channels().get(0);
        assertThat(supply.value()).isCloseTo(77, within(1e-9));
        assertThat(supply.channel().accuracy().halfWidth(50)).isCloseTo(1, within(1e-12));
        assertThat(supply.channel().periodSeconds()).isEqualTo(60);
        assertThat(session.snapshot(Instant.EPOCH).events())
                .extracting(JobRecord.Happened::words)
                .containsExactly("air: the device states \u00b12.0 % of reading, a value each 60 s");
    }

    @Test
    void otherCharacteristicsKeepTheirOwn() {
        LiveSession session = session();
        session.take(new SessionEvent.Bytes(0, chunk(1, Input.Kind.MEASUREMENT, "air-pressure", DESCRIPTOR)));
        assertThat(session.snapshot(Instant.EPOCH).channels().get(0).channel())
                .isEqualTo(PROFILE.channels()
                        .get(PROFILE.channelIndex("temperature").orElseThrow()));
    }
}
