package settlemark.profile;

import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;

/** The checksum and its parameters. */
final class ChecksumReader {
    private static final List<String> ALGORITHMS = List.of("crc", "sum", "xor", "lrc");

    private ChecksumReader() {}

    static Optional<Checksum> read(Section checksum) {
        List<String> named = checksum.present(ALGORITHMS);
        if (named.size() != 1) {
            checksum.error(
                    "checksum must have exactly one of " + String.join(", ", ALGORITHMS) + ", got " + Words.got(named));
            return Optional.empty();
        }
        return algorithm(checksum, named.get(0))
                .map(algorithm -> new Checksum(
                        algorithm,
                        Words.order(checksum),
                        checksum.integer("covers-from", 0),
                        checksum.integer("followed-by", 0),
                        checksum.text("written", "bytes").equals("hex"),
                        ByteText.of(checksum.text("lead-in", "").getBytes(StandardCharsets.US_ASCII)),
                        checksum.line()));
    }

    private static Optional<Checksum.Algorithm> algorithm(Section checksum, String name) {
        Section section = checksum.child(name).orElseThrow();
        return switch (name) {
            case "crc" -> crc(section);
            case "sum" -> Optional.of(new Checksum.Sum(section.integer("width", 8), section.flag("negated")));
            case "lrc" -> Optional.of(new Checksum.Sum(8, true));
            default -> Optional.of(new Checksum.Xor());
        };
    }

    private static Optional<Checksum.Algorithm> crc(Section crc) {
        int width = crc.integer("width", 0);
        boolean fits = true;
        for (String key : List.of("poly", "init", "xorout", "check")) {
            if (crc.has(key) && crc.bits(key).bitLength() > width) {
                crc.error(key, key + " must fit " + width + " bits, got 0x" + hex(crc.bits(key)));
                fits = false;
            }
        }
        if (!fits) {
            return Optional.empty();
        }
        Checksum.Crc parameters = new Checksum.Crc(
                width,
                crc.bits("poly").longValue(),
                crc.bits("init").longValue(),
                crc.flag("refin"),
                crc.flag("refout"),
                crc.bits("xorout").longValue());
        return provesItself(crc, parameters) ? Optional.of(parameters) : Optional.empty();
    }

    private static boolean provesItself(Section crc, Checksum.Crc parameters) {
        if (!crc.has("check")) {
            return true;
        }
        long got = new CrcTable(parameters).of("123456789".getBytes(StandardCharsets.US_ASCII));
        if (got == crc.bits("check").longValue()) {
            return true;
        }
        crc.error(
                "check",
                "check must be 0x" + hex(new BigInteger(Long.toUnsignedString(got))) + " by these parameters, got 0x"
                        + hex(crc.bits("check")) + "; compare width, poly, init, refin, refout and xorout");
        return false;
    }

    private static String hex(BigInteger bits) {
        return bits.toString(16).toUpperCase(java.util.Locale.ROOT);
    }
}
