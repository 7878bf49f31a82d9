package settlemark.record;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Iterator;
import java.util.Locale;
import java.util.Set;
import javax.imageio.IIOException;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/**
 * A photograph as it is kept and printed: upright, no larger than it needs to be, in sRGB as JPEG (ITU-T T.81), and
 * without anything else that the camera wrote into its file, such as where it was taken.
 */
public final class Photograph {
    /** Media type of what is made. */
    public static final String MEDIA_TYPE = "image/jpeg";

    private static final int LONGEST_SIDE = 1600;
    private static final Set<String> HEIF =
            Set.of("heic", "heix", "hevc", "hevx", "heim", "heis", "mif1", "msf1", "avif", "avis");

    private static final int MOST_SIDE = 30_000;
    private static final long MOST_PIXELS = 200_000_000L;
    private static final float QUALITY = 0.85f;

    private Photograph() {}

    /** Whether a file's name says that it is a picture. */
    public static boolean named(String name) {
        return name.toLowerCase(Locale.ROOT).matches(".*\\.(jpe?g|png|gif|bmp|tiff?|heic|heif|webp|avif)");
    }

    /**
     * A picture made anew.
     *
     * @param name for messages
     * @throws NoPictureException where it is no picture that can be read, with the remedy
     * @throws IOException where it is too large, with the remedy
     */
    public static byte[] clean(byte[] file, String name) throws IOException {
        if (isHeif(file)) {
            throw new NoPictureException(
                    name
                            + " is a HEIC or AVIF picture, as telephones take them, and those are not read here: send or save it"
                            + " as JPEG (a telephone's camera can be set to take JPEG from the start)",
                    null);
        }
        try {
            return jpeg(read(file, name, LONGEST_SIDE));
        } catch (IIOException | EOFException | RuntimeException e) {
            // The readers of the platform throw many kinds where a file is damaged.
            throw new NoPictureException(unreadable(name), e);
        }
    }

    /** ISO 14496-12, 4.3: a box "ftyp" with the brand; those of HEIF and AVIF pictures (ISO 23008-12, Annex B). */
    private static boolean isHeif(byte[] file) {
        if (file.length < 12 || !new String(file, 4, 4, StandardCharsets.ISO_8859_1).equals("ftyp")) {
            return false;
        }
        return HEIF.contains(new String(file, 8, 4, StandardCharsets.ISO_8859_1));
    }

    private static String unreadable(String name) {
        return name
                + " is no picture that can be read (JPEG, PNG, GIF, BMP and TIFF can); it may be damaged, or save it"
                + " as JPEG first";
    }

    private static BufferedImage read(byte[] file, String name, int longest) throws IOException {
        try (ImageInputStream in = new MemoryCacheImageInputStream(new ByteArrayInputStream(file))) {
            Iterator<ImageReader> readers = ImageIO.getImageReaders(in);
            if (!readers.hasNext()) {
                throw new NoPictureException(unreadable(name), null);
            }
            ImageReader reader = readers.next();
            try {
                reader.setInput(in, true, false);
                int width = reader.getWidth(0);
                int height = reader.getHeight(0);
                checkSize(name, width, height);
                ImageReadParam param = reader.getDefaultReadParam();
                int every = Math.max(1, Math.max(width, height) / (2 * longest));
                param.setSourceSubsampling(every, every, 0, 0);
                BufferedImage image = reader.read(0, param);
                return upright(image, Upright.of(file), longest);
            } finally {
                reader.dispose();
            }
        }
    }

    private static void checkSize(String name, int width, int height) throws IOException {
        if (width > MOST_SIDE || height > MOST_SIDE || (long) width * height > MOST_PIXELS) {
            throw new IOException(name + " has " + width + " by " + height + " pixels, at most " + MOST_SIDE
                    + " a side and " + MOST_PIXELS + " in all are read; make it smaller");
        }
    }

    /** Turned as the camera said, scaled, and on white where it is transparent. */
    private static BufferedImage upright(BufferedImage image, Upright turn, int longest) {
        double scale = Math.min(1, (double) longest / Math.max(image.getWidth(), image.getHeight()));
        int width = (int) Math.max(1, Math.round(image.getWidth() * scale));
        int height = (int) Math.max(1, Math.round(image.getHeight() * scale));
        BufferedImage made = new BufferedImage(
                turn.swaps() ? height : width, turn.swaps() ? width : height, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = made.createGraphics();
        g.setColor(Color.WHITE);
        g.fillRect(0, 0, made.getWidth(), made.getHeight());
        g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        AffineTransform placed = turn.transform(width, height);
        placed.scale((double) width / image.getWidth(), (double) height / image.getHeight());
        g.drawImage(image, placed, null);
        g.dispose();
        return made;
    }

    private static byte[] jpeg(BufferedImage image) throws IOException {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            ImageWriteParam param = writer.getDefaultWriteParam();
            param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            param.setCompressionQuality(QUALITY);
            writer.setOutput(out);
            writer.write(null, new IIOImage(image, null, null), param);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }
}
