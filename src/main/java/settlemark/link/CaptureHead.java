package settlemark.link;

import java.time.DateTimeException;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import settlemark.link.CaptureWords.DamageException;
import settlemark.session.CaptureHeader;

/** What stands before the first event of a capture. */
final class CaptureHead {
    private static final Pattern DIGEST = Pattern.compile(CaptureText.DIGEST + "[0-9a-f]{64}");

    private final int most;
    private final List<CaptureHeader.Probe> probes = new ArrayList<>();
    private Optional<ZonedDateTime> start = Optional.empty();

    CaptureHead(int mostProbes) {
        this.most = mostProbes;
    }

    CaptureHeader header() {
        return new CaptureHeader(start, probes);
    }

    int probeCount() {
        return probes.size();
    }

    /** Index of a probe, negative where there is none of this name. */
    int indexOf(String name) {
        for (int i = 0; i < probes.size(); i++) {
            if (probes.get(i).name().equals(name)) {
                return i;
            }
        }
        return -1;
    }

    String names() {
        return probes.isEmpty()
                ? "no probe line stands before it"
                : "the probes are "
                        + String.join(
                                ", ",
                                probes.stream().map(CaptureHeader.Probe::name).toList());
    }

    void start(CaptureWords words) throws DamageException {
        String time = words.word();
        try {
            start = Optional.of(ZonedDateTime.parse(time, DateTimeFormatter.ISO_ZONED_DATE_TIME));
        } catch (DateTimeException e) {
            throw words.damage(
                    "start must be a time such as 2026-03-02T09:15:00+01:00, got " + CaptureWords.shown(time));
        }
    }

    /** Whatever else is wrong with the line, a probe with a good name is kept, so that its bytes are. */
    void probe(CaptureWords words) throws DamageException {
        String name = words.word();
        if (!CaptureHeader.Probe.isName(name)) {
            throw words.damage("a probe's name is " + CaptureHeader.NAME_WORDS + "; got " + CaptureWords.shown(name));
        }
        if (indexOf(name) >= 0) {
            throw words.damage("there is a probe " + name + " already; each needs its own name");
        }
        if (probes.size() == most) {
            throw words.damage("a capture holds " + most + " probes at most; this one is left out");
        }
        String profile = known(words.word());
        String digest = known(words.word());
        boolean good = digest.isEmpty() || DIGEST.matcher(digest).matches();
        DamageException bad = words.damage("a profile's digest is " + CaptureText.DIGEST
                + " and 64 lower-case hexadecimal digits, got " + CaptureWords.shown(digest));
        String bare = good && !digest.isEmpty() ? digest.substring(CaptureText.DIGEST.length()) : "";
        probes.add(new CaptureHeader.Probe(name, profile, bare, words.rest()));
        if (!good) {
            throw bad;
        }
    }

    private static String known(String word) {
        return word.equals(CaptureText.UNKNOWN) ? "" : word;
    }
}
