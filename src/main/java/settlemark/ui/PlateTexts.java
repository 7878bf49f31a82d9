package settlemark.ui;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.HashMap;
import java.util.Map;
import settlemark.job.Limit;
import settlemark.job.RatingPlate;
import settlemark.job.StagePlate;
import settlemark.measure.Conversion;
import settlemark.measure.Unit;

/** A plate that is known, as the texts that a person would type into the form. */
final class PlateTexts {
    /** More than a plate has, and few enough that a change of units leaves no tail. */
    private static final MathContext DIGITS = new MathContext(6);

    private PlateTexts() {}

    /** By the names of the form's fields; what the plate does not say is not in it. */
    static Map<String, String> of(RatingPlate plate, Units units) {
        Map<String, String> texts = new HashMap<>();
        texts.put(PlateEntry.APPLIANCE, plate.appliance());
        for (StagePlate stage : plate.stages()) {
            Conversion to = stage.unit().to(units.pressure());
            number(texts, "manifold." + stage.key(), to.apply(stage.manifoldTarget()));
            number(texts, "tolerance." + stage.key(), Math.abs(to.applyDifference(stage.manifoldTolerance())));
            number(texts, "input." + stage.key(), stage.inputBtuPerHour());
        }
        range(texts, "inlet", plate.inlet(), units.pressure());
        range(texts, "rise", plate.rise(), units.rise());
        if (!plate.statics().isOpen()) {
            number(
                    texts,
                    PlateEntry.STATICS,
                    plate.statics().to(units.pressure()).upper());
        }
        if (!plate.control().isOpen()) {
            number(
                    texts,
                    PlateEntry.CONTROL,
                    plate.control().to(units.pressure()).upper());
        }
        if (plate.site().known()) {
            number(texts, PlateEntry.ALTITUDE, plate.site().altitudeFeet());
            texts.put(PlateEntry.DERATING, PlateSite.text(plate.site()));
        }
        return texts;
    }

    private static void range(Map<String, String> texts, String key, Limit limit, Unit unit) {
        if (!limit.isOpen()) {
            number(texts, key + ".least", limit.to(unit).lower());
            number(texts, key + ".most", limit.to(unit).upper());
        }
    }

    private static void number(Map<String, String> texts, String key, double value) {
        if (Double.isFinite(value)) {
            texts.put(
                    key,
                    new BigDecimal(value).round(DIGITS).stripTrailingZeros().toPlainString());
        }
    }
}
