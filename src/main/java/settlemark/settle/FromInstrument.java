package settlemark.settle;

/**
 * What the instrument that measured adds to a reading: its correction, which is already in the value.
 *
 * @param serial of the instrument, empty where it is not known
 * @param correction what was added to what it indicated, in the reading's unit; NaN where nothing was
 * @param standardUncertainty of the correction, already in the reading's; NaN where there is none
 * @param remark why an instrument that has correction points does not correct this reading; empty otherwise
 */
public record FromInstrument(String serial, double correction, double standardUncertainty, String remark) {
    /** Of an instrument that nothing is known of. */
    public static final FromInstrument NONE = new FromInstrument("", Double.NaN, Double.NaN, "");

    public FromInstrument {
        if (Double.isNaN(correction) != Double.isNaN(standardUncertainty) || standardUncertainty < 0) {
            throw new IllegalArgumentException(
                    "a correction has an uncertainty of 0 or more, got " + correction + " with " + standardUncertainty);
        }
    }

    /** An instrument that corrects nothing. */
    public static FromInstrument uncorrected(String serial, String remark) {
        return new FromInstrument(serial, Double.NaN, Double.NaN, remark);
    }

    public boolean corrects() {
        return !Double.isNaN(correction);
    }

    /** Coverage factor 2. */
    public double expandedUncertainty() {
        return 2 * standardUncertainty;
    }
}
