package settlemark.ui;

import java.util.Optional;

/**
 * How the window looks at first.
 *
 * @param dark dark or light
 * @param pixelsPerMm of the screen, as a ruler says; empty for a screen of 96 dots to the inch
 * @param widthPx of the window's inside, 0 for as much as the screen has
 * @param heightPx of the window's inside, 0 for as much as the screen has
 */
public record DesktopOptions(boolean dark, Optional<Double> pixelsPerMm, int widthPx, int heightPx) {
    /** Light, on a usual screen, as large as it goes. */
    public static final DesktopOptions USUAL = new DesktopOptions(false, Optional.empty(), 0, 0);

    public DesktopOptions {
        pixelsPerMm.ifPresent(p -> {
            if (!(p > 0)) {
                throw new IllegalArgumentException("pixels per millimetre must be above 0, got " + p);
            }
        });
        if (widthPx < 0 || heightPx < 0) {
            throw new IllegalArgumentException("a window has no negative size, got " + widthPx + " x " + heightPx);
        }
    }
}
