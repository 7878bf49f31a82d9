package settlemark.decode;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import settlemark.measure.SampleStatus;
import settlemark.profile.Field;

/** A decimal number in characters. */
final class TextNumber implements FieldNumber {
    private final String name;
    private final Field.Decimal content;
    private final Scaling scaling;
    private final Special[] specials;

    TextNumber(String name, Field.Decimal content, int sign) {
        this.name = name;
        this.content = content;
        this.scaling = new Scaling(content.curve(), sign);
        this.specials = Special.all(content.specials());
    }

    @Override
    public @Nullable String read(byte[] bytes, int from, int to, int channel, FrameValues out) {
        double number = NumberText.parse(bytes, from, to);
        for (Special special : specials) {
            if (special.number() == number || equal(special.text(), bytes, from, to)) {
                out.status(channel, special.meaning());
                return null;
            }
        }
        if (Double.isNaN(number)) {
            return name + " must be a number, got " + Ascii.quoted(bytes, from, to);
        }
        out.number(channel, scaling.value(number));
        return null;
    }

    @Override
    public boolean isOneOf(long[] raws, byte[] bytes, int from, int to) {
        double number = NumberText.parse(bytes, from, to);
        for (long raw : raws) {
            if (raw == number) {
                return true;
            }
        }
        return false;
    }

    @Override
    public boolean says(SampleStatus status) {
        return content.specials().containsKey(status);
    }

    @Override
    public String shownRaw(byte[] bytes, int from, int to) {
        return Ascii.quoted(bytes, from, to);
    }

    /** A measurement as it is written; beyond the curve's ends the word for that, where there is one. */
    String text(double value) {
        SampleStatus beyond = scaling.beyond(value);
        if (!scaling.reaches(value) && says(beyond)) {
            return text(beyond);
        }
        BigDecimal number = BigDecimal.valueOf(scaling.raw(value, 0));
        BigDecimal rounded = content.decimals()
                .map(decimals -> number.setScale(decimals, RoundingMode.HALF_EVEN))
                .orElseGet(() -> number.signum() == 0 ? BigDecimal.ZERO : number.stripTrailingZeros());
        String plain = rounded.toPlainString();
        return content.plus() && rounded.signum() >= 0 ? "+" + plain : plain;
    }

    String text(SampleStatus status) {
        return content.specials().getOrDefault(status, List.of()).get(0);
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
        static Special[] all(Map<SampleStatus, List<String>> texts) {
            List<Special> all = new ArrayList<>();
            texts.forEach((status, list) -> list.forEach(text -> {
                byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
                all.add(new Special(bytes, NumberText.parse(bytes, 0, bytes.length), status));
            }));
            return all.toArray(Special[]::new);
        }
    }
}
