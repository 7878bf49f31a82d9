package settlemark.profile;

import com.google.re2j.Pattern;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** How the device may be recognised. */
final class RecognitionReader {
    private RecognitionReader() {}

    static List<Recognition> readAll(Section root, Connection connection) {
        List<Recognition> recognitions = new ArrayList<>();
        for (Section item : root.items("recognise")) {
            if (item.isClean()) {
                item.child("ble").ifPresent(ble -> {
                    if (!connection.link().isEmpty() && !connection.mayAdvertise()) {
                        item.error("ble", needs("ble", "ble", connection));
                    }
                    recognitions.add(ble(ble));
                });
                item.child("serial").ifPresent(serial -> {
                    if (!connection.link().isEmpty() && !connection.maySerial() && !connection.mayModbus()) {
                        item.error("serial", needs("serial", "serial or modbus-rtu", connection));
                    }
                    recognitions.add(serial(serial));
                });
            }
        }
        return recognitions;
    }

    private static String needs(String mark, String link, Connection connection) {
        return "recognition by " + mark + " needs the link " + link + ", got " + connection.shown() + "; remove one";
    }

    private static Recognition ble(Section ble) {
        List<UUID> services =
                ble.texts("services").stream().map(Words::uuid).distinct().toList();
        return new Recognition.Ble(pattern(ble, "name"), services, number(ble, "company"));
    }

    private static Recognition serial(Section serial) {
        return new Recognition.Serial(
                pattern(serial, "description"), number(serial, "vendor"), number(serial, "product"));
    }

    private static Optional<Pattern> pattern(Section section, String key) {
        return section.has(key) ? PatternReader.read(section, key) : Optional.empty();
    }

    private static Optional<Integer> number(Section section, String key) {
        return section.has(key) ? Optional.of(section.integer(key, 0)) : Optional.empty();
    }
}
