package settlemark.decode;

import java.util.List;
import org.jspecify.annotations.Nullable;
import settlemark.measure.SampleStatus;
import settlemark.profile.Field;
import settlemark.profile.Wire;

/** One number of a binary frame as a channel sees it. */
final class BinaryNumber {
    final int offset;
    private final Wire wire;
    private final Scaling scaling;
    private final long[] specials;
    private final SampleStatus[] meanings;

    BinaryNumber(int offset, Field.Binary field, int sign) {
        this.offset = offset;
        this.wire = field.wire();
        this.scaling = new Scaling(field.curve(), sign);
        int count = field.specials().values().stream().mapToInt(List::size).sum();
        this.specials = new long[count];
        this.meanings = new SampleStatus[count];
        int i = 0;
        // In the order of the statuses, so that the first raw number of each comes before its others.
        for (SampleStatus status : SampleStatus.values()) {
            for (long raw : field.specials().getOrDefault(status, List.of())) {
                specials[i] = raw;
                meanings[i++] = status;
            }
        }
    }

    int end() {
        return offset + wire.bytes();
    }

    long raw(byte[] bytes, int from) {
        return RawBits.read(wire, bytes, from + offset);
    }

    SampleStatus status(long raw) {
        for (int i = 0; i < specials.length; i++) {
            if (specials[i] == raw) {
                return meanings[i];
            }
        }
        boolean number = wire.kind() != Wire.Kind.IEEE_FLOAT || Double.isFinite(Double.longBitsToDouble(raw));
        return number ? SampleStatus.OK : SampleStatus.FAULT;
    }

    double value(long raw) {
        return scaling.value(RawBits.value(wire, raw));
    }

    /** Writes a measurement, rounded to the wire's steps; what does not fit becomes over or under range. */
    void write(double value, byte[] bytes, int from) {
        if (wire.kind() == Wire.Kind.IEEE_FLOAT) {
            RawBits.write(wire, Double.doubleToLongBits(scaling.raw(value)), bytes, from + offset);
            return;
        }
        double raw = Math.rint(scaling.raw(value));
        @Nullable Long integer = integer(raw);
        if (integer != null && status(integer) == SampleStatus.OK) {
            RawBits.write(wire, integer, bytes, from + offset);
            return;
        }
        SampleStatus beyond = value > 0 ? SampleStatus.OVER_RANGE : SampleStatus.UNDER_RANGE;
        if (says(beyond)) {
            write(beyond, bytes, from);
        } else {
            RawBits.write(wire, nearest(raw), bytes, from + offset);
        }
    }

    boolean says(SampleStatus status) {
        return List.of(meanings).contains(status);
    }

    void write(SampleStatus status, byte[] bytes, int from) {
        RawBits.write(wire, specials[List.of(meanings).indexOf(status)], bytes, from + offset);
    }

    /** The integer of the wire's kind, null where it does not fit. */
    private @Nullable Long integer(double raw) {
        int bits = 8 * wire.bytes();
        boolean signed = wire.kind() == Wire.Kind.SIGNED;
        double least = signed ? -Math.scalb(1.0, bits - 1) : 0;
        double beyond = Math.scalb(1.0, signed ? bits - 1 : bits);
        if (!(raw >= least && raw < beyond)) {
            return null;
        }
        return raw < 0x1p63 ? (long) raw : (long) (raw - 0x1p63) | Long.MIN_VALUE;
    }

    /** The integer nearest to a number that does not fit or is taken by a special meaning. */
    private long nearest(double raw) {
        int unused = 64 - 8 * wire.bytes();
        boolean signed = wire.kind() == Wire.Kind.SIGNED;
        long most = signed ? Long.MAX_VALUE >> unused : -1L >>> unused;
        long least = signed ? Long.MIN_VALUE >> unused : 0;
        @Nullable Long integer = integer(raw);
        long nearest = integer != null ? integer : raw > 0 ? most : least;
        long step = raw > 0 ? -1 : 1;
        while (status(nearest) != SampleStatus.OK) {
            nearest += step;
        }
        return nearest;
    }
}
