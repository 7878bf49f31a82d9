package settlemark.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.util.Locale;
import settlemark.decode.DecodeSink;
import settlemark.decode.ProbeDecoder;
import settlemark.decode.Rejected;
import settlemark.measure.Chunk;
import settlemark.measure.SampleStatus;
import settlemark.profile.Profile;

/** One probe of a capture on its way through its profile again. */
final class ProbeReplay implements DecodeSink {
    private static final int SHOWN_DIGEST = 12;

    private final String name;
    private final Profile profile;
    private final ProbeDecoder decoder;
    private final SampleTable table;
    private final PrintWriter err;
    private final long tellRejections;
    private final int inputs;
    private long otherBytes;

    /** @param tellRejections so many are told one by one */
    ProbeReplay(String name, Profile profile, SampleTable table, PrintWriter err, long tellRejections) {
        this.name = name;
        this.profile = profile;
        this.decoder = new ProbeDecoder(profile);
        this.table = table;
        this.err = err;
        this.tellRejections = tellRejections;
        this.inputs = profile.inputs().size();
    }

    /** Bytes of an input that this profile does not have are counted and left out. */
    void bytes(Chunk chunk) {
        if (chunk.input() < inputs) {
            decoder.accept(chunk, this);
        } else {
            otherBytes += chunk.bytes().length;
        }
    }

    /** Bytes are missing here. */
    void lost() {
        decoder.reset();
    }

    @Override
    public void sample(int channel, long timeNanos, double value, SampleStatus status) {
        try {
            table.sample(
                    name, profile.simulated(), profile.sources().get(channel).channel(), timeNanos, value, status);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
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

    /** What became of the bytes, in one line. */
    String summary() {
        String other = otherBytes == 0 ? "" : ", " + otherBytes + " bytes of inputs that the profile does not have";
        String missed = decoder.missedFrames() == 0 ? "" : ", " + decoder.missedFrames() + " missing by their counter";
        return (profile.simulated() ? name + " (SIMULATED): " : name + ": ") + decoder.acceptedFrames() + " frames, "
                + decoder.samples() + " samples, " + decoder.rejectedFrames() + " rejected" + missed + other + "; by "
                + profile.id() + " " + digest(profile.digest());
    }

    /** Enough of a digest to tell two apart. */
    static String digest(String digest) {
        return digest.substring(0, Math.min(SHOWN_DIGEST, digest.length()));
    }
}
