package settlemark.app;

import java.time.Duration;
import java.util.concurrent.ThreadFactory;
import java.util.function.Supplier;
import settlemark.link.SerialFarEnd;
import settlemark.profile.Profile;
import settlemark.rig.ProfileVoice;
import settlemark.rig.RigTruth;
import settlemark.session.LinkException;

/** A device of any profile on a tty: one thread hears what it is asked, and says what is due. */
final class RigVoice implements AutoCloseable {
    private static final int BUFFER_BYTES = 4096;

    private final String name;
    private final SerialFarEnd end;
    private final ProfileVoice voice;
    private final Supplier<RigTruth> truth;
    private volatile boolean closed;
    private long writes;

    private RigVoice(String name, SerialFarEnd end, ProfileVoice voice, Supplier<RigTruth> truth) {
        this.name = name;
        this.end = end;
        this.voice = voice;
        this.truth = truth;
    }

    static RigVoice open(String name, String path, Profile profile, Supplier<RigTruth> truth, ThreadFactory threads)
            throws LinkException {
        if (profile.serial().isEmpty()) {
            throw new LinkException(
                    "profile " + profile.id() + " is not for a serial line: the rig cannot speak it into " + path);
        }
        int at = path.lastIndexOf('@');
        int unit = at < 0 ? 0 : unit(path, at);
        ProfileVoice voice;
        try {
            voice = new ProfileVoice(profile, unit, truth.get());
        } catch (IllegalArgumentException e) {
            throw new LinkException("the rig cannot speak " + profile.id() + ": " + e.getMessage(), e);
        }
        SerialFarEnd end = SerialFarEnd.open(at < 0 ? path : path.substring(0, at), threads, Duration.ofSeconds(2));
        return new RigVoice(name, end, voice, truth);
    }

    private static int unit(String path, int at) throws LinkException {
        try {
            return Integer.parseInt(path.substring(at + 1));
        } catch (NumberFormatException e) {
            throw new LinkException(path + " must end with a Modbus unit after @, such as /dev/pts/3@17", e);
        }
    }

    /** Speaks and answers until it is closed; a wait for bytes ends after a tenth of a second, so that is its beat. */
    void run() throws LinkException {
        byte[] buffer = new byte[BUFFER_BYTES];
        long start = System.nanoTime();
        while (!closed) {
            say(voice.at(System.nanoTime() - start, truth.get()));
            int count = end.read(buffer);
            if (count > 0) {
                say(voice.asked(buffer, 0, count));
            }
        }
    }

    private void say(byte[] bytes) throws LinkException {
        if (bytes.length > 0 && end.write(bytes)) {
            writes++;
        }
    }

    String name() {
        return name;
    }

    /** How often it spoke. */
    long writes() {
        return writes;
    }

    @Override
    public void close() {
        closed = true;
        end.close();
    }
}
