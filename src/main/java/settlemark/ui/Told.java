package settlemark.ui;

/** An answer to a key or a failure, for as many looks as it stays. */
final class Told {
    private String words = "";
    private int looks;

    /** @param newLooks how many looks it stays */
    void say(String newWords, int newLooks) {
        words = newWords;
        looks = newLooks;
    }

    /** Stays until something else is said or it is forgotten. */
    void stay(String newWords) {
        say(newWords, Integer.MAX_VALUE);
    }

    void forget() {
        say("", 0);
    }

    /** One look has passed; returns whether the words went with it. */
    boolean look() {
        if (looks == 0 || looks == Integer.MAX_VALUE || --looks > 0) {
            return false;
        }
        words = "";
        return true;
    }

    boolean isEmpty() {
        return words.isEmpty();
    }

    /** Empty where nothing is said. */
    String words() {
        return words;
    }
}
