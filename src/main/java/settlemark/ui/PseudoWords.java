package settlemark.ui;

/** Words that can still be read, but are longer, have accents, and tell where they begin and end. */
final class PseudoWords {
    private static final String PLAIN = "aceinosuyzACEINOSUYZ";
    private static final String ACCENTED =
            "\u00e1\u00e7\u00e9\u00ef\u00f1\u00f5\u0161\u00fb\u00fd\u017e\u00c1\u00c7\u00c9\u00cf\u00d1\u00d5\u0160\u00db\u00dd\u017d";
    private static final double LONGER = 0.4;

    private PseudoWords() {}

    static String of(String english) {
        if (english.startsWith("[") || english.chars().noneMatch(Character::isLetter)) {
            return english;
        }
        StringBuilder words = new StringBuilder("[");
        int letters = 0;
        for (int i = 0; i < english.length(); i++) {
            char c = english.charAt(i);
            int at = PLAIN.indexOf(c);
            words.append(at < 0 ? c : ACCENTED.charAt(at));
            letters++;
        }
        int more = (int) Math.ceil(letters * LONGER);
        for (int i = 0; i < more; i++) {
            // In pieces, as words are, so that it can be wrapped.
            words.append(i % 8 == 7 ? ' ' : '~');
        }
        return words.append(']').toString();
    }
}
