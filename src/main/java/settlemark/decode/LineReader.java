package settlemark.decode;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import settlemark.measure.SampleStatus;
import settlemark.profile.ChannelSource;
import settlemark.profile.Field;
import settlemark.profile.Profile;

/** Values out of a text line. */
final class LineReader implements FrameReader {
    private final LineLayout layout;
    private final List<Field> fields;
    private final int[] fieldOfChannel;
    private final Scaling[] scalings;
    private final List<List<Special>> specials = new ArrayList<>();
    private final byte[] @Nullable [] literals;
    private final @Nullable ChecksumCheck checksum;

    LineReader(Profile profile) {
        layout = new LineLayout(profile);
        fields = profile.messages().get(0).fields();
        checksum = profile.messages().get(0).checksum().map(ChecksumCheck::new).orElse(null);
        literals = new byte[fields.size()][];
        for (int i = 0; i < literals.length; i++) {
            literals[i] = fields.get(i).content() instanceof Field.Literal literal
                    ? literal.bytes().toBytes()
                    : null;
        }
        List<ChannelSource> sources = profile.sources();
        fieldOfChannel = new int[sources.size()];
        scalings = new Scaling[sources.size()];
        for (int i = 0; i < scalings.length; i++) {
            fieldOfChannel[i] = sources.get(i).fields().get(0).field();
            Field.Decimal content =
                    (Field.Decimal) fields.get(fieldOfChannel[i]).content();
            scalings[i] = new Scaling(content.curve(), sources.get(i).sign());
            specials.add(Special.all(content.specials()));
        }
    }

    /** Whether a line that has lost its beginning can be told from a whole one. */
    boolean provesStart() {
        boolean firstIsLiteral = fields.stream()
                .anyMatch(field -> field.content() instanceof Field.Literal
                        && field.place() instanceof Field.InColumn column
                        && column.index() == 0);
        return firstIsLiteral || checksum != null;
    }

    @Override
    public @Nullable String read(byte[] bytes, int from, int to, double[] values, SampleStatus[] statuses) {
        int end = to;
        if (checksum != null) {
            end = Ascii.dropBlanks(bytes, from, to);
            @Nullable String complaint = checksum.complaint(bytes, from, end);
            if (complaint != null) {
                return complaint;
            }
            end -= checksum.bytesAtEnd();
        }
        @Nullable String missing = layout.find(bytes, from, end);
        if (missing != null) {
            return missing;
        }
        @Nullable String wrong = wrongLiteral(bytes);
        return wrong != null ? wrong : numbers(bytes, values, statuses);
    }

    @Override
    public long missed() {
        return 0;
    }

    @Override
    public void reset() {}

    private @Nullable String wrongLiteral(byte[] bytes) {
        for (int i = 0; i < literals.length; i++) {
            byte @Nullable [] literal = literals[i];
            if (literal != null && !equal(literal, bytes, layout.starts[i], layout.ends[i])) {
                return fields.get(i).name() + " must be " + Ascii.quoted(literal, 0, literal.length) + ", got "
                        + Ascii.quoted(bytes, layout.starts[i], layout.ends[i]);
            }
        }
        return null;
    }

    private @Nullable String numbers(byte[] bytes, double[] values, SampleStatus[] statuses) {
        for (int i = 0; i < values.length; i++) {
            int field = fieldOfChannel[i];
            int from = layout.starts[field];
            int to = layout.ends[field];
            double number = NumberText.parse(bytes, from, to);
            SampleStatus status = special(specials.get(i), number, bytes, from, to);
            if (Double.isNaN(number) && status == SampleStatus.OK) {
                return fields.get(field).name() + " must be a number, got " + Ascii.quoted(bytes, from, to);
            }
            statuses[i] = status;
            values[i] = status == SampleStatus.OK ? scalings[i].value(number) : Double.NaN;
        }
        return null;
    }

    private static SampleStatus special(List<Special> specials, double number, byte[] bytes, int from, int to) {
        for (int i = 0; i < specials.size(); i++) {
            if (specials.get(i).number() == number || equal(specials.get(i).text(), bytes, from, to)) {
                return specials.get(i).meaning();
            }
        }
        return SampleStatus.OK;
    }

    private static boolean equal(byte[] text, byte[] bytes, int from, int to) {
        return Arrays.equals(text, 0, text.length, bytes, from, to);
    }

    /**
     * A text that stands for no measurement. One that is a number is met by every spelling of the number.
     *
     * @param number NaN where it is none
     */
    private record Special(byte[] text, double number, SampleStatus meaning) {
        static List<Special> all(Map<SampleStatus, List<String>> texts) {
            List<Special> all = new ArrayList<>();
            texts.forEach((status, list) -> list.forEach(text -> {
                byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
                all.add(new Special(bytes, NumberText.parse(bytes, 0, bytes.length), status));
            }));
            return List.copyOf(all);
        }
    }
}
