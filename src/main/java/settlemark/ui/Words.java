package settlemark.ui;

import java.util.Locale;

/** The words of the screen in the person's language; an English sentence is the key of its translations. */
final class Words {
    private Words() {}

    /**
     * A sentence in the chosen language.
     *
     * @param english as it stands in English, with {0}, {1} where values go
     * @param values in order
     */
    static String say(String english, Object... values) {
        String words = english;
        for (int i = 0; i < values.length; i++) {
            words = words.replace("{" + i + "}", String.valueOf(values[i]));
        }
        return words;
    }

    /** For names of months; numbers are written the same in every language. */
    static Locale locale() {
        return Locale.ENGLISH;
    }
}
