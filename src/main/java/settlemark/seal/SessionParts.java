package settlemark.seal;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import settlemark.measure.Channel;
import settlemark.profile.Profile;
import settlemark.session.Attachment;
import settlemark.session.Note;
import settlemark.session.Papers;
import settlemark.session.ProbeSetup;
import settlemark.session.SampleBlock;
import settlemark.session.SessionEvent;
import settlemark.session.SessionHeader;
import settlemark.session.SessionStore;
import settlemark.session.StoreException;
import settlemark.settle.StageReading;

/** A stored session as the parts that a seal names: what changes later is found by the part that it lies in. */
public final class SessionParts {
    private static final long MINUTE_NANOS = 60_000_000_000L;
    /** Samples are read in pieces, so that weeks fit. */
    private static final long PIECE_NANOS = 10 * MINUTE_NANOS;

    private static final String NOTE = "note ";
    private static final String ATTACHMENT = "attachment ";

    private final List<SealedPart> parts = new ArrayList<>();
    private final Map<Integer, OpenMinute> minutes = new HashMap<>();
    private final Map<String, Integer> names = new HashMap<>();
    private final JobForm form = new JobForm();
    private final SessionHeader header;

    private SessionParts(SessionHeader header) {
        this.header = header;
    }

    /** Bytes of a probe within one minute, so far. */
    private record OpenMinute(long minute, Canon bytes) {}

    /**
     * All parts of a stored session in a fixed order: header, profiles, events and bytes as they came, samples,
     * readings.
     */
    public static List<SealedPart> of(SessionStore store, long session) throws StoreException {
        SessionHeader header = store.header(session);
        SessionParts gathered = new SessionParts(header);
        gathered.heads();
        store.events(session, gathered::event);
        gathered.closeMinutes();
        long end = store.sessions().stream()
                .filter(s -> s.number() == session)
                .mapToLong(SessionStore.Summary::durationNanos)
                .findFirst()
                .orElse(0);
        for (int p = 0; p < header.probes().size(); p++) {
            gathered.samples(store, session, p, end);
        }
        int count = 0;
        for (StageReading reading : store.readings(session)) {
            count++;
            gathered.add(
                    "reading " + count + ", " + reading.step() + " " + reading.purpose(),
                    gathered.form.reading(reading));
        }
        gathered.papers(store.papers(), session);
        return List.copyOf(gathered.parts);
    }

    /** What lies beside the session comes last, and more of it may come after a seal. */
    private void papers(Papers papers, long session) throws StoreException {
        int number = 0;
        for (Note note : papers.notes(session)) {
            number++;
            add(nameOf(number, note), form.note(note));
        }
        number = 0;
        for (Attachment attachment : papers.attachments(session)) {
            number++;
            byte[] content = HashTree.sha256().digest(papers.content(attachment));
            add(nameOf(number, attachment), form.attachment(attachment, content));
        }
    }

    /** The part that an attachment is, counted from 1. */
    public static String nameOf(int number, Attachment attachment) {
        return ATTACHMENT + number + ", " + attachment.name() + ", added at " + attachment.addedAt();
    }

    /** The part that a note is, counted from 1. */
    public static String nameOf(int number, Note note) {
        return NOTE + number + ", written at " + note.writtenAt();
    }

    private void heads() {
        add("header", form.header(header));
        for (ProbeSetup probe : header.probes()) {
            Profile profile = probe.profile();
            byte[] text = HashTree.sha256().digest(profile.text().getBytes(StandardCharsets.UTF_8));
            add("profile of " + probe.name(), text);
        }
    }

    private void event(SessionEvent event) {
        if (event instanceof SessionEvent.Bytes bytes) {
            long minute = Math.floorDiv(bytes.timeNanos(), MINUTE_NANOS);
            OpenMinute open = minutes.get(bytes.probe());
            if (open == null || open.minute() != minute) {
                close(bytes.probe());
                open = new OpenMinute(minute, new Canon());
                minutes.put(bytes.probe(), open);
            }
            open.bytes().add(bytes.timeNanos()).add(bytes.chunk().bytes());
        } else {
            String what =
                    event instanceof SessionEvent.Done ? "act" : event instanceof SessionEvent.Link ? "link" : "clock";
            add(what + " at " + clock(event.timeNanos()), form.event(event));
        }
    }

    private void closeMinutes() {
        for (int p = 0; p < header.probes().size(); p++) {
            close(p);
        }
    }

    private void close(int probe) {
        OpenMinute open = minutes.remove(probe);
        if (open != null) {
            String name = header.probes().get(probe).name();
            add(
                    "bytes of " + name + ", minute " + (open.minute() + 1),
                    open.bytes().digest());
        }
    }

    private void samples(SessionStore store, long session, int p, long end) throws StoreException {
        ProbeSetup probe = header.probes().get(p);
        List<Channel> channels = probe.channels();
        for (int c = 0; c < channels.size(); c++) {
            for (long from = 0; from <= end; from += PIECE_NANOS) {
                SampleBlock block = store.samples(session, p, c, from, from + PIECE_NANOS - 1);
                if (block.size() > 0) {
                    add(
                            "samples of " + probe.name() + " " + channels.get(c).name() + ", from " + clock(from),
                            digest(block));
                }
            }
        }
    }

    private static byte[] digest(SampleBlock block) {
        Canon canon = new Canon();
        for (int i = 0; i < block.size(); i++) {
            canon.add(block.timesNanos()[i]).add(block.values()[i]).add((long) block.statuses()[i]);
        }
        return canon.digest();
    }

    private void add(String name, byte[] digest) {
        String plain = name.replaceAll("\\p{Cc}", "?");
        int count = names.merge(plain, 1, Integer::sum);
        parts.add(new SealedPart(count == 1 ? plain : plain + " (" + count + ")", digest));
    }

    /** Session time as hours, minutes and seconds. */
    private static String clock(long nanos) {
        long seconds = Math.floorDiv(nanos, 1_000_000_000L);
        return String.format(Locale.ROOT, "%d:%02d:%02d", seconds / 3600, seconds / 60 % 60, seconds % 60);
    }
}
