package settlemark.store;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import settlemark.codec.Groups;
import settlemark.session.StoreException;

/** Makes the statistics of a probe's upper levels again out of those below, to hold them against the stored ones. */
final class Levels {
    /** So far means may lie apart for the rounding of their sums, as a part of the largest number in the group. */
    private static final double ROUNDING = 1e-9;

    private final Stored stored;

    /** What has come on each level since the last row above it; an empty list stands for what cannot be read. */
    private final List<List<List<Groups>>> pending = new ArrayList<>();

    private final List<Long> next = new ArrayList<>();

    /** Looks at what is stored. */
    @FunctionalInterface
    interface Stored {
        /**
         * @param expected what it must be, empty where that is not known
         * @return what is stored, or else what was expected; empty where neither is known
         */
        List<Groups> check(int level, long number, List<Groups> expected) throws SQLException, StoreException;
    }

    Levels(Stored stored) {
        this.stored = stored;
    }

    /**
     * The next row of a level; level 0 is that of the blocks.
     *
     * @param groups one for each channel; empty where they cannot be read
     */
    void add(int level, List<Groups> groups) throws SQLException, StoreException {
        while (pending.size() <= level) {
            pending.add(new ArrayList<>());
            next.add(0L);
        }
        List<List<Groups>> below = pending.get(level);
        below.add(groups);
        if (below.size() < Sealing.FAN) {
            return;
        }
        List<Groups> expected = merged(below);
        below.clear();
        long number = next.get(level);
        next.set(level, number + 1);
        add(level + 1, stored.check(level + 1, number, expected));
    }

    private static List<Groups> merged(List<List<Groups>> below) {
        if (below.stream().anyMatch(List::isEmpty)) {
            return List.of();
        }
        Map<Integer, List<Groups>> channels = new TreeMap<>();
        for (List<Groups> row : below) {
            for (Groups groups : row) {
                channels.computeIfAbsent(groups.channel(), c -> new ArrayList<>())
                        .add(groups.merged(Sealing.FAN));
            }
        }
        return channels.values().stream().map(Groups::joined).toList();
    }

    /** A channel whose statistics are not those that they must be; empty where all are. */
    static Optional<Integer> difference(List<Groups> expected, List<Groups> found) {
        Map<Integer, Groups> others = new TreeMap<>();
        found.forEach(g -> others.put(g.channel(), g));
        for (Groups groups : expected) {
            Groups other = others.remove(groups.channel());
            if (other == null || !same(groups, other)) {
                return Optional.of(groups.channel());
            }
        }
        return others.keySet().stream().findFirst();
    }

    private static boolean same(Groups a, Groups b) {
        boolean same = a.size() == b.size() && a.probe() == b.probe();
        for (int i = 0; same && i < a.size(); i++) {
            double largest = Math.max(Math.abs(a.mins()[i]), Math.abs(a.maxs()[i]));
            boolean mean = Double.compare(a.means()[i], b.means()[i]) == 0
                    || Math.abs(a.means()[i] - b.means()[i]) <= largest * ROUNDING;
            same = mean
                    && a.lows()[i] == b.lows()[i]
                    && a.highs()[i] == b.highs()[i]
                    && a.counts()[i] == b.counts()[i]
                    && Double.compare(a.mins()[i], b.mins()[i]) == 0
                    && Double.compare(a.maxs()[i], b.maxs()[i]) == 0
                    && Double.compare(a.firsts()[i], b.firsts()[i]) == 0
                    && Double.compare(a.lasts()[i], b.lasts()[i]) == 0;
        }
        return same;
    }
}
