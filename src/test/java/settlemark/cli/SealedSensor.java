package settlemark.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** A sensor with encrypted frames; key, address and frame are the example of the page bthome.io/encryption. */
public final class SealedSensor {
    public static final String KEY = "231D39C1D7CC1AB1AEE224CD096DB932";
    public static final String ADDRESS = "54:48:E6:8F:80:A5";
    public static final String FRAME = "41 E4 45 F3 C9 96 2B 33 22 11 00 6C 7C 45 19";

    private SealedSensor() {}

    public static Path profile(Path folder) throws IOException {
        return Files.writeString(folder.resolve("sealed.yaml"), """
                language: 1
                id: sealed
                name: Sealed sensor
                link: {ble: advertising}
                service-data: "FCD2"
                cipher: bthome-v2
                framing: {packet: {maximum-bytes: 255}}
                tagged: {at: 1, tag: uint8, lengths: {0x02: 2, 0x03: 2}}
                fields:
                  - {name: warmth, tag: 0x02, type: int16, scale: 0.01}
                  - {name: damp, tag: 0x03, type: uint16, scale: 0.01}
                channels:
                  - {id: temperature, label: T, field: warmth, unit: Cel}
                  - {id: humidity, label: H, field: damp, unit: "%"}
                """);
    }
}
