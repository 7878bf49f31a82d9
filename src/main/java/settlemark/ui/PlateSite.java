package settlemark.ui;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import settlemark.job.Site;
import settlemark.job.Site.Derating;

/** The place of an appliance as two typed texts: how high in feet, and the derating as a word or the maker's factor. */
final class PlateSite {
    private static final String NONE = "none";
    private static final String COMMON = "4%";

    private PlateSite() {}

    /** @return empty where the texts are no place */
    static Optional<Site> of(double altitudeFeet, String derating) {
        String text = derating.replace(" ", "").toLowerCase(Locale.ROOT);
        try {
            if (text.isEmpty() || text.equals(NONE)) {
                return Optional.of(new Site(altitudeFeet, Derating.NONE, Double.NaN));
            }
            return Optional.of(
                    text.equals(COMMON)
                            ? new Site(altitudeFeet, Derating.COMMON_PRACTICE, Double.NaN)
                            : new Site(altitudeFeet, Derating.MAKER, Double.parseDouble(text)));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    /** The derating as it is typed. */
    static String text(Site site) {
        return switch (site.derating()) {
            case NONE -> NONE;
            case COMMON_PRACTICE -> COMMON;
            case MAKER -> BigDecimal.valueOf(site.factor()).stripTrailingZeros().toPlainString();
        };
    }
}
