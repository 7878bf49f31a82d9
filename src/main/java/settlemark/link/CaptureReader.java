package settlemark.link;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import settlemark.link.CaptureWords.DamageException;
import settlemark.session.CaptureProblem;
import settlemark.session.CaptureReading;
import settlemark.session.CaptureSink;

/**
 * Reads captures that {@link CaptureWriter} wrote and a person may have edited. Garbage is a problem with its line and
 * column, never an exception; whatever else the file holds is read all the same, in memory that does not grow with it.
 *
 * <pre>
 * settlemark-capture 1
 * start 2026-03-02T09:15:00+01:00[Europe/Berlin]
 * probe gauge demo-gauge sha256:5f1d... serial:/dev/ttyUSB0
 * 0.012345678 gauge up listening on /dev/ttyUSB0
 * 0.104300000 gauge 0 50 31 20 2B 36
 * end 20.000000000
 * </pre>
 */
public final class CaptureReader {
    private final CaptureLines lines;
    private final CaptureLimits limits;
    private final CaptureSink sink;
    private final CaptureHead head;
    private final CaptureEvents events;
    private long damagedLines;
    private boolean begun;
    private boolean ended;
    private boolean cutShort;

    private CaptureReader(Reader in, CaptureSink sink, CaptureLimits limits) {
        this.lines = new CaptureLines(in, limits.lineCharacters());
        this.limits = limits;
        this.sink = sink;
        this.head = new CaptureHead(limits.probes());
        this.events = new CaptureEvents(head, sink);
    }

    /**
     * Reads a capture to its end.
     *
     * @param in its bytes, UTF-8; not closed here
     * @throws IOException where the file itself cannot be read
     */
    public static CaptureReading read(InputStream in, CaptureSink sink) throws IOException {
        return read(new InputStreamReader(in, StandardCharsets.UTF_8), sink, CaptureLimits.DEFAULT);
    }

    static CaptureReading read(Reader in, CaptureSink sink, CaptureLimits limits) throws IOException {
        return new CaptureReader(in, sink, limits).readAll();
    }

    private CaptureReading readAll() throws IOException {
        if (isCapture()) {
            while (lines.next()) {
                line();
            }
            begin();
            if (!ended && !cutShort) {
                early(
                        lines.number() + 1,
                        "no end line: the capture was not closed or is still being written; what came in"
                                + " its last second may be missing");
            }
        }
        return new CaptureReading(events.count(), damagedLines, ended);
    }

    private boolean isCapture() throws IOException {
        boolean any = lines.next();
        CaptureWords words = new CaptureWords(any ? lines.text() : "");
        if (!words.word().equals(CaptureText.FORMAT)) {
            damaged(
                    Math.max(1, lines.number()),
                    words.damage("this is no capture: its first line must be \"" + CaptureText.FORMAT + " "
                            + CaptureText.VERSION + "\""));
            return false;
        }
        String version = words.word();
        if (!version.equals(CaptureText.VERSION)) {
            damaged(
                    1,
                    words.damage("a capture of version " + CaptureText.VERSION + " is expected, got "
                            + CaptureWords.shown(version) + ": read it with a newer version of the program"));
            return false;
        }
        return true;
    }

    private void line() {
        CaptureWords words = new CaptureWords(lines.text());
        if (words.isRemark() && !lines.tooLong()) {
            return;
        }
        try {
            if (lines.tooLong()) {
                throw new DamageException(
                        limits.lineCharacters() + 1,
                        "the line is longer than " + limits.lineCharacters() + " characters and is left out",
                        false);
            }
            if (ended) {
                throw new DamageException(1, "nothing may follow the end line; this line is left out", false);
            }
            read(words);
        } catch (DamageException e) {
            if (lines.terminated()) {
                damaged(lines.number(), e);
                hole(e);
            } else {
                cutShort();
            }
        }
    }

    /** A last line without its end may have lost more than its end, so it counts only where nothing can be missing. */
    private void read(CaptureWords words) throws DamageException {
        String first = words.word();
        if (first.equals(CaptureText.END)) {
            ended = true;
            return;
        }
        if (!lines.terminated()) {
            cutShort();
            return;
        }
        switch (first) {
            case CaptureText.START -> head.start(inHead(words));
            case CaptureText.PROBE -> head.probe(inHead(words));
            default -> {
                long nanos = CaptureText.nanos(first)
                        .orElseThrow(() -> words.damage("a line begins with a time in seconds,"
                                + " start, probe or end, got " + CaptureWords.shown(first) + "; it is left out"));
                begin();
                events.read(nanos, words);
            }
        }
    }

    private CaptureWords inHead(CaptureWords words) throws DamageException {
        if (begun) {
            throw words.damage("start and probe stand before the first time; this line is left out");
        }
        return words;
    }

    private void begin() {
        if (!begun) {
            begun = true;
            sink.begun(head.header());
        }
    }

    private void hole(DamageException damage) {
        if (begun && !damage.used()) {
            events.hole(lines.number());
        }
    }

    private void cutShort() {
        cutShort = true;
        early(lines.number(), "the last line is cut short, as by a killed program: it is left out");
    }

    private void early(long line, String message) {
        sink.problem(new CaptureProblem(line, 1, false, message));
    }

    private void damaged(long line, DamageException damage) {
        damagedLines++;
        if (damagedLines <= limits.problems()) {
            String message = damagedLines < limits.problems()
                    ? damage.message()
                    : damage.message() + " (further problems are only counted)";
            sink.problem(new CaptureProblem(line, damage.column(), true, message));
        }
    }
}
