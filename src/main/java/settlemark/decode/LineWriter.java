package settlemark.decode;

import java.io.ByteArrayOutputStream;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import settlemark.measure.SampleStatus;
import settlemark.profile.ChannelSource;
import settlemark.profile.Field;
import settlemark.profile.Framing;
import settlemark.profile.Profile;

/** Values into a text line: the line of an example, with the channels' texts put in place of its own. */
final class LineWriter implements FrameWriter {
    private final List<Field> fields;
    private final List<ChannelSource> sources;
    private final Scaling[] scalings;
    private final @Nullable ChecksumCheck checksum;
    private final byte[] end;
    private final byte[] pattern;
    private final LineLayout layout;
    /** Indices of the channels in the order in which they stand in the line. */
    private final int[] order;

    LineWriter(Profile profile) {
        fields = profile.messages().get(0).fields();
        sources = profile.sources();
        layout = new LineLayout(profile);
        checksum = profile.messages().get(0).checksum().map(ChecksumCheck::new).orElse(null);
        end = ((Framing.Line) profile.messages().get(0).framing()).end().toBytes();
        scalings = sources.stream()
                .map(source -> new Scaling(decimal(source).curve(), source.sign()))
                .toArray(Scaling[]::new);
        pattern = exampleLine(profile).orElseGet(() -> plainLine(profile));
        if (layout.find(pattern, 0, pattern.length) != null) {
            throw new IllegalArgumentException(
                    "a field found by a pattern can be written only where a good example shows the line around it");
        }
        order = IntStream.range(0, sources.size())
                .boxed()
                .sorted(Comparator.comparing(channel -> layout.starts[field(channel)]))
                .mapToInt(Integer::intValue)
                .toArray();
    }

    @Override
    public boolean says(int channel, SampleStatus status) {
        return decimal(sources.get(channel)).specials().containsKey(status);
    }

    @Override
    public byte[] write(double[] values, SampleStatus[] statuses) {
        ByteArrayOutputStream line = new ByteArrayOutputStream(2 * pattern.length);
        int written = 0;
        for (int channel : order) {
            int from = layout.starts[field(channel)];
            if (from >= written) {
                line.write(pattern, written, from - written);
                line.writeBytes(
                        text(channel, values[channel], statuses[channel]).getBytes(StandardCharsets.UTF_8));
                written = layout.ends[field(channel)];
            }
        }
        line.write(pattern, written, pattern.length - written);
        byte[] content = line.toByteArray();
        int checksumBytes = checksum == null ? 0 : checksum.bytesAtEnd();
        byte[] frame = Arrays.copyOf(content, content.length + checksumBytes + end.length);
        int delimiterAt = content.length + checksumBytes;
        if (checksum != null) {
            checksum.write(frame, 0, delimiterAt);
        }
        System.arraycopy(end, 0, frame, delimiterAt, end.length);
        return frame;
    }

    private String text(int channel, double value, SampleStatus status) {
        Field.Decimal content = decimal(sources.get(channel));
        if (status != SampleStatus.OK) {
            return content.specials().getOrDefault(status, List.of()).get(0);
        }
        BigDecimal number = BigDecimal.valueOf(scalings[channel].raw(value));
        BigDecimal rounded = content.decimals()
                .map(decimals -> number.setScale(decimals, RoundingMode.HALF_EVEN))
                .orElseGet(() -> number.signum() == 0 ? BigDecimal.ZERO : number.stripTrailingZeros());
        String plain = rounded.toPlainString();
        return content.plus() && rounded.signum() >= 0 ? "+" + plain : plain;
    }

    private Field.Decimal decimal(ChannelSource source) {
        return (Field.Decimal) fields.get(source.fields().get(0).field()).content();
    }

    private int field(int channel) {
        return sources.get(channel).fields().get(0).field();
    }

    /** The first good example without its delimiter and checksum. */
    private Optional<byte[]> exampleLine(Profile profile) {
        return Trial.provedFrame(profile)
                .filter(bytes -> bytes.length >= end.length)
                .map(bytes -> {
                    int to = Ascii.dropBlanks(bytes, 0, bytes.length - end.length);
                    return Arrays.copyOf(bytes, checksum == null ? to : to - checksum.bytesAtEnd());
                });
    }

    /** The columns with their literals, and a number wherever the profile says nothing. */
    private byte[] plainLine(Profile profile) {
        String separator = profile.messages()
                .get(0)
                .columns()
                .map(c -> String.valueOf(c.separator()))
                .orElse(" ");
        String[] columns = new String[Math.max(1, layout.neededColumns())];
        Arrays.fill(columns, "0");
        for (Field field : fields) {
            if (field.place() instanceof Field.InColumn column && field.content() instanceof Field.Literal literal) {
                columns[column.index()] = new String(literal.bytes().toBytes(), StandardCharsets.UTF_8);
            }
        }
        return String.join(separator, columns).getBytes(StandardCharsets.UTF_8);
    }
}
