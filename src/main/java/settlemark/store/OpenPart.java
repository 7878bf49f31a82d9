package settlemark.store;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import settlemark.codec.PackedRows;
import settlemark.session.SampleBlock;

/** What a series has gained and is not sealed yet: the same as lies in its frames. */
final class OpenPart {
    private final Map<Integer, ProbeColumns> probes = new TreeMap<>();
    private final List<PackedRows.Row> events = new ArrayList<>();
    private long eventBytes;

    void add(List<SampleBlock> samples, List<PackedRows.Row> more) {
        for (SampleBlock block : samples) {
            probes.computeIfAbsent(block.probe(), ProbeColumns::new).add(block);
        }
        events.addAll(more);
        for (PackedRows.Row row : more) {
            eventBytes += row.content().length;
        }
    }

    Map<Integer, ProbeColumns> probes() {
        return probes;
    }

    List<SampleBlock> samples() {
        List<SampleBlock> samples = new ArrayList<>();
        probes.values().forEach(p -> samples.addAll(p.oldest(Integer.MAX_VALUE)));
        return samples;
    }

    List<PackedRows.Row> events() {
        return events;
    }

    /** Of their contents. */
    long eventBytes() {
        return eventBytes;
    }

    void removeEvents() {
        events.clear();
        eventBytes = 0;
    }
}
