package settlemark.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import settlemark.codec.Groups;
import settlemark.codec.PackedGroups;
import settlemark.session.Damage;
import settlemark.session.SampleBlock;
import settlemark.session.Span;
import settlemark.session.StoreException;

/**
 * Checks the samples of one session or rereading: every block's numbering, digests, size and statistics, the levels above
 * them, the frames, and that there are as many samples as the probes' rows count. Within the caller's transaction.
 */
final class SeriesCheck {
    /** More blocks in a row cannot be lost; a number so far ahead is itself the damage. */
    private static final long MOST_MISSING = 1 << 20;

    private final Connection connection;
    private final Results results;
    private final long key;
    private final String name;
    private final List<ProbeFacts> probes;
    private final Survey survey;
    private final Findings findings;
    private final Map<Integer, Long> counted = new TreeMap<>();
    private long samples;

    /** @param name such as {@code session 3} */
    SeriesCheck(
            Connection connection,
            Results results,
            long key,
            String name,
            List<ProbeFacts> probes,
            Survey survey,
            Findings findings) {
        this.connection = connection;
        this.results = results;
        this.key = key;
        this.name = name;
        this.probes = probes;
        this.survey = survey;
        this.findings = findings;
    }

    /** Samples that can be read. */
    long run() throws SQLException, StoreException {
        Map<Integer, List<BlockPlace>> blocks = new TreeMap<>();
        for (BlockPlace place : survey.samples(results, key)) {
            blocks.computeIfAbsent(place.probe(), p -> new ArrayList<>()).add(place);
        }
        Map<Integer, Map<String, Long>> summaries = new HashMap<>();
        for (Survey.SummaryPlace row : survey.summaries(results, key)) {
            summaries
                    .computeIfAbsent(row.probe(), p -> new HashMap<>())
                    .put(row.level() + " " + row.number(), row.id());
        }
        Set<Integer> all = new HashSet<>(blocks.keySet());
        all.addAll(summaries.keySet());
        for (int probe : all) {
            blocks(probe, blocks.getOrDefault(probe, List.of()), summaries.getOrDefault(probe, new HashMap<>()));
        }
        new FrameCheck(connection, results, key, this::frame, this::damage).run();
        counts();
        return samples;
    }

    private ProbeFacts facts(int probe) {
        return probe >= 0 && probe < probes.size() ? probes.get(probe) : ProbeFacts.unknown(probe);
    }

    /** @param probe and channel {@link BlockContent#ALL} where it is of none or all */
    private void damage(int probe, int channel, @Nullable Span span, String words) {
        ProbeFacts facts = facts(probe);
        findings.add(new Damage(
                name,
                probe == BlockContent.ALL ? "" : facts.name(),
                channel == BlockContent.ALL ? "" : facts.channel(channel),
                Optional.ofNullable(span),
                words));
    }

    private void blocks(int probe, List<BlockPlace> places, Map<String, Long> summaries)
            throws SQLException, StoreException {
        if (probe < 0 || probe >= probes.size()) {
            damage(probe, BlockContent.ALL, null, "it has samples, and " + name + " has no such probe");
        }
        Levels levels = new Levels((level, number, expected) ->
                summary(probe, level, number, expected, summaries.remove(level + " " + number)));
        long expected = 0;
        long end = places.isEmpty() ? 0 : places.get(0).span().fromNanos();
        for (BlockPlace place : places) {
            if (place.number() < expected || place.number() - expected > MOST_MISSING) {
                damage(
                        probe,
                        BlockContent.ALL,
                        place.span(),
                        "a block has the number " + place.number() + " where block " + expected + " must come");
                continue;
            }
            if (place.number() > expected) {
                missing(
                        probe,
                        expected,
                        place.number() - 1,
                        new Span(end, place.span().fromNanos()));
                for (; expected < place.number(); expected++) {
                    levels.add(0, List.of());
                }
            }
            levels.add(0, block(place));
            end = place.span().toNanos();
            expected = place.number() + 1;
        }
        for (String left : summaries.keySet()) {
            damage(probe, BlockContent.ALL, null, "statistics of level and number " + left + " have no blocks");
        }
    }

    private void missing(int probe, long first, long last, Span between) {
        String which = first == last ? "block " + first + " of samples is" : "blocks " + first + " to " + last + " are";
        damage(probe, BlockContent.ALL, between, which + " missing, up to " + Sealing.ROWS + " samples a channel each");
    }

    /** Returns its statistics as they are stored; empty where they cannot be read. */
    private List<Groups> block(BlockPlace place) throws SQLException, StoreException {
        byte[] block;
        byte[] statistics;
        try (PreparedStatement select =
                connection.prepareStatement(results.sql("SELECT block, summary FROM {t}sample_block WHERE id = ?"))) {
            select.setLong(1, place.id());
            try (ResultSet row = select.executeQuery()) {
                row.next();
                StoredRow read = StoredRow.of(row, 2);
                block = read.bytes(0);
                statistics = read.bytes(1);
            }
        } catch (SQLException e) {
            RowScan.requireDamage(e);
            damage(place.probe(), BlockContent.ALL, place.span(), "samples cannot be read: " + e.getMessage());
            return List.of();
        } catch (IllegalArgumentException e) {
            damage(place.probe(), BlockContent.ALL, place.span(), "samples cannot be read: " + e.getMessage());
            return List.of();
        }
        BlockContent content = BlockContent.of(block, place.span());
        content.broken().forEach(b -> damage(place.probe(), b.channel(), b.span(), b.words()));
        limits(place, content);
        return statistics(place, content, statistics);
    }

