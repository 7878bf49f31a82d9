package settlemark.ui;

import java.time.Duration;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Moments of a stored session in words. */
final class ReviewTimes {
    /** Below this length of the stretch, thousandths of a second count. */
    private static final long FINE_NANOS = 20_000_000_000L;

    private ReviewTimes() {}

    /** As the clock at the place said. */
    static String clock(StoredSession session, long timeNanos, boolean day) {
        ZonedDateTime at = session.header()
                .startedAt()
                .plusNanos(timeNanos)
                .atZone(session.header().zone());
        return at.format(DateTimeFormatter.ofPattern(day ? "d MMM HH:mm:ss" : "HH:mm:ss", Words.locale()));
    }

    /** The time at the line, as finely as the stretch is. */
    static String at(ReviewScene scene) {
        long length = scene.view().toNanos() - scene.view().fromNanos();
        String text = clock(scene.session(), scene.lineNanos(), true);
        if (length >= FINE_NANOS) {
            return text;
        }
        Instant at = scene.session().header().startedAt().plusNanos(scene.lineNanos());
        return text + String.format(Locale.ROOT, ".%03d", at.getNano() / 1_000_000);
    }

    /** A length with its two largest parts, such as {@code 2 h 14 min}. */
    static String length(long nanos) {
        Duration length = Duration.ofNanos(nanos);
        if (length.toDays() > 0) {
            return parts(length.toDays(), "d", length.toHours() % 24, "h");
        }
        if (length.toHours() > 0) {
            return parts(length.toHours(), "h", length.toMinutes() % 60, "min");
        }
        if (length.toMinutes() > 0) {
            return parts(length.toMinutes(), "min", length.toSeconds() % 60, "s");
        }
        return length.toMillis() < 1000 ? length.toMillis() + " ms" : length.toSeconds() + " s";
    }

    private static String parts(long large, String unit, long small, String smallUnit) {
        return large + " " + unit + (small == 0 ? "" : " " + small + " " + smallUnit);
    }
}
