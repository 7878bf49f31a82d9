package settlemark.store;

import java.util.List;
import settlemark.measure.Dimension;
import settlemark.measure.Unit;

/**
 * A unit as text: its UCUM code, with {@code difference } before it where it is of temperature differences, which have
 * the code of their scale. UCUM codes hold no blanks.
 */
final class UnitText {
    private static final String DIFFERENCE = "difference ";

    /** UCUM ignores an annotation, so these would be read as the conventional inch. */
    private static final List<Unit> ANNOTATED =
            List.of(Unit.inchOfWaterAt4C(), Unit.inchOfWaterAt60F(), Unit.inchOfWaterAt20C());

    private UnitText() {}

    static String of(Unit unit) {
        return (unit.dimension() == Dimension.TEMPERATURE_DIFFERENCE ? DIFFERENCE : "") + unit.code();
    }

    /** @throws IllegalArgumentException where it is no unit */
    static Unit read(String text) {
        if (text.startsWith(DIFFERENCE)) {
            return Unit.ucum(text.substring(DIFFERENCE.length())).difference();
        }
        for (Unit unit : ANNOTATED) {
            if (unit.code().equals(text)) {
                return unit;
            }
        }
        return Unit.ucum(text);
    }
}
