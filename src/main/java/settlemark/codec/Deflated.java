package settlemark.codec;

import java.util.Arrays;
import java.util.zip.DataFormatException;
import java.util.zip.Deflater;
import java.util.zip.Inflater;

/** Bytes in RFC 1951's form, or as they are where that is not shorter: then they are as long as they must come out. */
final class Deflated {
    private Deflated() {}

    static byte[] pack(byte[] bytes, boolean quickly) {
        Deflater deflater = new Deflater(quickly ? Deflater.BEST_SPEED : Deflater.DEFAULT_COMPRESSION, true);
        try {
            deflater.setInput(bytes);
            deflater.finish();
            byte[] packed = new byte[bytes.length];
            int size = deflater.deflate(packed);
            boolean shorter = deflater.finished() && size < bytes.length;
            return shorter ? Arrays.copyOf(packed, size) : bytes;
        } finally {
            deflater.end();
        }
    }

    static byte[] unpack(byte[] packed, int size) {
        if (packed.length == size) {
            return packed;
        }
        Inflater inflater = new Inflater(true);
        try {
            // RFC 1951 without the wrapper of RFC 1950 wants a byte more than there is.
            inflater.setInput(Arrays.copyOf(packed, packed.length + 1));
            byte[] bytes = new byte[size];
            int got = 0;
            while (got < size && !inflater.finished()) {
                int more = inflater.inflate(bytes, got, size - got);
                if (more == 0) {
                    break;
                }
                got += more;
            }
            if (got != size) {
                throw new IllegalArgumentException("deflated bytes gave " + got + " instead of " + size);
            }
            return bytes;
        } catch (DataFormatException e) {
            throw new IllegalArgumentException("bytes that are not deflated: " + e.getMessage(), e);
        } finally {
            inflater.end();
        }
    }
}
