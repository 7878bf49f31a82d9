package settlemark.ui;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** A language that the window speaks. */
public enum Language {
    /** The program's own. */
    ENGLISH("en", "English", Locale.ENGLISH),
    /** A heating technician's. */
    GERMAN("de", "Deutsch", Locale.GERMAN) {
        @Override
        String of(String english) {
            return Translations.german().of(english);
        }

        @Override
        String told(String english) {
            return Translations.german().told(english);
        }
    },
    /** English with accents, longer by four tenths, in brackets: shows what is not translated and what has no room. */
    PSEUDO("pseudo", "[\u00deseudo]", Locale.ENGLISH) {
        @Override
        String of(String english) {
            return PseudoWords.of(english);
        }

        @Override
        String told(String english) {
            return PseudoWords.of(english);
        }
    };

    private final String code;
    private final String title;
    private final Locale locale;

    Language(String code, String title, Locale locale) {
        this.code = code;
        this.title = title;
        this.locale = locale;
    }

    /** The language with a code such as {@code de}; empty for an unknown one. */
    public static Optional<Language> ofCode(String code) {
        return Stream.of(values()).filter(l -> l.code.equals(code)).findFirst();
    }

    /** As settings and options name it. */
    public String code() {
        return code;
    }

    /** Its own name. */
    String title() {
        return title;
    }

    Locale locale() {
        return locale;
    }

    /** A sentence of the window that is known by its key. */
    String of(String english) {
        return english;
    }

    /** A whole sentence that another part has said. */
    String told(String english) {
        return english;
    }
}
