package settlemark.session;

import java.util.Locale;
import java.util.Objects;
import java.util.Optional;

/**
 * How a record's pages are set. The files for machines do not depend on it: they keep the units of the job.
 *
 * @param paper the sheet
 * @param units what values are shown in
 */
public record RecordForm(Paper paper, Units units) {
    /** A4, in the units of the job. */
    public static final RecordForm DEFAULT = new RecordForm(Paper.A4, Units.JOB);

    /** Keys of the workspace's settings that a record is made by where nothing else is said. */
    public static final String PAPER_SETTING = "record.paper";

    public static final String UNITS_SETTING = "record.units";

    public RecordForm {
        Objects.requireNonNull(paper);
        Objects.requireNonNull(units);
    }

    /** Sizes of a sheet, in points of 1/72 inch. */
    public enum Paper {
        /** 210 by 297 mm (ISO 216). */
        A4(595.27563, 841.8898),
        /** 8.5 by 11 inch. */
        LETTER(612, 792);

        private final double width;
        private final double height;

        Paper(double width, double height) {
            this.width = width;
            this.height = height;
        }

        public double widthPoints() {
            return width;
        }

        public double heightPoints() {
            return height;
        }
    }

    /** What values are shown in. */
    public enum Units {
        /** Those that the job was done in. */
        JOB,
        /** inH2O, degF, Btu/h. */
        US,
        /** Pa, degC (K for a difference), kW. */
        SI
    }

    public static Optional<Paper> paper(String word) {
        return named(Paper.values(), word);
    }

    public static Optional<Units> units(String word) {
        return named(Units.values(), word);
    }

    private static <T extends Enum<T>> Optional<T> named(T[] all, String word) {
        for (T one : all) {
            if (word(one).equals(word.toLowerCase(Locale.ROOT))) {
                return Optional.of(one);
            }
        }
        return Optional.empty();
    }

    /** {@code a4}, {@code si}: as a person writes it. */
    public static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT);
    }
}
