package settlemark.ui;

import java.awt.Component;
import java.awt.Container;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;

/** Lays out and paints components without a display. */
final class Painting {
    private Painting() {}

    static Look look() {
        return look(1);
    }

    static Look look(double textScale) {
        return new Look(false, textScale, Look.USUAL_PIXELS_PER_MM);
    }

    /** Components that are on no screen lay out nothing by themselves. */
    static void layOut(Container container) {
        container.doLayout();
        for (Component child : container.getComponents()) {
            if (child instanceof Container inner) {
                layOut(inner);
            }
        }
    }

    static BufferedImage paint(Component component) {
        BufferedImage image = new BufferedImage(
                Math.max(1, component.getWidth()), Math.max(1, component.getHeight()), BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        g.setColor(java.awt.Color.WHITE);
        g.fillRect(0, 0, image.getWidth(), image.getHeight());
        component.paint(g);
        g.dispose();
        return image;
    }

    /** Luminance of a pixel, 0 to 255 (Rec. 601 weights, as a copying machine sees it). */
    static int grey(BufferedImage image, int x, int y) {
        int rgb = image.getRGB(x, y);
        return (int) Math.round(0.299 * ((rgb >> 16) & 255) + 0.587 * ((rgb >> 8) & 255) + 0.114 * (rgb & 255));
    }

    /** Pixels whose grey differs by more than a quarter of the scale. */
    static int different(BufferedImage a, BufferedImage b) {
        int count = 0;
        for (int y = 0; y < a.getHeight(); y++) {
            for (int x = 0; x < a.getWidth(); x++) {
                count += Math.abs(grey(a, x, y) - grey(b, x, y)) > 64 ? 1 : 0;
            }
        }
        return count;
    }

    /** Every component below and including one, those that are hidden left out. */
    static List<Component> visible(Component root) {
        List<Component> all = new ArrayList<>();
        if (root.isVisible()) {
            all.add(root);
            if (root instanceof Container container) {
                for (Component child : container.getComponents()) {
                    all.addAll(visible(child));
                }
            }
        }
        return all;
    }

    static <T> List<T> visible(Component root, Class<T> kind) {
        return visible(root).stream().filter(kind::isInstance).map(kind::cast).toList();
    }
}
