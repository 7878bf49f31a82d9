package settlemark.codec;

import java.util.Arrays;

/**
 * Whole numbers in groups of 64, each of which can be read without those before it: the first numbers of all groups, the
 * groups' lengths in bits, and then the groups as {@link Rests}. A column of one group has no lengths; the first numbers
 * and the lengths of more are such columns themselves.
 */
final class IntegerColumn {
    static final int GROUP = 64;

    private final BitReader in;
    private final int count;
    private final long[] starts;

    /** Where each group begins, and the end of the last. */
    private final long[] places;

    private IntegerColumn(BitReader in, int count, long[] starts, long[] places) {
        this.in = in;
        this.count = count;
        this.starts = starts;
        this.places = places;
    }

    /** @param numbers at least one */
    static void write(BitWriter out, long[] numbers) {
        int groups = groups(numbers.length);
        long[][] room = new long[Guess.values().length][GROUP];
        if (groups == 1) {
            out.signed(numbers[0]);
            Rests.write(out, numbers, 0, numbers.length, room);
            return;
        }
        long[] starts = new long[groups];
        long[] lengths = new long[groups];
        BitWriter bodies = new BitWriter();
        for (int group = 0; group < groups; group++) {
            int from = group * GROUP;
            long before = bodies.size();
            starts[group] = numbers[from];
            Rests.write(bodies, numbers, from, Math.min(numbers.length, from + GROUP), room);
            lengths[group] = bodies.size() - before;
        }
        write(out, starts);
        write(out, lengths);
        out.append(bodies);
    }

    private static int groups(int count) {
        return (count + GROUP - 1) / GROUP;
    }

    /** Goes to the column's end; the numbers are read when they are asked for. */
    static IntegerColumn open(BitReader in, int count) {
        int groups = groups(count);
        if (groups == 1) {
            long[] numbers = new long[count];
            numbers[0] = in.signed();
            Rests.read(in, numbers, 0, count);
            return new IntegerColumn(in, count, numbers, new long[0]);
        }
        long[] starts = open(in, groups).all();
        long[] lengths = open(in, groups).all();
        long[] places = new long[groups + 1];
        places[0] = in.at();
        for (int group = 0; group < groups; group++) {
            if (lengths[group] < 0) {
                throw new IllegalArgumentException("a group of numbers has a length of " + lengths[group]);
            }
            places[group + 1] = places[group] + lengths[group];
            in.goTo(places[group + 1]);
        }
        return new IntegerColumn(in, count, starts, places);
    }

    static long[] read(BitReader in, int count) {
        return open(in, count).all();
    }

    long[] all() {
        return range(0, count);
    }

    /** Those from one on and before another. */
    long[] range(int from, int to) {
        if (places.length == 0) {
            return from == 0 && to == count ? starts : Arrays.copyOfRange(starts, from, to);
        }
        int first = from / GROUP * GROUP;
        int last = Math.min(count, groups(to) * GROUP);
        long[] numbers = new long[last - first];
        for (int at = first; at < last; at += GROUP) {
            int group = at / GROUP;
            in.goTo(places[group]);
            numbers[at - first] = starts[group];
            Rests.read(in, numbers, at - first, Math.min(last, at + GROUP) - first);
            if (in.at() != places[group + 1]) {
                throw new IllegalArgumentException("a group of numbers is not as long as is said");
            }
        }
        in.goTo(places[places.length - 1]);
        return first == from && last == to ? numbers : Arrays.copyOfRange(numbers, from - first, to - first);
    }
}
