package settlemark.cli;

import java.io.PrintWriter;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import settlemark.decode.DecodeSink;
import settlemark.decode.MeasurementNote;
import settlemark.decode.ProbeDecoder;
import settlemark.decode.Rejected;
import settlemark.measure.Chunk;
import settlemark.measure.SampleStatus;
import settlemark.profile.FactSource;
import settlemark.profile.Profile;
import settlemark.profile.Secrets;

/** One probe of a capture on its way through its profile again. */
final class ProbeReplay implements DecodeSink {
    private static final int SHOWN_DIGEST = 12;

    /** After so many samples it is looked whether anybody reads them still. */
    private static final int LOOK = 10_000;

    private final String name;
    private final Profile profile;
    private final ProbeDecoder decoder;
    private final SampleTable table;
    private final PrintWriter err;
    private final long tellRejections;
    private long samples;
    private final Map<Object, Object> told = new HashMap<>();

    /** @param tellRejections so many are told one by one */
    ProbeReplay(
            String name, Profile profile, Secrets secrets, SampleTable table, PrintWriter err, long tellRejections) {
        this.name = name;
        this.profile = profile;
        this.decoder = new ProbeDecoder(profile, secrets);
        this.table = table;
        this.err = err;
        this.tellRejections = tellRejections;
    }

    void bytes(Chunk chunk) {
        decoder.accept(chunk, this);
    }

    /** The capture has ended. */
    void finish() {
        decoder.finish(this);
    }

    /** Bytes are missing here. */
    void lost() {
        decoder.reset();
    }

    @Override
    public void sample(int channel, long timeNanos, double value, SampleStatus status) {
        table.sample(name, profile.simulated(), profile.sources().get(channel).channel(), timeNanos, value, status);
        samples++;
        if (samples % LOOK == 0) {
            table.flush();
        }
    }

    @Override
    public void rejected(Rejected rejected) {
        long number = decoder.rejectedFrames();
        if (number <= tellRejections) {
            err.println(String.format(
                    Locale.ROOT,
                    "%s: rejected at %.3f s, byte %d: %s",
                    name,
                    rejected.timeNanos() / 1e9,
                    rejected.offset(),
                    rejected.reason()));
        } else if (number == tellRejections + 1) {
            err.println(name + ": further rejections are only counted; --rejections N tells more of them");
        }
    }

    /** Each frame may say it again; it is told where it is new. */
    @Override
    public void fact(int fact, long timeNanos, String words) {
        FactSource source = profile.facts().get(fact);
        if (!words.equals(told.put(source, words))) {
            err.println(name + ": " + source.label() + ": " + words);
        }
    }

    @Override
    public void note(int message, long timeNanos, MeasurementNote note) {
        if (!note.equals(told.put(message, note))) {
            err.println(name + ": the device says of its "
                    + profile.messages().get(message).id() + ": "
                    + said("uncertainty", note.uncertaintyPercent(), "%") + ", "
                    + said("measured over", note.measurementPeriodSeconds(), "s") + ", "
                    + said("new every", note.updateIntervalSeconds(), "s"));
        }
    }

    private static String said(String what, double value, String unit) {
        return what + " " + (Double.isNaN(value) ? "not said" : value + " " + unit);
    }

    /** What became of the bytes, in one line. */
    String summary() {
        String missed = decoder.missedFrames() == 0 ? "" : ", " + decoder.missedFrames() + " missing by their counter";
        return (profile.simulated() ? name + " (SIMULATED): " : name + ": ") + decoder.acceptedFrames() + " frames, "
                + decoder.samples() + " samples, " + decoder.rejectedFrames() + " rejected" + missed + "; by "
                + profile.id() + " " + digest(profile.digest());
    }

    /** Enough of a digest to tell two apart. */
    static String digest(String digest) {
        return digest.substring(0, Math.min(SHOWN_DIGEST, digest.length()));
    }
}
