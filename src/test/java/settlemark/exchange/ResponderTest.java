package settlemark.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static settlemark.exchange.Profiles.LINE;
import static settlemark.exchange.Profiles.asked;
import static settlemark.exchange.Profiles.every;
import static settlemark.exchange.Profiles.modbus;
import static settlemark.exchange.Profiles.registers;
import static settlemark.exchange.Profiles.step;
import static settlemark.exchange.Profiles.text;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import settlemark.measure.Chunk;
import settlemark.profile.Action;
import settlemark.profile.Link;
import settlemark.profile.Profile;
import settlemark.profile.Step;

/** The far end knows what the near end asks. */
final class ResponderTest {
    private final List<Step> told = new ArrayList<>();

    private final class Said implements Responder.Frames {
        private final byte[][] frames;

        Said(byte[]... frames) {
            this.frames = frames;
        }

        @Override
        public byte[] frame(int message) {
            return frames[message];
        }

        @Override
        public void told(Step step) {
            told.add(step);
        }
    }

    private static byte[] ask(Responder responder, byte[] bytes) {
        return responder.received(bytes, 0, bytes.length);
    }

    @Test
    void anyPartOfAMessagesRegistersCanBeReadAndOthersAreRefused() {
        Profile profile = modbus(5, registers("a", 3, 10, 3, every(1, 1, 0)));
        Responder responder = new Responder(profile, 0, new Said(ModbusFrames.sealed(5, 3, 6, 0, 1, 0, 2, 0, 3)));
        assertThat(ask(responder, ModbusFrames.read(5, 3, 10, 3)))
                .isEqualTo(ModbusFrames.sealed(5, 3, 6, 0, 1, 0, 2, 0, 3));
        assertThat(ask(responder, ModbusFrames.read(5, 3, 11, 1))).isEqualTo(ModbusFrames.sealed(5, 3, 2, 0, 2));
        assertThat(ask(responder, ModbusFrames.read(5, 3, 11, 3))).isEqualTo(ModbusFrames.sealed(5, 0x83, 2));
        assertThat(ask(responder, ModbusFrames.read(5, 4, 10, 1))).isEqualTo(ModbusFrames.sealed(5, 0x84, 2));
        assertThat(ask(responder, ModbusFrames.read(5, 1, 10, 1))).isEqualTo(ModbusFrames.sealed(5, 0x81, 1));
        assertThat(ask(responder, ModbusFrames.read(6, 3, 10, 3))).isEmpty();
    }

    @Test
    void requestsInPiecesAndAmongNoiseAreKnown() {
        Profile profile = modbus(5, registers("a", 3, 10, 1, every(1, 1, 0)));
        Responder responder = new Responder(profile, 9, new Said(ModbusFrames.sealed(5, 3, 2, 0, 1)));
        byte[] request = Bench.cat(new byte[] {9, 3}, ModbusFrames.read(9, 3, 10, 1));
        for (int i = 0; i < request.length - 1; i++) {
            assertThat(responder.received(request, i, i + 1)).isEmpty();
        }
        assertThat(responder.received(request, request.length - 1, request.length))
                .isEqualTo(ModbusFrames.sealed(9, 3, 2, 0, 1));
    }

    @Test
    void textRequestsAndStepsAreAnswered() {
        Profile profile = Profiles.profile(
                new Link.Serial(Profiles.FAST),
                List.of(step("*RST\n", "OK\n", 1, 0, 0), step("*CLS\n", "", 1, 0, 0)),
                List.of(),
                asked("a", "MEAS?\n", LINE, every(1, 1, 0)));
        Responder responder = new Responder(profile, 0, new Said(text("1.5\n").toBytes()));
        byte[] answer = ask(responder, text("xx*RST\n*CLS\nMEAS?\nMEAS").toBytes());
        assertThat(new String(answer, StandardCharsets.US_ASCII)).isEqualTo("OK\n1.5\n");
        assertThat(told).hasSize(2);
        assertThat(ask(responder, text("?\n").toBytes()))
                .isEqualTo(text("1.5\n").toBytes());
    }

    @Test
    void exchangeAndResponderUnderstandEachOther() {
        Step set = new Step(Optional.of(new Step.SetRegisters(40, List.of(7, 8))), Optional.empty(), 0.5, 0, 0, 0);
        Profile profile = Profiles.profile(
                new Link.ModbusRtu(Profiles.FAST, 5),
                List.of(set),
                List.of(new Action("zero", "Zero", "", List.of(set), 0)),
                registers("a", 3, 10, 2, every(0.1, 1, 0)),
                registers("b", 4, 10, 1, every(0.1, 1, 0)));
        Responder responder = new Responder(
                profile, 0, new Said(ModbusFrames.sealed(5, 3, 4, 0, 1, 0, 2), ModbusFrames.sealed(5, 4, 2, 0, 9)));
        Bench bench = new Bench((bytes, b) -> b.arrivesAfter(3, ask(responder, bytes)));
        Bench.Ear ear = bench.add(profile);
        bench.exchange.act(0, "zero");
        bench.runMillis(1000);
        assertThat(ear.said).containsExactly("noted: Zero: done");
        assertThat(told).hasSize(2);
        assertThat(ear.of(0)).hasSizeGreaterThan(8);
        assertThat(ear.of(1)).hasSizeGreaterThan(8);
        assertThat(ear.of(Chunk.STRAY)).isEmpty();
    }
}
