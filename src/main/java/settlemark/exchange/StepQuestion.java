package settlemark.exchange;

import com.google.re2j.Matcher;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import settlemark.profile.ByteText;
import settlemark.profile.Step;

/**
 * A step in bytes: what it sends, and what must be found in what comes back.
 *
 * @param send may be none
 * @param expect empty where nothing is waited for
 */
record StepQuestion(ByteText send, Optional<Step.Expect> expect) implements Question {
    @Override
    public byte[] bytes() {
        return send.toBytes();
    }

    @Override
    public String words() {
        return send.isEmpty() ? "waiting" : Quoted.of(send.toBytes());
    }

    @Override
    public String expected() {
        return expect.map(e -> e instanceof Step.ExpectBytes some
                        ? Quoted.of(some.bytes().toBytes())
                        : "a match of " + ((Step.ExpectPattern) e).pattern())
                .orElse("");
    }

    @Override
    public boolean wantsAnswer() {
        return expect.isPresent();
    }

    @Override
    public boolean mayBeRepeated() {
        return true;
    }

    @Override
    public Look look(byte[] bytes, int from, int to) {
        if (expect.isEmpty()) {
            return Look.MORE;
        }
        if (expect.get() instanceof Step.ExpectBytes some) {
            byte[] wanted = some.bytes().toBytes();
            int at = Search.indexOf(bytes, from, to, wanted);
            return at < 0 ? Look.MORE : Look.good(at, at + wanted.length);
        }
        String text = new String(bytes, from, to - from, StandardCharsets.ISO_8859_1);
        Matcher matcher = ((Step.ExpectPattern) expect.get()).pattern().matcher(text);
        return matcher.find() ? Look.good(from + matcher.start(), from + matcher.end()) : Look.MORE;
    }
}
