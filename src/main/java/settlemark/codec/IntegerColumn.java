package settlemark.codec;

import java.util.Arrays;

/**
 * Whole numbers in groups of 128, each of which can be read without those before it: the starts of all groups, the
 * groups' lengths in bits, and then the groups as {@link Rests}. A column of one group has no lengths; the starts and the
 * lengths of more are such columns themselves.
 */
final class IntegerColumn {
    static final int GROUP = 128;

    private final BitReader in;
    private final int count;
    private final long[] starts;

    /** Where each group begins, and the end of the last. */
    private final long[] places;

    /** All numbers, where there is but one group. */
    private final long[] numbers;

    private IntegerColumn(BitReader in, int count, long[] starts, long[] places, long[] numbers) {
        this.in = in;
        this.count = count;
        this.starts = starts;
        this.places = places;
        this.numbers = numbers;
    }

    static void write(BitWriter out, long[] numbers) {
        write(out, numbers, Effort.THOROUGH);
    }

    /** @param numbers at least one */
    static void write(BitWriter out, long[] numbers, Effort effort) {
        int groups = groups(numbers.length);
        long[][] room = new long[Guess.values().length][GROUP];
        if (groups == 1) {
            BitWriter body = new BitWriter();
            out.signed(
                    effort == Effort.QUICK
                            ? Rests.writeQuickly(body, numbers, 0, numbers.length, room[0])
                            : Rests.write(body, numbers, 0, numbers.length, numbers[0], 0, room));
            out.append(body);
            return;
        }
        long[] starts = new long[groups];
        long[] lengths = new long[groups];
        BitWriter bodies = new BitWriter();
        Guess.Runner runner = new Guess.Runner(numbers[0]);
        for (int group = 0; group < groups; group++) {
            int from = group * GROUP;
            int to = end(group, numbers.length);
            long before = bodies.size();
            if (effort == Effort.QUICK) {
                starts[group] = Rests.writeQuickly(bodies, numbers, from, to, room[0]);
            } else {
                starts[group] = Rests.write(bodies, numbers, from, to, runner.start(), runner.slope(), room);
                runner.run(numbers, from, to);
            }
            lengths[group] = bodies.size() - before;
        }
        write(out, starts, effort);
        write(out, lengths, effort);
        out.append(bodies);
    }

    private static int groups(int count) {
        return (count + GROUP - 1) / GROUP;
    }

    private static int end(int group, int count) {
        return Math.min(count, (group + 1) * GROUP);
    }

    /** Goes to the column's end; the numbers are read when they are asked for. */
    static IntegerColumn open(BitReader in, int count) {
        int groups = groups(count);
        if (groups == 1) {
            long[] numbers = new long[count];
            long start = in.signed();
            Rests.read(in, numbers, 0, count, start);
            return new IntegerColumn(in, count, new long[0], new long[0], numbers);
        }
        long[] starts = read(in, groups);
        long[] lengths = read(in, groups);
        long[] places = new long[groups + 1];
        places[0] = in.at();
        for (int group = 0; group < groups; group++) {
            if (lengths[group] < 0) {
                throw new IllegalArgumentException("a group of numbers has a length of " + lengths[group]);
            }
            places[group + 1] = places[group] + lengths[group];
            in.goTo(places[group + 1]);
        }
        return new IntegerColumn(in, count, starts, places, new long[0]);
    }

    static long[] read(BitReader in, int count) {
        IntegerColumn column = open(in, count);
        return column.starts.length == 0 ? column.numbers : column.all();
    }

    long[] all() {
        return range(0, count);
    }

    /** Those from one on and before another. */
    long[] range(int from, int to) {
        if (starts.length == 0) {
            return Arrays.copyOfRange(numbers, from, to);
        }
        int first = from / GROUP * GROUP;
        int last = Math.min(count, groups(to) * GROUP);
        long[] some = new long[last - first];
        for (int at = first; at < last; at += GROUP) {
            int group = at / GROUP;
            in.goTo(places[group]);
            Rests.read(in, some, at - first, end(group, count) - first, starts[group]);
            if (in.at() != places[group + 1]) {
                throw new IllegalArgumentException("a group of numbers is not as long as is said");
            }
        }
        in.goTo(places[places.length - 1]);
        return first == from && last == to ? some : Arrays.copyOfRange(some, from - first, to - first);
    }
}
