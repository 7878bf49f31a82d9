package settlemark.ui;

/**
 * Something that can be done now, or the reason why not.
 *
 * @param deed what
 * @param title on the button
 * @param hint below the title, beside the key; may be empty
 * @param why empty where it is available; else the reason, in words
 */
record Choice(Deed deed, String title, String hint, String why) {
    static Choice of(Deed deed, String title) {
        return new Choice(deed, title, "", "");
    }

    static Choice of(Deed deed, String title, String hint) {
        return new Choice(deed, title, hint, "");
    }

    static Choice no(Deed deed, String title, String why) {
        return new Choice(deed, title, "", why);
    }

    boolean available() {
        return why.isEmpty();
    }
}