    private void limits(BlockPlace place, BlockContent content) {
        long low = Long.MAX_VALUE;
        long high = Long.MIN_VALUE;
        for (SampleBlock block : content.samples()) {
            count(block);
            if (block.probe() != place.probe()) {
                damage(place.probe(), BlockContent.ALL, place.span(), "the block holds samples of another probe");
            }
            if (block.size() > Sealing.ROWS) {
                damage(
                        place.probe(),
                        block.channel(),
                        place.span(),
                        "the block holds " + block.size() + " samples, and at most " + Sealing.ROWS + " are sealed");
            }
            for (long time : block.timesNanos()) {
                low = Math.min(low, time);
                high = Math.max(high, time);
            }
        }
        boolean all = content.broken().isEmpty();
        if (all && (low != place.span().fromNanos() || high != place.span().toNanos())) {
            damage(
                    place.probe(),
                    BlockContent.ALL,
                    new Span(Math.min(low, high), high),
                    "the row says that the block goes from " + place.span().fromNanos() + " to "
                            + place.span().toNanos() + " ns, and it goes from " + low + " to " + high + " ns");
        }
    }

    private List<Groups> statistics(BlockPlace place, BlockContent content, byte[] statistics) {
        List<Groups> stored;
        try {
            stored = PackedGroups.of(statistics).all();
        } catch (IllegalArgumentException e) {
            damage(place.probe(), BlockContent.ALL, place.span(), "statistics cannot be read: " + e.getMessage());
            return List.of();
        }
        if (content.broken().isEmpty()) {
            List<Groups> expected = content.samples().stream()
                    .map(b -> Groups.of(b, Sealing.SAMPLES_PER_GROUP))
                    .toList();
            Levels.difference(expected, stored)
                    .ifPresent(channel -> damage(
                            place.probe(), channel, place.span(), "the statistics are not those of the samples"));
        }
        return stored;
    }

    private List<Groups> summary(int probe, int level, long number, List<Groups> expected, @Nullable Long id)
            throws SQLException {
        String what = "statistics " + number + " of level " + level;
        Span span = span(expected);
        if (id == null) {
            damage(probe, BlockContent.ALL, span, what + " are missing");
            return expected;
        }
        try (PreparedStatement select =
                connection.prepareStatement(results.sql("SELECT block FROM {t}summary WHERE id = ?"))) {
            select.setLong(1, id);
            try (ResultSet row = select.executeQuery()) {
                row.next();
                List<Groups> stored =
                        PackedGroups.of(StoredRow.of(row, 1).bytes(0)).all();
                if (!expected.isEmpty()) {
                    Levels.difference(expected, stored)
                            .ifPresent(c -> damage(probe, c, span, what + " are not those of the level below"));
                }
                return stored;
            }
        } catch (IllegalArgumentException e) {
            damage(probe, BlockContent.ALL, span, what + " cannot be read: " + e.getMessage());
        } catch (SQLException e) {
            RowScan.requireDamage(e);
            damage(probe, BlockContent.ALL, span, what + " cannot be read: " + e.getMessage());
        }
        return expected;
    }

    private static @Nullable Span span(List<Groups> groups) {
        long low = Long.MAX_VALUE;
        long high = Long.MIN_VALUE;
        for (Groups channel : groups) {
            for (int i = 0; i < channel.size(); i++) {
                low = Math.min(low, channel.lows()[i]);
                high = Math.max(high, channel.highs()[i]);
            }
        }
        return low > high ? null : new Span(low, high);
    }

    private void frame(SampleBlock block) {
        count(block);
        if (block.probe() < 0 || block.probe() >= probes.size()) {
            damage(block.probe(), BlockContent.ALL, null, "it has samples, and " + name + " has no such probe");
        }
    }

    private void count(SampleBlock block) {
        samples += block.size();
        counted.merge(block.probe(), (long) block.size(), Long::sum);
        List<String> channels = facts(block.probe()).channels();
        if (!channels.isEmpty() && block.channel() >= channels.size()) {
            damage(block.probe(), block.channel(), null, "its profile has " + channels.size() + " channels");
        }
    }

    private void counts() {
        for (int probe = 0; probe < probes.size(); probe++) {
            long said = probes.get(probe).samples();
            long found = counted.getOrDefault(probe, 0L);
            if (said >= 0 && said != found) {
                damage(probe, BlockContent.ALL, null, said + " samples were stored, and " + found + " can be read");
            }
        }
    }
}
