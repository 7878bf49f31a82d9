package settlemark.record;

import java.awt.geom.AffineTransform;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * How a picture must be turned to stand upright: tag 0x0112 of the Exif data in a JPEG file (CIPA DC-008, 4.6.4), 1 to 8.
 *
 * @param value 1 where it stands upright, or nothing is said
 */
record Upright(int value) {
    private static final int START_OF_IMAGE = 0xFFD8;
    private static final int APPLICATION_1 = 0xFFE1;
    private static final int START_OF_SCAN = 0xFFDA;
    private static final int ORIENTATION = 0x0112;
    private static final int EXIF_HEAD = 6;
    private static final int ENTRY_BYTES = 12;
    private static final Upright NOT_SAID = new Upright(1);

    /** Whether width and height change places. */
    boolean swaps() {
        return value >= 5;
    }

    /**
     * Brings a picture into its upright place.
     *
     * @param width of the picture as it lies in the file
     */
    AffineTransform transform(double width, double height) {
        return switch (value) {
            case 2 -> new AffineTransform(-1, 0, 0, 1, width, 0);
            case 3 -> new AffineTransform(-1, 0, 0, -1, width, height);
            case 4 -> new AffineTransform(1, 0, 0, -1, 0, height);
            case 5 -> new AffineTransform(0, 1, 1, 0, 0, 0);
            case 6 -> new AffineTransform(0, 1, -1, 0, height, 0);
            case 7 -> new AffineTransform(0, -1, -1, 0, height, width);
            case 8 -> new AffineTransform(0, -1, 1, 0, 0, width);
            default -> new AffineTransform();
        };
    }

    /** As a JPEG file says; what cannot be understood says nothing. */
    static Upright of(byte[] file) {
        ByteBuffer in = ByteBuffer.wrap(file);
        if (in.remaining() < 4 || (in.getShort() & 0xFFFF) != START_OF_IMAGE) {
            return NOT_SAID;
        }
        while (in.remaining() >= 4) {
            int marker = in.getShort() & 0xFFFF;
            int length = in.getShort() & 0xFFFF;
            if (marker == START_OF_SCAN || marker < 0xFF00 || length < 2 || length - 2 > in.remaining()) {
                return NOT_SAID;
            }
            ByteBuffer segment = in.slice(in.position(), length - 2);
            if (marker == APPLICATION_1 && isExif(segment)) {
                return ofExif(segment.slice(EXIF_HEAD, segment.capacity() - EXIF_HEAD));
            }
            in.position(in.position() + length - 2);
        }
        return NOT_SAID;
    }

    private static boolean isExif(ByteBuffer segment) {
        return segment.capacity() > EXIF_HEAD + 8 && segment.getInt(0) == 0x45786966 && segment.getShort(4) == 0;
    }

    private static Upright ofExif(ByteBuffer tiff) {
        tiff.order(tiff.getShort(0) == 0x4949 ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
        int at = tiff.getInt(4);
        if (at < 8 || at > tiff.capacity() - 2) {
            return NOT_SAID;
        }
        int entries = tiff.getShort(at) & 0xFFFF;
        for (int i = 0; i < entries; i++) {
            int entry = at + 2 + i * ENTRY_BYTES;
            if (entry > tiff.capacity() - ENTRY_BYTES) {
                return NOT_SAID;
            }
            if ((tiff.getShort(entry) & 0xFFFF) == ORIENTATION) {
                int said = tiff.getShort(entry + 8);
                return said >= 1 && said <= 8 ? new Upright(said) : NOT_SAID;
            }
        }
        return NOT_SAID;
    }
}
