package settlemark.ui;

import java.awt.Container;
import java.awt.image.BufferedImage;
import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Map;
import javax.imageio.ImageIO;
import settlemark.session.Snapshot;

/** Paints the guide's pictures: every view, light and dark, on a small screen with larger text and on a wide one. */
public final class GuidePictures {
    private static final Map<String, String> NAMES = Map.of(
            "start first", "first-start",
            "start plate", "plate",
            "start probes", "probes",
            "start choice of a probe", "choice",
            "start keys", "keys-start",
            "workshop frames", "workshop",
            "bench of 64", "bench");

    private final File folder;
    private final int width;
    private final int height;
    private final boolean dark;
    private final Look look;

    private GuidePictures(File folder, int width, int height, boolean dark, double textScale) {
        this.folder = folder;
        this.width = width;
        this.height = height;
        this.dark = dark;
        this.look = new Look(dark, textScale, Look.USUAL_PIXELS_PER_MM);
    }

    /**
     * @param moments of a job by the name of their picture
     * @param deeds what is pressed in some of them
     */
    public static void paint(File folder, Map<String, Snapshot> moments, Map<String, String> deeds) {
        for (boolean dark : new boolean[] {false, true}) {
            for (boolean wide : new boolean[] {false, true}) {
                DeskPaneTest.onEdt(() -> {
                    Desktop.laf(dark);
                    GuidePictures pictures = wide
                            ? new GuidePictures(folder, 1920, 1080, dark, 1)
                            : new GuidePictures(folder, 1280, 720, dark, 1.25);
                    pictures.all(moments, deeds);
                    return 0;
                });
            }
        }
    }

    private void all(Map<String, Snapshot> moments, Map<String, String> deeds) {
        moments.forEach((name, snapshot) -> WalkedScenes.moment(
                name, snapshot, Deed.valueOf(deeds.getOrDefault(name, "NOW")), width, height, look, this::keep));
        WalkedScenes.others(width, height, look, (name, pane) -> {
            if (NAMES.containsKey(name)) {
                keep(NAMES.get(name), pane);
            }
        });
    }

    private void keep(String name, Container pane) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        var g = image.createGraphics();
        pane.printAll(g);
        g.dispose();
        try {
            ImageIO.write(image, "png", new File(folder, name + (dark ? "-dark-" : "-light-") + width + ".png"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
