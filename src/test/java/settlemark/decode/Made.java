package settlemark.decode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import settlemark.measure.Accuracy;
import settlemark.measure.Channel;
import settlemark.measure.SampleStatus;
import settlemark.measure.Unit;
import settlemark.profile.ByteText;
import settlemark.profile.ChannelSource;
import settlemark.profile.Checksum;
import settlemark.profile.Cipher;
import settlemark.profile.Curve;
import settlemark.profile.Example;
import settlemark.profile.FactSource;
import settlemark.profile.Field;
import settlemark.profile.FieldRef;
import settlemark.profile.Framing;
import settlemark.profile.Message;
import settlemark.profile.Profile;
import settlemark.profile.Secrets;
import settlemark.profile.Source;
import settlemark.profile.Tagged;
import settlemark.profile.Wire;

/** A message with its channels, facts and examples, made in code. */
final class Made {
    static final Wire U8 = wire(Wire.Kind.UNSIGNED, 1);
    static final Wire U16 = wire(Wire.Kind.UNSIGNED, 2);
    static final Wire S16 = wire(Wire.Kind.SIGNED, 2);
    static final Checksum MODBUS_CRC = new Checksum(
            new Checksum.Crc(16, 0x8005, 0xFFFF, true, true, 0), Wire.Order.LITTLE, 0, 0, false, ByteText.EMPTY, 1);

    private record Shown(String id, Unit unit, int sign, List<String> fields) {}

    private record Fact(String id, String field) {}

    private final String id;
    private final Framing framing;
    private Source source = new Source.Unasked();
    private Optional<Framing.Columns> columns = Optional.empty();
    private Optional<Tagged> tagged = Optional.empty();
    private Optional<Checksum> checksum = Optional.empty();
    private Optional<Cipher> cipher = Optional.empty();
    private final List<Field> fields = new ArrayList<>();
    private final List<Shown> channels = new ArrayList<>();
    private final List<Fact> facts = new ArrayList<>();
    private final List<Example> examples = new ArrayList<>();

    private Made(String id, Framing framing) {
        this.id = id;
        this.framing = framing;
    }

    static Made message(Framing framing) {
        return new Made("frame", framing);
    }

    static Made message(String id, Framing framing) {
        return new Made(id, framing);
    }

    static Wire wire(Wire.Kind kind, int bytes) {
        return new Wire(kind, bytes, Wire.Order.LITTLE);
    }

    static byte[] hex(String digits) {
        return HexFormat.of().parseHex(digits.replace(" ", ""));
    }

    static Field.Binary number(Wire wire) {
        return number(wire, Curve.IDENTITY);
    }

    static Field.Binary number(Wire wire, Curve curve) {
        return new Field.Binary(wire, Optional.empty(), -1, curve, Map.of(), false);
    }

    static Field.Binary scaled(Wire wire, double scale) {
        return number(wire, new Curve.Linear(scale, 0));
    }

    static Field.Binary bits(Wire wire, int from, int count) {
        return new Field.Binary(wire, Optional.of(new Field.Bits(from, count)), -1, Curve.IDENTITY, Map.of(), false);
    }

    static Field.Binary special(Wire wire, SampleStatus status, Long... raws) {
        return new Field.Binary(wire, Optional.empty(), -1, Curve.IDENTITY, Map.of(status, List.of(raws)), false);
    }

    static Field.Decimal decimal() {
        return new Field.Decimal(Curve.IDENTITY, Optional.empty(), false, Map.of());
    }

    static Field.Literal literal(String hex) {
        return new Field.Literal(ByteText.ofHex(hex));
    }

    Made from(Source where) {
        source = where;
        return this;
    }

    Made columns(char separator, int count) {
        columns = Optional.of(new Framing.Columns(separator, count));
        return this;
    }

    Made tagged(Tagged how) {
        tagged = Optional.of(how);
        return this;
    }

    Made checksum(Checksum how) {
        checksum = Optional.of(how);
        return this;
    }

    Made encrypted() {
        cipher = Optional.of(Cipher.BTHOME_V2);
        return this;
    }

    Made field(String name, Field.Place place, Field.Content content) {
        fields.add(new Field(name, place, content, Optional.empty(), 1));
        return this;
    }

    Made at(String name, int offset, Field.Content content) {
        return field(name, new Field.AtByte(offset), content);
    }

