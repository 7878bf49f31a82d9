package settlemark.record;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import settlemark.chart.TimeLabels;
import settlemark.session.SessionHeader;

/** Session time as wall-clock time of the place. */
final class Times {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);
    private static final DateTimeFormatter SECOND = DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final DateTimeFormatter WHOLE = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss", Locale.ROOT);
    private static final DateTimeFormatter OFFSET = DateTimeFormatter.ofPattern("xxx", Locale.ROOT);

    private final SessionHeader header;
    private long second = Long.MIN_VALUE;
    private String beforePoint = "";
    private String afterPoint = "";
    private @Nullable ZoneOffset offsetSaid;

    Times(SessionHeader header) {
        this.header = header;
    }

    private Instant instant(long nanos) {
        return header.startedAt().plusNanos(nanos);
    }

    /** The place's offset when the session began; a page keeps it throughout. */
    ZoneOffset offset() {
        return header.zone().getRules().getOffset(header.startedAt());
    }

    /** {@code UTC-05:00}. */
    String offsetWords() {
        return "UTC" + (offset().getTotalSeconds() == 0 ? "" : offset().getId().replace('-', '\u2212'));
    }

    TimeLabels labels() {
        return new TimeLabels.WallClock(header.startedAt(), offset());
    }

    String day() {
        return DAY.format(instant(0).atOffset(offset()));
    }

    /** The day of the place on which the session began. */
    LocalDate date() {
        return instant(0).atOffset(offset()).toLocalDate();
    }

    /** {@code 3 May 2026, 09:31}, with the offset in force at that moment. */
    String dayAndMinute(Instant at) {
        ZoneOffset then = header.zone().getRules().getOffset(at);
        return DAY.format(at.atOffset(then)) + ", " + MINUTE.format(at.atOffset(then));
    }

    /** By hand, as it is asked for each second of each channel; years that need a sign are left to a formatter. */
    private static String whole(LocalDateTime at) {
        if (at.getYear() < 1000 || at.getYear() > 9999) {
            return WHOLE.format(at);
        }
        StringBuilder text = new StringBuilder(32).append(at.getYear());
        two('-', at.getMonthValue(), text);
        two('-', at.getDayOfMonth(), text);
        two('T', at.getHour(), text);
        two(':', at.getMinute(), text);
        two(':', at.getSecond(), text);
        return text.toString();
    }

    private static void two(char before, int number, StringBuilder into) {
        into.append(before).append((char) ('0' + number / 10)).append((char) ('0' + number % 10));
    }

    String clock(long nanos) {
        return SECOND.format(instant(nanos).atOffset(offset()));
    }

    String minute(long nanos) {
        return MINUTE.format(instant(nanos).atOffset(offset()));
    }

    /** ISO 8601 with the offset in force at that moment, milliseconds cut. */
    String iso(long nanos) {
        StringBuilder text = new StringBuilder();
        iso(nanos, text);
        return text.toString();
    }

    /** The same at the end of a text. */
    void iso(long nanos, StringBuilder into) {
        Instant at = instant(nanos);
        if (at.getEpochSecond() != second) {
            // Many samples fall into one second, and a second has one offset.
            second = at.getEpochSecond();
            OffsetDateTime whole = OffsetDateTime.ofInstant(Instant.ofEpochSecond(second), header.zone());
            beforePoint = whole(whole.toLocalDateTime());
            if (!whole.getOffset().equals(offsetSaid)) {
                offsetSaid = whole.getOffset();
                afterPoint = OFFSET.format(whole);
            }
        }
        int millis = at.getNano() / 1_000_000;
        into.append(beforePoint)
                .append(millis < 10 ? ".00" : millis < 100 ? ".0" : ".")
                .append(millis)
                .append(afterPoint);
    }
}
