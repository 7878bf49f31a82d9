package settlemark.exchange;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import settlemark.profile.Action;
import settlemark.profile.ByteText;
import settlemark.profile.Checksum;
import settlemark.profile.Framing;
import settlemark.profile.Link;
import settlemark.profile.Message;
import settlemark.profile.Poll;
import settlemark.profile.Profile;
import settlemark.profile.SerialLine;
import settlemark.profile.Source;
import settlemark.profile.Step;
import settlemark.profile.Wire;

/** Descriptions of invented devices, made in code. */
public final class Profiles {
    public static final SerialLine FAST =
            new SerialLine(115_200, 8, SerialLine.Parity.NONE, SerialLine.StopBits.ONE, SerialLine.Flow.NONE);
    static final Framing LINE = new Framing.Line(text("\n"), 80);

    private Profiles() {}

    public static ByteText text(String text) {
        return ByteText.of(text.getBytes(StandardCharsets.US_ASCII));
    }

    public static Poll every(double seconds, double timeOut, int retries) {
        return new Poll(seconds, timeOut, retries);
    }

    public static Message registers(String id, int function, int first, int count, Poll poll) {
        return new Message(
                id,
                new Source.Registers(function, first, count, poll),
                new Framing.Fixed(ByteText.EMPTY, 5 + 2 * count),
                Optional.empty(),
                Optional.empty(),
                Optional.of(new Checksum(
                        new Checksum.Crc(16, 0x8005, 0xFFFF, true, true, 0),
                        Wire.Order.LITTLE,
                        0,
                        0,
                        false,
                        ByteText.EMPTY,
                        0)),
                Optional.empty(),
                List.of(),
                0);
    }

    static Message asked(String id, String request, Framing framing, Poll poll) {
        return message(id, new Source.Answer(text(request), poll), framing, Optional.empty());
    }

    static Message unasked(String id, Framing framing) {
        return message(id, new Source.Unasked(), framing, Optional.empty());
    }

    static Message message(String id, Source source, Framing framing, Optional<Checksum> checksum) {
        return new Message(
                id, source, framing, Optional.empty(), Optional.empty(), checksum, Optional.empty(), List.of(), 0);
    }

    public static Profile modbus(int unit, Message... messages) {
        return profile(new Link.ModbusRtu(FAST, unit), List.of(), List.of(), messages);
    }

    static Profile serial(Message... messages) {
        return profile(new Link.Serial(FAST), List.of(), List.of(), messages);
    }

    public static Profile profile(Link link, List<Step> startUp, List<Action> actions, Message... messages) {
        return new Profile(
                "invented",
                "Invented",
                "",
                true,
                "0".repeat(64),
                "",
                List.of(),
                Optional.of(link),
                startUp,
                actions,
                List.of(messages),
                List.of(),
                List.of(),
                List.of());
    }

    static Step step(String send, String expect, double timeOut, int retries, double wait) {
        List<Step.Expect> expects = new ArrayList<>();
        if (!expect.isEmpty()) {
            expects.add(new Step.ExpectBytes(text(expect)));
        }
        return new Step(
                Optional.of(new Step.Bytes(text(send))), expects.stream().findFirst(), timeOut, retries, wait, 0);
    }
}
