package settlemark.ui;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import settlemark.measure.Chunk;
import settlemark.profile.ProfileDraft;

/** The frames of a device and the draft of its profile that is made from them, each change of which can be taken back. */
final class Drafting {
    /** Chunks that are kept of a live stream. */
    private static final int MOST_CHUNKS = 400;

    private static final int MOST_UNDO = 200;

    /** Frames that are kept for a restart: enough to see which bytes change, and to find a check again. */
    private static final int KEPT_FRAMES = 40;

    private static final String FRAMES = "frames";
    private static final String START = "start";
    private static final String ID = "id";
    private static final String NAME = "name";
    private static final String FIELDS = "fields";

    private final List<Chunk> chunks = new ArrayList<>();
    private final Deque<WorkshopDraft> before = new ArrayDeque<>();
    private WorkshopDraft draft = new WorkshopDraft("my-gauge", "My gauge", 0, 0, ProfileDraft.Check.NONE, List.of());
    private byte[] start = new byte[0];
    private List<byte[]> frames = List.of();

    WorkshopDraft draft() {
        return draft;
    }

    List<byte[]> frames() {
        return frames;
    }

    /** Other bytes than before. */
    void replace(List<Chunk> found) {
        chunks.clear();
        chunks.addAll(found);
        cut();
    }

    /** Bytes that follow; the oldest go where there are many. */
    void follow(Chunk chunk) {
        chunks.add(chunk);
        while (chunks.size() > MOST_CHUNKS) {
            chunks.remove(0);
        }
        cut();
    }

    /** Forgets the bytes; the frames that were cut stay until others come. */
    void forgetBytes() {
        chunks.clear();
    }

    /** Cuts the bytes into frames again, and finds their length and their check. */
    private void cut() {
        List<byte[]> found = WorkshopDraft.frames(chunks, start, Math.max(1, draft.lengthBytes()));
        int length =
                start.length > 0 && draft.lengthBytes() > 0 ? draft.lengthBytes() : WorkshopDraft.usualLength(found);
        frames = found;
        int inStart = start.length;
        if (length != draft.lengthBytes() || inStart != draft.startBytes()) {
            draft = draft.framed(inStart, length, WorkshopDraft.check(frames, inStart, length));
        }
    }

    /**
     * The first bytes begin each frame.
     *
     * @return false where there are no frames
     */
    boolean start(int bytes) {
        if (frames.isEmpty()) {
            return false;
        }
        remember();
        start = Arrays.copyOf(frames.get(0), bytes);
        int length = draft.lengthBytes();
        draft = draft.framed(start.length, length, WorkshopDraft.check(frames, start.length, length));
        return true;
    }

    void change(WorkshopDraft changed) {
        remember();
        draft = changed;
    }

    private void remember() {
        before.push(draft);
        if (before.size() > MOST_UNDO) {
            before.removeLast();
        }
    }

    /** Returns false where nothing is left to take back. */
    boolean takeBack() {
        if (before.isEmpty()) {
            return false;
        }
        draft = before.pop();
        start = draft.startBytes() == 0 ? new byte[0] : start;
        return true;
    }

    /** What a restart puts back, by name: the newest frames, how they begin, and what was made of them; empty before there are any. */
    Map<String, String> kept() {
        if (frames.isEmpty()) {
            return Map.of();
        }
        Map<String, String> kept = new LinkedHashMap<>();
        kept.put(
                FRAMES,
                frames.subList(Math.max(0, frames.size() - KEPT_FRAMES), frames.size()).stream()
                        .map(HexFormat.of()::formatHex)
                        .collect(Collectors.joining("\n")));
        kept.put(START, HexFormat.of().formatHex(start));
        kept.put(ID, draft.id());
        kept.put(NAME, draft.name());
        kept.put(FIELDS, draft.fields().stream().map(WorkshopDraft.Picked::line).collect(Collectors.joining("\n")));
        return kept;
    }

    /**
     * Puts back what {@link #kept} gave.
     *
     * @throws IllegalArgumentException where it is none of that
     */
    void putBack(Map<String, String> kept) {
        List<Chunk> found = new ArrayList<>();
        kept.getOrDefault(FRAMES, "")
                .lines()
                .forEach(l -> found.add(new Chunk(found.size(), HexFormat.of().parseHex(l))));
        byte[] begin = HexFormat.of().parseHex(kept.getOrDefault(START, ""));
        int length = WorkshopDraft.usualLength(found.stream().map(Chunk::bytes).toList());
        List<WorkshopDraft.Picked> fields = kept.getOrDefault(FIELDS, "")
                .lines()
                .map(WorkshopDraft.Picked::of)
                .toList();
        start = begin;
        draft = new WorkshopDraft(
                kept.getOrDefault(ID, draft.id()),
                kept.getOrDefault(NAME, draft.name()),
                start.length,
                length,
                ProfileDraft.Check.NONE,
                fields);
        replace(found);
        draft = draft.framed(start.length, length, WorkshopDraft.check(frames, start.length, length));
    }

    /** The profile's text; empty before there is a field in frames of a known length. */
    String text() {
        return draft.fields().isEmpty() || draft.lengthBytes() == 0 ? "" : draft.text(frames);
    }
}
