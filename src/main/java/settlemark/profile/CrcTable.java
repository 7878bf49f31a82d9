package settlemark.profile;

/**
 * A cyclic redundancy check, a byte at a time by table, for any parameters of the public catalogues: the register is
 * kept reflected where the bytes go in reflected, else left-aligned in 64 bits. Method: R. N. Williams, A Painless
 * Guide to CRC Error Detection Algorithms, 1993, sections 9 to 16.
 */
public final class CrcTable {
    private final Checksum.Crc crc;
    private final long[] table = new long[256];
    private final long start;

    public CrcTable(Checksum.Crc crc) {
        this.crc = crc;
        int shift = 64 - crc.width();
        for (int b = 0; b < table.length; b++) {
            table[b] =
                    crc.refin() ? reflectedEntry(b, Long.reverse(crc.poly() << shift)) : entry(b, crc.poly() << shift);
        }
        this.start = crc.refin() ? Long.reverse(crc.init() << shift) : crc.init() << shift;
    }

    /** The CRC of all the bytes. */
    public long of(byte[] bytes) {
        return of(bytes, 0, bytes.length);
    }

    /** The CRC of some of the bytes, in the low bits. */
    public long of(byte[] bytes, int from, int to) {
        long register = start;
        if (crc.refin()) {
            for (int i = from; i < to; i++) {
                register = register >>> 8 ^ table[(int) (register ^ bytes[i]) & 0xFF];
            }
        } else {
            for (int i = from; i < to; i++) {
                register = register << 8 ^ table[(int) (register >>> 56 ^ bytes[i]) & 0xFF];
            }
        }
        return result(register);
    }

    private long result(long register) {
        int shift = 64 - crc.width();
        // In both forms, the bits of the register as the algorithm's description has them.
        long value = crc.refin() ? Long.reverse(register) >>> shift : register >>> shift;
        long out = crc.refout() ? Long.reverse(value) >>> shift : value;
        return out ^ crc.xorout();
    }

    private static long reflectedEntry(int b, long poly) {
        long entry = b;
        for (int bit = 0; bit < 8; bit++) {
            entry = (entry & 1) == 0 ? entry >>> 1 : entry >>> 1 ^ poly;
        }
        return entry;
    }

    private static long entry(int b, long poly) {
        long entry = (long) b << 56;
        for (int bit = 0; bit < 8; bit++) {
            entry = entry >= 0 ? entry << 1 : entry << 1 ^ poly;
        }
        return entry;
    }
}
