package settlemark.decode;

/** A curve that is no straight line. */
sealed interface BentCurve permits PolynomialCurve, TableCurve {
    /** The value of a raw number; infinite beyond the curve's ends. */
    double apply(double raw);

    /**
     * The raw number of a value, the one nearest to a hint where there are several, and the best there is where there is
     * none.
     */
    double inverse(double value, double hint);

    /** Whether some raw number has the value. */
    boolean reaches(double value);
}
