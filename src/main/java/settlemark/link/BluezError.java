package settlemark.link;

/** The Bluetooth service, or the bus on the way to it, refused a call. */
final class BluezError extends Exception {
    private static final long serialVersionUID = 1L;

    /** Own names, beside those of D-Bus and BlueZ. */
    static final String TIME_OUT = "settlemark.TimeOut";

    static final String GIVEN_UP = "settlemark.GivenUp";
    static final String BUS_LOST = "settlemark.BusLost";

    private final String name;

    /**
     * @param name such as {@code org.bluez.Error.InProgress}
     * @param text what the service said besides, may be empty
     */
    BluezError(String name, String text) {
        super(text.isEmpty() ? name : name + ": " + text);
        this.name = name;
    }

    String name() {
        return name;
    }

    /** Whether the name ends so, whoever gave it, such as {@code InProgress}. */
    boolean is(String last) {
        return name.endsWith("." + last);
    }

    /** Whether the text holds some words, such as {@code le-connection-abort-by-local}. */
    boolean says(String words) {
        String text = getMessage();
        return text != null && text.contains(words);
    }
}
