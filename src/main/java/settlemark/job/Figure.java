package settlemark.job;

import java.math.BigDecimal;
import java.math.MathContext;

/** A number in a sentence. */
final class Figure {
    private Figure() {}

    /** Three digits, without needless zeros. */
    static String of(double value) {
        return new BigDecimal(value)
                .round(new MathContext(3))
                .stripTrailingZeros()
                .toPlainString();
    }
}
