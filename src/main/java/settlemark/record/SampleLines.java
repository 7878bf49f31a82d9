package settlemark.record;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import settlemark.measure.Role;
import settlemark.measure.SampleStatus;
import settlemark.measure.Unit;

/** Understands the lines of exported samples one after the other, and holds each to what those before it said. */
final class SampleLines {
    private static final int MOST_CHANNELS = 4096;
    private static final Pattern WHOLE = Pattern.compile("-?\\d{1,19}");
    private static final Pattern KEY = Pattern.compile("[a-z][a-z0-9-]{0,63}");

    /** UCUM ignores an annotation: read by the code alone these would become other units. */
    private static final Map<String, Unit> ANNOTATED = Stream.of(
                    Unit.inchOfWaterAt4C(), Unit.inchOfWaterAt60F(), Unit.inchOfWaterAt20C())
            .collect(Collectors.toMap(Unit::code, u -> u));

    private static final Map<String, SampleStatus> STATUSES = Stream.of(SampleStatus.values())
            .collect(Collectors.toMap(s -> s.name().toLowerCase(Locale.ROOT), s -> s));

    private final Map<List<String>, Integer> byName = new HashMap<>();
    private final List<ImportedSamples.Column> channels = new ArrayList<>();
    private final List<String> firstWords = new ArrayList<>();
    private @Nullable Instant startedAt;
    private ZoneId zone = ZoneOffset.UTC;
    private long samples;
    private long endNanos;
    private int channel;
    private long timeNanos;
    private double value;
    private SampleStatus status = SampleStatus.OK;

    /** A field that does not hold what it must; the message says what that is. */
    static final class WrongFieldException extends Exception {
        private static final long serialVersionUID = 1L;

        private final String column;
        private final String value;

        WrongFieldException(String column, String value, String expected) {
            super(expected);
            this.column = column;
            this.value = value;
        }

        String column() {
            return column;
        }

        String value() {
            return value;
        }
    }

    /** @param fields in the order of {@link SampleColumns#ALL} */
    void take(String[] fields) throws WrongFieldException {
        session(fields[0], fields[1]);
        timeNanos = nanos(fields[3]);
        time(fields[2], timeNanos);
        channel = channel(fields[4], fields[5], fields[6], fields[8]);
        value = number(fields[7]);
        status = status(fields[9]);
        samples++;
        endNanos = Math.max(endNanos, timeNanos);
    }

    int channel() {
        return channel;
    }

    long timeNanos() {
        return timeNanos;
    }

    double value() {
        return value;
    }

    SampleStatus status() {
        return status;
    }

    long samples() {
        return samples;
    }

    ImportedSamples imported() {
        return new ImportedSamples(
                GuardedText.read(firstWords.get(1)),
                firstWords.get(0).equals(SampleColumns.SIMULATED),
                Objects.requireNonNull(startedAt),
                zone,
                channels,
                samples,
                endNanos);
    }

    private void session(String origin, String key) throws WrongFieldException {
        if (firstWords.isEmpty()) {
            if (!origin.equals(SampleColumns.SIMULATED) && !origin.equals(SampleColumns.MEASURED)) {
                throw new WrongFieldException(
                        SampleColumns.ORIGIN, origin, SampleColumns.MEASURED + " or " + SampleColumns.SIMULATED);
            }
            firstWords.addAll(List.of(origin, key));
        }
        same(SampleColumns.ORIGIN, firstWords.get(0), origin);
        same(SampleColumns.SESSION, firstWords.get(1), key);
    }

    private static void same(String column, String first, String now) throws WrongFieldException {
        if (!first.equals(now)) {
            throw new WrongFieldException(column, now, SamplesImport.quoted(first) + " as in the lines before");
        }
    }

    private static long nanos(String text) throws WrongFieldException {
        try {
            if (WHOLE.matcher(text).matches()) {
                return Long.parseLong(text);
            }
        } catch (NumberFormatException e) {
            // told below
        }
        throw new WrongFieldException(SampleColumns.NANOS, text, "whole nanoseconds since the session's beginning");
    }

