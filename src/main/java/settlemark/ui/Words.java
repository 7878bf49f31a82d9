package settlemark.ui;

import java.util.Locale;

/**
 * The words of the screen in the person's language; an English sentence is the key of its translations. The language is
 * one for the whole program, as there is one person before it; it changes on the event thread, and whoever changes it
 * makes the window anew, because parts of it keep the words that they were made with.
 */
final class Words {
    private static volatile Language language = Language.ENGLISH;
    private static volatile boolean asked;

    private Words() {}

    static Language language() {
        return language;
    }

    /** The language that comes after the one of now, when a person goes through them. */
    static Language next() {
        return language == Language.ENGLISH ? Language.GERMAN : Language.ENGLISH;
    }

    /** The language that the person asked for when the program began; what was kept does not change it. */
    static void ask(Language newLanguage) {
        asked = true;
        language = newLanguage;
    }

    /** The language that was kept from the last time. */
    static void keep(Language newLanguage) {
        language = asked ? language : newLanguage;
    }

    static void speak(Language newLanguage) {
        language = newLanguage;
    }

    /**
     * A sentence in the chosen language.
     *
     * @param english as it stands in English, with {0}, {1} where values go; written out in the call, so that a test
     *     finds it
     * @param values in order, in the chosen language where they are words
     */
    static String say(String english, Object... values) {
        return fill(language.of(english), values);
    }

    /** Marks a sentence that is kept in English and said by {@link #told} when it is shown. */
    static String key(String english) {
        return english;
    }

    /**
     * What another package says in English, in the chosen language. What no translation is known of stays as it is: it
     * may be a person's own words.
     */
    static String told(String english) {
        return language.told(english);
    }

    /** For names of months; numbers are written the same in every language. */
    static Locale locale() {
        return language.locale();
    }

    /** Puts values where a text has {0}, {1}; what the values hold is not looked at again. */
    static String fill(String text, Object... values) {
        if (values.length == 0) {
            return text;
        }
        StringBuilder filled = new StringBuilder(text.length() + 16 * values.length);
        for (int i = 0; i < text.length(); i++) {
            int number = i + 2 < text.length() && text.charAt(i) == '{' && text.charAt(i + 2) == '}'
                    ? text.charAt(i + 1) - '0'
                    : -1;
            if (number >= 0 && number < values.length) {
                filled.append(values[number]);
                i += 2;
            } else {
                filled.append(text.charAt(i));
            }
        }
        return filled.toString();
    }
}
