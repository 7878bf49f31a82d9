package settlemark.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import settlemark.codec.PackedRows;
import settlemark.codec.PackedSamples;
import settlemark.session.Damage;
import settlemark.session.SampleBlock;
import settlemark.session.Span;
import settlemark.session.StoreException;

/** Saves the samples of one session or rereading: blocks are sealed anew, with new statistics, and frames made one. */
final class SeriesSalvage {
    private static final Span NEVER = new Span(0, -1);

    private final Connection from;
    private final Connection into;
    private final Results results;
    private final long key;
    private final String name;
    private final List<ProbeFacts> probes;
    private final Survey survey;
    private final Findings lost;
    private final Sealing sealing;
    private final Map<Integer, Long> saved = new TreeMap<>();
    private final OpenPart open = new OpenPart();
    private long lastFrame = -1;
    private long nextSequence;
    private long untilNanos;

    SeriesSalvage(
            Connection from,
            Connection into,
            Failures failures,
            Results results,
            long key,
            String name,
            List<ProbeFacts> probes,
            Survey survey,
            Findings lost) {
        this.from = from;
        this.into = into;
        this.results = results;
        this.key = key;
        this.name = name;
        this.probes = probes;
        this.survey = survey;
        this.lost = lost;
        this.sealing = new Sealing(into, failures, results, key);
    }

    /** Samples that are in the new workspace. */
    long saved() {
        return saved.values().stream().mapToLong(Long::longValue).sum();
    }

    /** @param lastBatch the last frame that a reading or a refused frame names, -1 where none does */
    void run(long lastBatch, EventSalvage events) throws SQLException, StoreException {
        blocks();
        frames(events);
        List<PackedRows.Row> rest = events.open();
        nextSequence = Math.max(nextSequence, events.next());
        lastFrame = Math.max(lastFrame, lastBatch);
        if (lastFrame >= 0 || nextSequence > 0 || saved() > 0) {
            frame(rest);
        }
        events.finish(nextSequence);
        counts();
    }

    private void blocks() throws SQLException, StoreException {
        Map<Integer, Long> expected = new HashMap<>();
        Map<Integer, Long> ends = new HashMap<>();
        for (BlockPlace place : survey.samples(results, key)) {
            long next = expected.getOrDefault(place.probe(), 0L);
            if (place.number() < next) {
                continue;
            }
            if (place.number() > next) {
                Span hole = new Span(
                        ends.getOrDefault(place.probe(), place.span().fromNanos()),
                        place.span().fromNanos());
                lost(place.probe(), BlockContent.ALL, hole, place.number() - next + " blocks of samples are lost");
            }
            block(place);
            expected.put(place.probe(), place.number() + 1);
            ends.put(place.probe(), place.span().toNanos());
        }
    }

    private void lost(int probe, int channel, Span span, String words) {
        ProbeFacts facts = probe >= 0 && probe < probes.size() ? probes.get(probe) : ProbeFacts.unknown(probe);
        lost.add(new Damage(
                name,
                probe == BlockContent.ALL ? "" : facts.name(),
                channel == BlockContent.ALL ? "" : facts.channel(channel),
                span.equals(NEVER) ? Optional.empty() : Optional.of(span),
                words));
    }

    private void block(BlockPlace place) throws SQLException, StoreException {
        byte[] bytes;
        try (PreparedStatement select =
                from.prepareStatement(results.sql("SELECT block FROM {t}sample_block WHERE id = ?"))) {
            select.setLong(1, place.id());
            try (ResultSet row = select.executeQuery()) {
                row.next();
                bytes = StoredRow.of(row, 1).bytes(0);
            }
        } catch (SQLException e) {
            RowScan.requireDamage(e);
            lost(place.probe(), BlockContent.ALL, place.span(), "samples cannot be read: " + e.getMessage());
            return;
        } catch (IllegalArgumentException e) {
            lost(place.probe(), BlockContent.ALL, place.span(), "samples cannot be read: " + e.getMessage());
            return;
        }
        BlockContent content = BlockContent.of(bytes, place.span());
        content.broken().forEach(b -> lost(place.probe(), b.channel(), b.span(), b.words()));
        List<SampleBlock> good = known(content.samples()).stream()
                .filter(b -> b.probe() == place.probe())
                .toList();
        if (!good.isEmpty()) {
            sealing.samples(place.probe(), good);
            good.forEach(this::count);
        }
    }