    private void time(String text, long nanos) throws WrongFieldException {
        try {
            OffsetDateTime time = OffsetDateTime.parse(text);
            Instant start = time.toInstant().minusNanos(nanos);
            if (startedAt == null) {
                startedAt = start;
                zone = time.getOffset();
            } else if (!startedAt.equals(start)) {
                throw new WrongFieldException(
                        SampleColumns.TIME,
                        text,
                        nanos + " ns behind " + startedAt + ", when the lines before say that the session began");
            }
        } catch (DateTimeException | ArithmeticException e) {
            throw new WrongFieldException(
                    SampleColumns.TIME, text, "a time such as 2026-03-14T09:31:00.000000000+01:00");
        }
    }

    private int channel(String probe, String name, String role, String unit) throws WrongFieldException {
        Integer known = byName.get(List.of(probe, name));
        if (known != null) {
            ImportedSamples.Column column = channels.get(known);
            same(SampleColumns.UNIT, column.unit().code(), unit);
            same(SampleColumns.ROLE, column.role().map(Role::word).orElse(""), role);
            return known;
        }
        if (channels.size() == MOST_CHANNELS) {
            throw new WrongFieldException(SampleColumns.CHANNEL, name, "one of at most " + MOST_CHANNELS + " channels");
        }
        channels.add(column(probe, name, role, unit));
        byName.put(List.of(probe, name), channels.size() - 1);
        return channels.size() - 1;
    }

    private static ImportedSamples.Column column(String probe, String name, String role, String code)
            throws WrongFieldException {
        if (probe.isBlank() || probe.length() > 200) {
            throw new WrongFieldException(SampleColumns.PROBE, probe, "a name of 1 to 200 characters");
        }
        if (!KEY.matcher(name).matches()) {
            throw new WrongFieldException(
                    SampleColumns.CHANNEL,
                    name,
                    "a letter and then up to 63 of a-z, 0-9 and -, as profiles name channels");
        }
        Optional<Unit> unit = unit(code);
        if (unit.isEmpty()) {
            throw new WrongFieldException(SampleColumns.UNIT, code, "a UCUM code such as Pa, [in_i'H2O] or [degF]");
        }
        Optional<Role> place = role.isEmpty() ? Optional.empty() : Role.ofWord(role);
        if (!role.isEmpty() && place.map(Role::word).filter(role::equals).isEmpty()) {
            throw new WrongFieldException(
                    SampleColumns.ROLE,
                    role,
                    "empty or one of "
                            + Stream.of(Role.values()).map(Role::word).collect(Collectors.joining(", ")));
        }
        if (place.isPresent() && place.get().dimension() != unit.get().dimension()) {
            throw new WrongFieldException(
                    SampleColumns.ROLE, role, "one that goes with the unit " + SamplesImport.quoted(code));
        }
        return new ImportedSamples.Column(GuardedText.read(probe), name, unit.get(), place);
    }

    private static Optional<Unit> unit(String code) {
        Unit annotated = ANNOTATED.get(code);
        return annotated == null && !code.contains("{") ? Unit.find(code) : Optional.ofNullable(annotated);
    }

    private static double number(String text) throws WrongFieldException {
        try {
            return ExactNumber.read(text);
        } catch (IllegalArgumentException e) {
            throw new WrongFieldException(SampleColumns.VALUE, text, String.valueOf(e.getMessage()));
        }
    }

    private static SampleStatus status(String text) throws WrongFieldException {
        SampleStatus known = STATUSES.get(text);
        if (known == null) {
            throw new WrongFieldException(
                    SampleColumns.STATUS,
                    text,
                    "one of "
                            + String.join(
                                    ", ", STATUSES.keySet().stream().sorted().toList()));
        }
        return known;
    }
}
