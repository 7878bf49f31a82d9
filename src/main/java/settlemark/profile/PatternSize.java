package settlemark.profile;

import java.util.ArrayDeque;
import java.util.Deque;

/**
 * Estimates how large a pattern's program becomes before it is compiled: the engine writes counted repetitions out, and
 * {@code ((a{1000}){1000}){1000}} in 24 characters would fill the memory. Counts too much rather than too little.
 */
final class PatternSize {
    static final long LIMIT = 10_000;

    private static final long MUCH = 1L << 40;

    private final String pattern;
    /** Sizes of the open groups up to here, innermost last. */
    private final Deque<Long> groups = new ArrayDeque<>();

    private long size;
    private long lastAtom;

    private PatternSize(String pattern) {
        this.pattern = pattern;
    }

    /** Whether a pattern is small enough to compile. Quoting with a backslash and Q hides brackets and is refused. */
    static boolean isSmall(String pattern) {
        return !pattern.contains("\\Q") && new PatternSize(pattern).estimate() <= LIMIT;
    }

    private long estimate() {
        int i = 0;
        while (i < pattern.length()) {
            i = step(i);
        }
        long sum = size;
        for (long open : groups) {
            sum += open;
        }
        return sum;
    }

    /** Takes one element; gives the index after it. */
    private int step(int i) {
        switch (pattern.charAt(i)) {
            case '\\' -> {
                atom(1);
                return i + 2;
            }
            case '[' -> {
                atom(4);
                return classEnd(i + 1);
            }
            case '(' -> {
                groups.push(size);
                size = 0;
                lastAtom = 0;
            }
            case ')' -> {
                long group = size + 2;
                size = groups.isEmpty() ? 0 : groups.pop();
                atom(group);
            }
            case '{' -> {
                return repeat(i + 1);
            }
            default -> atom(1);
        }
        return i + 1;
    }

    private void atom(long cost) {
        lastAtom = cost;
        size = Math.min(MUCH, size + cost);
    }

    private int classEnd(int from) {
        int i = from < pattern.length() && pattern.charAt(from) == '^' ? from + 1 : from;
        int first = i;
        while (i < pattern.length() && (pattern.charAt(i) != ']' || i == first)) {
            i += pattern.charAt(i) == '\\' ? 2 : 1;
        }
        return i + 1;
    }

    /** A count in curly brackets; its largest number multiplies what stands before it. Gives the index after it. */
    private int repeat(int from) {
        int end = pattern.indexOf('}', from);
        String count = end < 0 ? "" : pattern.substring(from, end);
        if (!count.matches("\\d{1,9}(,\\d{0,9})?")) {
            return from;
        }
        long times = 1;
        for (String number : count.split(",", 2)) {
            times = number.isEmpty() ? times : Math.max(times, Long.parseLong(number));
        }
        long repeated = Math.min(MUCH, lastAtom * Math.min(times, 1_000_000));
        size = Math.min(MUCH, size - lastAtom + repeated);
        lastAtom = repeated;
        return end + 1;
    }
}
