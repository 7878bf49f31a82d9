package settlemark.archproof.ui;

/** Something that the core must not know. */
public final class Window {
    public int widthPixels() {
        return 1280;
    }
}
