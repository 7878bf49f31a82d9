package settlemark.app;

import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.SourceDataLine;
import settlemark.ui.Tones;

/** Plays sounds on the computer's own device, on a thread of its own. Where there is none, all stays silent. */
final class SpeakerTones implements Tones {
    private static final int WAITING = 4;
    private static final int BITS = 16;

    private final BlockingQueue<short[]> queue = new ArrayBlockingQueue<>(WAITING);
    private boolean started;

    @Override
    public synchronized void play(short[] samples) {
        if (!started) {
            started = true;
            Thread thread = new Thread(this::run, "tones");
            thread.setDaemon(true);
            thread.start();
        }
        // What does not fit would be heard too late to mean anything.
        queue.offer(samples.clone());
    }

    private void run() {
        AudioFormat format = new AudioFormat(RATE, BITS, 1, true, false);
        try (SourceDataLine line = AudioSystem.getSourceDataLine(format)) {
            line.open(format);
            line.start();
            while (true) {
                byte[] bytes = bytes(queue.take());
                line.write(bytes, 0, bytes.length);
            }
        } catch (LineUnavailableException | IllegalArgumentException e) {
            silent();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** No device: what is played is taken and forgotten. */
    private void silent() {
        try {
            while (true) {
                queue.take();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static byte[] bytes(short[] samples) {
        byte[] bytes = new byte[2 * samples.length];
        for (int i = 0; i < samples.length; i++) {
            bytes[2 * i] = (byte) samples[i];
            bytes[2 * i + 1] = (byte) (samples[i] >> 8);
        }
        return bytes;
    }
}