    Made tag(String name, long tag, Field.Content content) {
        return field(name, new Field.ByTag(tag, 0, 0), content);
    }

    /** The last field stands there only where another one, described before, has a raw number. */
    Made when(String other, Long... raws) {
        Field last = fields.remove(fields.size() - 1);
        Field.Condition when = new Field.Condition(index(other), List.of(raws));
        fields.add(new Field(last.name(), last.place(), last.content(), Optional.of(when), 1));
        return this;
    }

    Made channel(String channel, Unit unit, int sign, String... of) {
        channels.add(new Shown(channel, unit, sign, List.of(of)));
        return this;
    }

    /** A channel in pascals with the name of its field. */
    Made shown(String... names) {
        for (String name : names) {
            channel(name, Unit.PASCAL, 1, name);
        }
        return this;
    }

    Made fact(String fact, String field) {
        facts.add(new Fact(fact, field));
        return this;
    }

    Made good(String hex, Map<String, Double> gives) {
        return good(hex, gives, Map.of(), Set.of(), Example.Circumstances.NONE);
    }

    Made good(
            String hex,
            Map<String, Double> gives,
            Map<String, String> said,
            Set<String> absent,
            Example.Circumstances circumstances) {
        Map<String, Example.Expected> expected = new java.util.LinkedHashMap<>();
        gives.forEach((name, value) -> expected.put(name, new Example.Expected(value, SampleStatus.OK)));
        return example(hex, expected, said, absent, "", circumstances);
    }

    Made bad(String hex, String rejected, Example.Circumstances circumstances) {
        return example(hex, Map.of(), Map.of(), Set.of(), rejected, circumstances);
    }

    Made example(
            String hex,
            Map<String, Example.Expected> gives,
            Map<String, String> said,
            Set<String> absent,
            String rejected,
            Example.Circumstances circumstances) {
        String name = "example " + (examples.size() + 1);
        examples.add(new Example(name, 0, ByteText.of(hex(hex)), gives, said, absent, rejected, circumstances, 1, 1));
        return this;
    }

    static Example.Circumstances with(Secrets secrets) {
        return new Example.Circumstances(secrets, Optional.empty(), Optional.empty());
    }

    private int index(String name) {
        return IntStream.range(0, fields.size())
                .filter(i -> fields.get(i).name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    Profile profile() {
        return together(this);
    }

    static Profile together(Made... messages) {
        List<ChannelSource> sources = new ArrayList<>();
        List<FactSource> said = new ArrayList<>();
        List<Example> examples = new ArrayList<>();
        for (int m = 0; m < messages.length; m++) {
            int message = m;
            Made made = messages[m];
            for (Shown channel : made.channels) {
                List<FieldRef> refs = channel.fields().stream()
                        .map(name -> new FieldRef(message, made.index(name)))
                        .toList();
                sources.add(new ChannelSource(made.channel(channel), refs, channel.sign(), 1));
            }
            made.facts.forEach(fact ->
                    said.add(new FactSource(fact.id(), fact.id(), new FieldRef(message, made.index(fact.field())), 1)));
            made.examples.forEach(e -> examples.add(new Example(
                    e.name(),
                    message,
                    e.bytes(),
                    e.gives(),
                    e.facts(),
                    e.absent(),
                    e.rejected(),
                    e.circumstances(),
                    e.line(),
                    e.column())));
        }
        return new Profile(
                "made",
                "Made",
                "",
                false,
                "0".repeat(64),
                "",
                List.of(),
                Optional.empty(),
                List.of(),
                List.of(),
                Arrays.stream(messages).map(Made::built).toList(),
                sources,
                said,
                examples);
    }

    private Channel channel(Shown channel) {
        return new Channel(
                channel.id(),
                channel.id(),
                channel.unit().dimension(),
                channel.unit(),
                Double.NaN,
                Accuracy.UNKNOWN,
                Double.NaN,
                Double.NaN,
                0);
    }

    private Message built() {
        return new Message(id, source, framing, columns, tagged, checksum, cipher, fields, 1);
    }

    /** Values and statuses with all channels OK. */
    static SampleStatus[] ok(int channels) {
        SampleStatus[] ok = new SampleStatus[channels];
        Arrays.fill(ok, SampleStatus.OK);
        return ok;
    }

    /** The value of a status's channel, null for what a frame does not give. */
    static @Nullable SampleStatus[] none(int channels) {
        return new SampleStatus[channels];
    }
}