    /** Those of probes and channels that the session has. */
    private List<SampleBlock> known(List<SampleBlock> blocks) {
        List<SampleBlock> known = new ArrayList<>();
        for (SampleBlock block : blocks) {
            boolean probe = block.probe() >= 0 && block.probe() < probes.size();
            if (probe && block.channel() < probes.get(block.probe()).channels().size()) {
                known.add(block);
            } else {
                lost(block.probe(), block.channel(), NEVER, block.size() + " samples of a channel that is not there");
            }
        }
        return known;
    }

    private void count(SampleBlock block) {
        saved.merge(block.probe(), (long) block.size(), Long::sum);
        for (long time : block.timesNanos()) {
            untilNanos = Math.max(untilNanos, time);
        }
    }

    private void frames(EventSalvage events) throws SQLException, StoreException {
        RowScan scan = new RowScan(
                from,
                results.sql("{t}frame"),
                List.of(results.sql("{key}"), "number"),
                List.of("next_sequence", "until_nanos", "samples", "events"));
        scan.between(key, key, row -> {
            try {
                frame(row, events);
            } catch (IllegalArgumentException e) {
                lost(BlockContent.ALL, BlockContent.ALL, NEVER, "a frame of what was stored last: " + e.getMessage());
            }
        });
        if (!scan.unread().isEmpty()) {
            lost(BlockContent.ALL, BlockContent.ALL, NEVER, "some of what was stored last, up to a few seconds");
        }
    }

    private void frame(StoredRow row, EventSalvage events) {
        lastFrame = Math.max(lastFrame, row.number(1));
        nextSequence = Math.max(nextSequence, row.number(2));
        untilNanos = Math.max(untilNanos, row.number(3));
        BlockContent content = BlockContent.of(row.bytes(4), NEVER);
        content.broken().forEach(b -> lost(b.probe(), b.channel(), b.span(), "of what was stored last, " + b.words()));
        List<SampleBlock> good = known(content.samples());
        good.forEach(this::count);
        open.add(good, List.of());
        events.frame(row.bytes(5), row.number(2));
    }

    private void frame(List<PackedRows.Row> events) throws SQLException {
        try (PreparedStatement insert = Series.insertFrame(into, results)) {
            insert.setLong(1, key);
            insert.setLong(2, Math.max(0, lastFrame));
            insert.setLong(3, nextSequence);
            insert.setLong(4, untilNanos);
            insert.setBytes(5, PackedSamples.pack(open.samples()));
            insert.setBytes(6, PackedRows.pack(events, false));
            insert.executeUpdate();
        }
    }

    private void counts() throws SQLException {
        String sql = results.sql("UPDATE {t}probe SET samples = ? WHERE {key} = ? AND position = ?");
        try (PreparedStatement update = into.prepareStatement(sql)) {
            for (int probe = 0; probe < probes.size(); probe++) {
                update.setLong(1, saved.getOrDefault(probe, 0L));
                update.setLong(2, key);
                update.setInt(3, probe);
                update.executeUpdate();
                missing(probe);
            }
        }
    }

    private void missing(int probe) {
        long before = probes.get(probe).samples();
        long after = saved.getOrDefault(probe, 0L);
        if (before > after) {
            Span span = span(survey.samples(results, key), probe).orElse(NEVER);
            lost(probe, BlockContent.ALL, span, (before - after) + " of " + before + " samples are lost in all");
        }
    }

    static Optional<Span> span(List<BlockPlace> places, int probe) {
        List<Span> spans = new ArrayList<>();
        places.stream().filter(p -> p.probe() == probe).forEach(p -> spans.add(p.span()));
        if (spans.isEmpty()) {
            return Optional.empty();
        }
        long low = spans.stream().mapToLong(Span::fromNanos).min().getAsLong();
        long high = spans.stream().mapToLong(Span::toNanos).max().getAsLong();
        return Optional.of(new Span(low, high));
    }
}
