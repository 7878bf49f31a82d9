package settlemark.ui;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import settlemark.decode.FrameExplanation;
import settlemark.document.Problem;
import settlemark.measure.Chunk;
import settlemark.profile.ByteText;
import settlemark.profile.Profile;
import settlemark.profile.ProfileDraft;
import settlemark.profile.ProfileReader;
import settlemark.profile.ProfileReading;
import settlemark.profile.Secrets;
import settlemark.profile.SerialLine;

/**
 * A profile in the making: what bytes mean, as picked by a person, over frames of one length; immutable. Its text is a
 * profile, and its problems are those of the text.
 *
 * @param id key of the device
 * @param name for people
 * @param startBytes that each frame begins with
 * @param lengthBytes of a frame
 * @param check at its end
 * @param fields in the order of their places
 */
record WorkshopDraft(
        String id, String name, int startBytes, int lengthBytes, ProfileDraft.Check check, List<Picked> fields) {
    private static final SerialLine LINE =
            new SerialLine(9600, 8, SerialLine.Parity.NONE, SerialLine.StopBits.ONE, SerialLine.Flow.NONE);
    static final List<String> KINDS = List.of("int", "uint", "float");

    WorkshopDraft {
        fields = fields.stream().sorted(Comparator.comparingInt(Picked::from)).toList();
    }

    /**
     * Bytes that make a number.
     *
     * @param from first byte
     * @param bytes 1, 2, 4 or 8
     * @param kind {@code int}, {@code uint} or {@code float}
     * @param bigEndian whether the high byte comes first
     * @param scale from the number to the value
     * @param unit UCUM code
     */
    record Picked(String name, int from, int bytes, String kind, boolean bigEndian, double scale, String unit) {
        int to() {
            return from + bytes;
        }

        /** In a line; neither a name nor a unit has a blank. */
        String line() {
            return String.join(
                    " ",
                    name,
                    Integer.toString(from),
                    Integer.toString(bytes),
                    kind,
                    Boolean.toString(bigEndian),
                    Double.toString(scale),
                    unit);
        }

        /** @throws IllegalArgumentException where it is no line of {@link #line} */
        static Picked of(String line) {
            List<String> parts = List.of(line.split(" ", -1));
            if (parts.size() != 7) {
                throw new IllegalArgumentException("a field has 7 parts, got \"" + line + "\"");
            }
            return new Picked(
                    parts.get(0),
                    Integer.parseInt(parts.get(1)),
                    Integer.parseInt(parts.get(2)),
                    parts.get(3),
                    Boolean.parseBoolean(parts.get(4)),
                    Double.parseDouble(parts.get(5)),
                    parts.get(6));
        }
    }

    /** What is said of a field over the frames: its value in the newest one, or why there is none. */
    record Said(Picked field, String words) {}

    static SerialLine line() {
        return LINE;
    }

    /** The bytes of chunks as frames: from each start on where the draft has one, else chunk by chunk. */
    static List<byte[]> frames(List<Chunk> chunks, byte[] start, int lengthBytes) {
        if (start.length == 0) {
            return chunks.stream().map(Chunk::bytes).filter(b -> b.length > 0).toList();
        }
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        chunks.forEach(c -> all.writeBytes(c.bytes()));
        byte[] stream = all.toByteArray();
        List<byte[]> frames = new ArrayList<>();
        for (int i = 0; i + lengthBytes <= stream.length; i++) {
            if (startsAt(stream, i, start)) {
                frames.add(Arrays.copyOfRange(stream, i, i + lengthBytes));
                i += lengthBytes - 1;
            }
        }
        return frames;
    }

    private static boolean startsAt(byte[] stream, int at, byte[] start) {
        return Arrays.equals(stream, at, at + start.length, start, 0, start.length);
    }

    /** The length that most frames have. */
    static int usualLength(List<byte[]> frames) {
        Map<Integer, Integer> counts = new LinkedHashMap<>();
        frames.forEach(f -> counts.merge(f.length, 1, Integer::sum));
        return counts.entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .map(Map.Entry::getKey)
                .orElse(0);
    }

    /** Which bytes are not the same in all frames. */
    static boolean[] changing(List<byte[]> frames) {
        int longest = frames.stream().mapToInt(f -> f.length).max().orElse(0);
        boolean[] changing = new boolean[longest];
        for (byte[] frame : frames) {
            for (int i = 0; i < longest; i++) {
                byte[] first = frames.get(0);
                boolean same = i < frame.length && i < first.length && frame[i] == first[i];
                changing[i] |= !same;
            }
        }
        return changing;
    }

    /** The profile's text, with a captured frame as its example where there is one. */
    String text(List<byte[]> frames) {
        List<ProfileDraft.Reading> readings = fields.stream()
                .map(f -> new ProfileDraft.Reading(
                        f.name(),
                        Numbers.capital(f.name()),
                        f.unit(),
                        f.from(),
                        f.kind() + 8 * f.bytes(),
                        f.bigEndian(),
                        f.scale(),
                        Double.NaN))
                .toList();
        byte[] start = frames.isEmpty() || startBytes > frames.get(0).length
                ? new byte[0]
                : Arrays.copyOf(frames.get(0), startBytes);
        ProfileDraft.Shape shape =
                new ProfileDraft.FixedFrames(LINE, ByteText.of(start), Math.max(1, lengthBytes), check);
        return ProfileDraft.text(new ProfileDraft.Answers(id, name, shape, readings, example(frames, shape, readings)));
    }

    private Optional<ProfileDraft.Capture> example(
            List<byte[]> frames, ProfileDraft.Shape shape, List<ProfileDraft.Reading> readings) {
        String bare = ProfileDraft.text(new ProfileDraft.Answers(id, name, shape, readings, Optional.empty()));
        Optional<Profile> profile = read(bare).profile();
        for (byte[] frame : frames) {
            if (profile.isPresent() && frame.length == lengthBytes) {
                Map<String, Double> gives = values(profile.get(), frame);
                if (!gives.isEmpty()) {
                    return Optional.of(new ProfileDraft.Capture(ByteText.of(frame), gives));
                }
            }
        }
        return Optional.empty();
    }

    static ProfileReading read(String text) {
        return ProfileReader.read("draft.yaml", text.getBytes(StandardCharsets.UTF_8));
    }

    static List<Problem> problems(String text) {
        return read(text).problems();
    }

    /** Values of a frame by channel, empty where it is refused. */
    static Map<String, Double> values(Profile profile, byte[] frame) {
        Map<String, Double> values = new LinkedHashMap<>();
        for (FrameExplanation explained : FrameExplanation.of(profile, 0, frame, Secrets.NONE)) {
            explained
                    .fields()
                    .forEach(f -> f.reading()
                            .filter(r -> !r.channel().isEmpty() && Double.isFinite(r.value()))
                            .ifPresent(r -> values.put(r.channel(), r.value())));
        }
        return values;
    }

    /** The first of the known checks that all frames pass, none where none does or the frames are too few to tell. */
    static ProfileDraft.Check check(List<byte[]> frames, int startBytes, int lengthBytes) {
        boolean[] changing = changing(frames);
        if (frames.size() < 3 || lengthBytes < 3 || changing.length < lengthBytes) {
            return ProfileDraft.Check.NONE;
        }
        for (ProfileDraft.Check candidate : ProfileDraft.Check.values()) {
            int bytes = candidate.name().startsWith("CRC") ? 2 : 1;
            boolean room = lengthBytes > startBytes + bytes;
            if (candidate != ProfileDraft.Check.NONE && room && allPass(frames, startBytes, lengthBytes, candidate)) {
                return candidate;
            }
        }
        return ProfileDraft.Check.NONE;
    }

    private static boolean allPass(List<byte[]> frames, int startBytes, int lengthBytes, ProfileDraft.Check candidate) {
        Picked any = new Picked("any", startBytes, 1, "uint", true, 1, "1");
        WorkshopDraft draft = new WorkshopDraft("draft", "draft", startBytes, lengthBytes, candidate, List.of(any));
        ProfileDraft.Shape shape = new ProfileDraft.FixedFrames(
                LINE, ByteText.of(Arrays.copyOf(frames.get(0), startBytes)), lengthBytes, candidate);
        ProfileDraft.Reading reading =
                new ProfileDraft.Reading(any.name(), "Any", any.unit(), any.from(), "uint8", true, 1, Double.NaN);
        Optional<Profile> profile = read(ProfileDraft.text(
                        new ProfileDraft.Answers(draft.id, draft.name, shape, List.of(reading), Optional.empty())))
                .profile();
        return profile.isPresent()
                && frames.stream()
                        .filter(f -> f.length == lengthBytes)
                        .allMatch(f -> !values(profile.get(), f).isEmpty());
    }

    WorkshopDraft with(Picked added) {
        List<Picked> all = new ArrayList<>(fields);
        all.removeIf(f -> f.from() < added.to() && added.from() < f.to());
        all.add(added);
        return new WorkshopDraft(id, name, startBytes, lengthBytes, check, all);
    }

    WorkshopDraft without(int at) {
        List<Picked> rest =
                fields.stream().filter(f -> at < f.from() || at >= f.to()).toList();
        return new WorkshopDraft(id, name, startBytes, lengthBytes, check, rest);
    }

    WorkshopDraft framed(int newStart, int newLength, ProfileDraft.Check newCheck) {
        return new WorkshopDraft(id, name, newStart, newLength, newCheck, fields);
    }
}
