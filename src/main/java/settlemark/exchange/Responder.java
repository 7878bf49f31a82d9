package settlemark.exchange;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import settlemark.profile.Action;
import settlemark.profile.Profile;
import settlemark.profile.Source;
import settlemark.profile.Step;

/**
 * The far end of a profile's questions: takes a master's bytes, knows the profile's requests among them and gives the
 * answers. Junk and requests to others are passed over. For one thread at a time.
 */
public final class Responder {
    private static final int KEPT_BYTES = 4096;
    private static final int REQUEST_BYTES = 8;
    private static final int ILLEGAL_FUNCTION = 1;
    private static final int ILLEGAL_ADDRESS = 2;

    private final Profile profile;
    private final int unit;
    private final Frames frames;
    private final List<Known> known = new ArrayList<>();
    private byte[] waiting = Outcome.NOTHING;

    /** What the device has to say at the moment. */
    public interface Frames {
        /**
         * A whole frame of a message, as it travels.
         *
         * @param message index in the profile's messages
         */
        byte[] frame(int message);

        /** A step was taken from the master, such as an action's. */
        default void told(Step step) {}
    }

    /** A request in bytes, and where its answer comes from. */
    private record Known(byte[] request, int message, Optional<Step> step) {}

    private record Answer(int consumed, byte[] bytes) {}

    /** @param unit address on a Modbus line, 0 for the profile's own */
    public Responder(Profile profile, int unit, Frames frames) {
        this.profile = profile;
        this.unit = Device.unit(profile, unit);
        this.frames = frames;
        for (int i = 0; i < profile.messages().size(); i++) {
            if (profile.messages().get(i).source() instanceof Source.Answer answer) {
                known.add(new Known(answer.request().toBytes(), i, Optional.empty()));
            }
        }
        for (Step step : steps()) {
            if (step.send().isPresent() && step.send().get() instanceof Step.Bytes bytes) {
                known.add(new Known(bytes.bytes().toBytes(), -1, Optional.of(step)));
            }
        }
    }

    private List<Step> steps() {
        return Stream.concat(
                        profile.startUp().stream(),
                        profile.actions().stream().map(Action::steps).flatMap(List::stream))
                .toList();
    }

    /** Takes the master's bytes; returns what is to be written back, in order, may be none. */
    public byte[] received(byte[] bytes, int from, int to) {
        byte[] all = Arrays.copyOf(waiting, waiting.length + to - from);
        System.arraycopy(bytes, from, all, waiting.length, to - from);
        byte[] answers = Outcome.NOTHING;
        int at = 0;
        for (Optional<Answer> next = next(all, at); next.isPresent(); next = next(all, at)) {
            at = next.get().consumed;
            answers = joined(answers, next.get().bytes);
        }
        waiting = Arrays.copyOfRange(all, Math.max(at, all.length - KEPT_BYTES), all.length);
        return answers;
    }

    private static byte[] joined(byte[] some, byte[] more) {
        byte[] all = Arrays.copyOf(some, some.length + more.length);
        System.arraycopy(more, 0, all, some.length, more.length);
        return all;
    }

    private Optional<Answer> next(byte[] bytes, int from) {
        for (int i = from; i < bytes.length; i++) {
            Optional<Answer> answer = unit > 0 ? registers(bytes, i) : text(bytes, i);
            if (answer.isPresent()) {
                return answer;
            }
        }
        return Optional.empty();
    }

    /** The longest of the requests that stand here. */
    private Optional<Answer> text(byte[] bytes, int at) {
        Known best = null;
        for (Known each : known) {
            boolean here = at + each.request.length <= bytes.length
                    && Search.matches(bytes, at, each.request, each.request.length);
            if (here && (best == null || each.request.length > best.request.length)) {
                best = each;
            }
        }
        if (best == null) {
            return Optional.empty();
        }
        byte[] answer = best.step.isPresent() ? answer(best.step.get()) : frames.frame(best.message);
        return Optional.of(new Answer(at + best.request.length, answer));
    }

    /** Only an answer that the profile spells out can be given. */
    private byte[] answer(Step step) {
        frames.told(step);
        return step.expect().isPresent() && step.expect().get() instanceof Step.ExpectBytes expected
                ? expected.bytes().toBytes()
                : Outcome.NOTHING;
    }

    private Optional<Answer> registers(byte[] bytes, int at) {
        if (at + REQUEST_BYTES > bytes.length || ModbusFrames.at(bytes, at) != unit) {
            return Optional.empty();
        }
        int function = ModbusFrames.at(bytes, at + 1);
        int end = at + REQUEST_BYTES;
        if (function == ModbusFrames.WRITE_SEVERAL) {
            end = at + 9 + ModbusFrames.at(bytes, at + 6);
        }
        if (end > bytes.length || !ModbusFrames.isSealed(bytes, at, end)) {
            return Optional.empty();
        }
        int first = ModbusFrames.word(bytes, at + 2);
        byte[] answer = switch (function) {
            case ModbusFrames.READ_HOLDING, ModbusFrames.READ_INPUT ->
                read(function, first, ModbusFrames.word(bytes, at + 4));
            case ModbusFrames.WRITE_ONE, ModbusFrames.WRITE_SEVERAL -> written(function, first, bytes, at, end);
            default -> ModbusFrames.exception(unit, function, ILLEGAL_FUNCTION);
        };
        return Optional.of(new Answer(end, answer));
    }

    /** Any range within one of the profile's messages can be read. */
    private byte[] read(int function, int first, int count) {
        for (int i = 0; i < profile.messages().size(); i++) {
            if (profile.messages().get(i).source() instanceof Source.Registers registers
                    && registers.function() == function
                    && first >= registers.first()
                    && count >= 1
                    && first + count <= registers.first() + registers.count()) {
                byte[] whole = frames.frame(i);
                int[] body = new int[3 + 2 * count];
                body[0] = unit;
                body[1] = function;
                body[2] = 2 * count;
                for (int b = 0; b < 2 * count; b++) {
                    body[3 + b] = whole[3 + 2 * (first - registers.first()) + b];
                }
                return ModbusFrames.sealed(body);
            }
        }
        return ModbusFrames.exception(unit, function, ILLEGAL_ADDRESS);
    }

    /** Registers that a step of the profile sets. */
    private byte[] written(int function, int first, byte[] bytes, int from, int to) {
        byte[] request = Arrays.copyOfRange(bytes, from, to);
        for (Step step : steps()) {
            if (step.send().isPresent()
                    && step.send().get() instanceof Step.SetRegisters set
                    && Arrays.equals(request, ModbusFrames.write(unit, set.first(), set.words()))) {
                frames.told(step);
                return ModbusFrames.sealed(
                        unit,
                        function,
                        first >> 8,
                        first,
                        ModbusFrames.at(bytes, from + 4),
                        ModbusFrames.at(bytes, from + 5));
            }
        }
        return ModbusFrames.exception(unit, function, ILLEGAL_ADDRESS);
    }
}
