package settlemark.decode;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import settlemark.measure.SampleStatus;
import settlemark.profile.Field;

/** Writes text: the line of a pattern, with what the fields hold put in place of its own. */
final class LineWriter implements FrameWriter {
    private final Contents contents;
    private final List<Field> fields;
    private final FieldPlaces places;
    private final @Nullable ChecksumCheck checksum;
    /** By channel: the numbers of the fields that may give its value. */
    private final TextNumber[][] numbers;

    private final byte[] pattern;

    LineWriter(Contents contents, Optional<byte[]> proved) {
        this.contents = contents;
        fields = contents.message().fields();
        places = new FieldPlaces(contents.message());
        checksum = contents.message().checksum().map(ChecksumCheck::new).orElse(null);
        numbers = new TextNumber[contents.sources().size()][];
        Arrays.setAll(
                numbers,
                i -> Arrays.stream(contents.fieldsOf(i))
                        .mapToObj(field -> (TextNumber) FieldNumber.of(
                                contents.field(field), contents.sources().get(i).sign()))
                        .toArray(TextNumber[]::new));
        pattern = proved.map(this::withoutChecksum).orElseGet(this::plainLine);
        if (locate(pattern) != null) {
            throw new IllegalArgumentException(
                    "a field found by a pattern can be written only where a good example shows the line around it");
        }
    }

    @Override
    public boolean says(int channel, SampleStatus status) {
        return Arrays.stream(numbers[channel]).anyMatch(number -> number.says(status));
    }

    @Override
    public byte[] write(double[] values, @Nullable SampleStatus[] statuses, @Nullable String[] words) {
        locate(pattern);
        byte[] line = replaced(pattern, conditions(statuses, words));
        locate(line);
        Map<Integer, String> texts = new HashMap<>();
        for (int i = 0; i < numbers.length; i++) {
            @Nullable SampleStatus status = statuses[i];
            if (status != null) {
                channel(i, values[i], status, texts);
            }
        }
        for (int i = 0; i < words.length; i++) {
            @Nullable String said = words[i];
            if (said != null) {
                texts.put(contents.factFields()[i], said);
            }
        }
        line = replaced(line, texts);
        @Nullable String complaint = locate(line);
        if (complaint != null) {
            throw new IllegalArgumentException("no line can hold this: " + complaint);
        }
        byte[] frame = Arrays.copyOf(line, line.length + contents.checksumBytes());
        if (checksum != null) {
            checksum.write(frame, 0, frame.length);
        }
        return frame;
    }

    private @Nullable String locate(byte[] line) {
        return places.find(line, 0, line.length, line.length);
    }

    private void channel(int channel, double value, SampleStatus status, Map<Integer, String> texts) {
        int[] candidates = contents.fieldsOf(channel);
        for (int i = 0; i < candidates.length; i++) {
            if (places.starts[candidates[i]] >= 0) {
                TextNumber number = numbers[channel][i];
                texts.put(candidates[i], status == SampleStatus.OK ? number.text(value) : number.text(status));
                return;
            }
        }
        throw new IllegalArgumentException("no field of channel "
                + contents.sources().get(channel).channel().name() + " can be written");
    }

    /** What the fields that others depend on must say. */
    private Map<Integer, String> conditions(@Nullable SampleStatus[] statuses, @Nullable String[] words) {
        ConditionChoice choice = new ConditionChoice(fields);
        for (int i = 0; i < statuses.length; i++) {
            if (statuses[i] == null) {
                choice.refuse(contents.fieldsOf(i));
            } else {
                choice.want(contents.fieldsOf(i), field -> places.starts[field] >= 0);
            }
        }
        for (int i = 0; i < words.length; i++) {
            if (words[i] != null) {
                choice.want(new int[] {contents.factFields()[i]}, field -> places.starts[field] >= 0);
            }
        }
        Map<Integer, String> texts = new HashMap<>();
        choice.solved(this::integer).forEach((field, raw) -> texts.put(field, String.valueOf(raw)));
        return texts;
    }

    private @Nullable Long integer(int field) {
        double number = places.starts[field] < 0
                ? Double.NaN
                : NumberText.parse(pattern, places.starts[field], places.ends[field]);
        return number == Math.rint(number) ? (Long) (long) number : null;
    }

    /** A line with texts in the places of fields that were found in it. */
    private byte[] replaced(byte[] line, Map<Integer, String> texts) {
        Map<Integer, Integer> byStart = new TreeMap<>();
        texts.keySet().forEach(field -> {
            if (places.starts[field] >= 0) {
                byStart.put(places.starts[field], field);
            }
        });
        ByteArrayOutputStream out = new ByteArrayOutputStream(2 * line.length);
        int written = 0;
        for (Map.Entry<Integer, Integer> entry : byStart.entrySet()) {
            int from = entry.getKey();
            if (from >= written) {
                out.write(line, written, from - written);
                out.writeBytes(texts.getOrDefault(entry.getValue(), "").getBytes(StandardCharsets.UTF_8));
                written = places.ends[entry.getValue()];
            }
        }
        out.write(line, written, line.length - written);
        return out.toByteArray();
    }

    private byte[] withoutChecksum(byte[] frame) {
        int to = checksum == null ? frame.length : Ascii.dropBlanks(frame, 0, frame.length);
        return Arrays.copyOf(frame, Math.max(0, to - contents.checksumBytes()));
    }

    /** The columns with their literals, and a number wherever the profile says nothing. */
    private byte[] plainLine() {
        String separator = contents.message()
                .columns()
                .map(c -> String.valueOf(c.separator()))
                .orElse(" ");
        String[] columns = new String[Math.max(1, places.neededColumns())];
        Arrays.fill(columns, "0");
        for (Field field : fields) {
            if (field.place() instanceof Field.InColumn column && field.content() instanceof Field.Literal literal) {
                columns[column.index()] = new String(literal.bytes().toBytes(), StandardCharsets.UTF_8);
            }
        }
        return String.join(separator, columns).getBytes(StandardCharsets.UTF_8);
    }
}
