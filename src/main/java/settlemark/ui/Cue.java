package settlemark.ui;

/**
 * What is heard while a screw is turned. The pitch says how far and on which side: 660 Hz at the target, an octave for each
 * half-width of the limits, between 330 and 1320 Hz. Single pulses below the target, double ones above it; the nearer, the
 * slower; one even tone where there is nothing left to do.
 *
 * @param hertz pitch
 * @param pulses 1 or 2, 0 for one even tone
 * @param perSecond how often they come
 */
record Cue(double hertz, int pulses, double perSecond) {
    static final double TARGET_HERTZ = 660;
    static final double LEAST_HERTZ = 330;
    static final double MOST_HERTZ = 1320;
    static final double FASTEST = 4;
    static final double SLOWEST = 1;
    private static final double PULSE_SECONDS = 0.08;
    private static final double EVEN_SECONDS = 0.5;
    private static final double RAMP_SECONDS = 0.008;
    private static final double LOUDNESS = 0.35;

    /**
     * For a value beside its target.
     *
     * @param off value less target
     * @param halfWidth from the target to its limit, above 0, in the same unit
     * @param near within this of the target there is nothing to do
     */
    static Cue of(double off, double halfWidth, double near) {
        double share = off / halfWidth;
        double hertz = Math.max(LEAST_HERTZ, Math.min(MOST_HERTZ, TARGET_HERTZ * Math.pow(2, share)));
        if (Math.abs(off) <= near) {
            return new Cue(hertz, 0, SLOWEST);
        }
        double far = Math.min(1, Math.abs(share));
        return new Cue(hertz, off < 0 ? 1 : 2, SLOWEST + (FASTEST - SLOWEST) * far);
    }

    /** One beat of it. */
    short[] beat() {
        if (pulses == 0) {
            return tone(hertz, EVEN_SECONDS);
        }
        short[] one = tone(hertz, PULSE_SECONDS);
        return pulses == 1 ? one : joined(one, new short[one.length / 4], one);
    }

    /** It has settled: down from the target's pitch, once. */
    static short[] settled() {
        return joined(tone(TARGET_HERTZ, 2 * PULSE_SECONDS), tone(TARGET_HERTZ * 0.75, 2 * PULSE_SECONDS));
    }

    /** What had settled has moved away. */
    static short[] lost() {
        return tone(LEAST_HERTZ, 3 * PULSE_SECONDS);
    }

    /** Something can hurt people: two pitches in turn. */
    static short[] safety() {
        return joined(tone(TARGET_HERTZ * 4 / 3, 2 * PULSE_SECONDS), tone(TARGET_HERTZ, 2 * PULSE_SECONDS));
    }

    private static short[] tone(double hertz, double seconds) {
        short[] samples = new short[(int) Math.round(seconds * Tones.RATE)];
        double ramp = RAMP_SECONDS * Tones.RATE;
        for (int i = 0; i < samples.length; i++) {
            double edge = Math.min(1, Math.min(i, samples.length - 1 - i) / ramp);
            double wave = Math.sin(2 * Math.PI * hertz * i / Tones.RATE);
            samples[i] = (short) Math.round(LOUDNESS * edge * wave * Short.MAX_VALUE);
        }
        return samples;
    }

    private static short[] joined(short[]... parts) {
        int size = 0;
        for (short[] part : parts) {
            size += part.length;
        }
        short[] all = new short[size];
        int at = 0;
        for (short[] part : parts) {
            System.arraycopy(part, 0, all, at, part.length);
            at += part.length;
        }
        return all;
    }
}
