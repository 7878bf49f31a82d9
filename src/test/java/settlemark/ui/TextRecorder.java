package settlemark.ui;

import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.GraphicsConfiguration;
import java.awt.Image;
import java.awt.Shape;
import java.awt.font.TextAttribute;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.awt.image.ImageObserver;
import java.awt.image.RenderedImage;
import java.awt.image.renderable.RenderableImage;
import java.text.AttributedCharacterIterator;
import java.util.ArrayList;
import java.util.List;
import org.apache.batik.ext.awt.g2d.AbstractGraphics2D;
import org.apache.batik.ext.awt.g2d.GraphicContext;

/** Draws nothing; remembers each text with the place that it would have had and what it would have been cut off by. */
final class TextRecorder extends AbstractGraphics2D {
    private final List<Text> texts;
    private final Graphics metrics = new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB).createGraphics();

    /**
     * @param place of its capitals and figures on the whole picture
     * @param within what the component that drew it may paint on
     * @param size of its font
     */
    record Text(String words, Rectangle2D place, Rectangle2D within, double size) {}

    TextRecorder() {
        super(false);
        texts = new ArrayList<>();
        gc = new GraphicContext(new AffineTransform());
    }

    private TextRecorder(TextRecorder before) {
        super(before);
        texts = before.texts;
    }

    List<Text> texts() {
        return List.copyOf(texts);
    }

    @Override
    public void drawString(String words, float x, float y) {
        if (words.isBlank()) {
            return;
        }
        Font font = getFont();
        double size = font.getSize2D();
        boolean tails = words.chars().anyMatch(c -> "gjpqy,;()[]\u00e7".indexOf(c) >= 0);
        double width = font.getStringBounds(words, Look.FONTS).getWidth();
        Rectangle2D own = new Rectangle2D.Double(x, y - 0.73 * size, width, (0.73 + (tails ? 0.18 : 0)) * size);
        Shape clip = getClip();
        AffineTransform to = getTransform();
        texts.add(new Text(
                words,
                to.createTransformedShape(own).getBounds2D(),
                clip == null
                        ? new Rectangle2D.Double(-1e6, -1e6, 2e6, 2e6)
                        : to.createTransformedShape(clip).getBounds2D(),
                size * Math.abs(to.getDeterminant())));
    }

    @Override
    public void drawString(AttributedCharacterIterator words, float x, float y) {
        StringBuilder all = new StringBuilder();
        for (char c = words.first(); c != AttributedCharacterIterator.DONE; c = words.next()) {
            all.append(c);
        }
        words.first();
        if (words.getAttribute(TextAttribute.FONT) instanceof Font font) {
            setFont(font);
        }
        drawString(all.toString(), x, y);
    }

    @Override
    public Graphics create() {
        return new TextRecorder(this);
    }

    @Override
    public FontMetrics getFontMetrics(Font font) {
        return metrics.getFontMetrics(font);
    }

    @Override
    public GraphicsConfiguration getDeviceConfiguration() {
        return new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB)
                .createGraphics()
                .getDeviceConfiguration();
    }

    @Override
    public boolean drawImage(Image image, int x, int y, ImageObserver observer) {
        return true;
    }

    @Override
    public boolean drawImage(Image image, int x, int y, int width, int height, ImageObserver observer) {
        return true;
    }

    @Override
    public void draw(Shape shape) {}

    @Override
    public void fill(Shape shape) {}

    @Override
    public void drawRenderedImage(RenderedImage image, AffineTransform transform) {}

    @Override
    public void drawRenderableImage(RenderableImage image, AffineTransform transform) {}

    @Override
    public void setXORMode(java.awt.Color color) {}

    @Override
    public void copyArea(int x, int y, int width, int height, int dx, int dy) {}

    @Override
    public void dispose() {}
}
