package settlemark.app;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import settlemark.measure.Unit;
import settlemark.profile.Profile;
import settlemark.profile.ProfileReader;
import settlemark.record.ImportedSamples;

/** The profile of a probe whose samples came out of a file: its channels, and a line of text that no device sends. */
final class ImportedProfile {
    private ImportedProfile() {}

    /** @throws IllegalStateException where there cannot be such a profile, with what is wrong */
    static Profile of(int number, boolean simulated, List<ImportedSamples.Column> channels) {
        StringBuilder text = new StringBuilder(String.format(Locale.ROOT, """
                # Made for samples that were imported from a file; no device speaks like this.
                language: 1
                id: imported-%d
                name: Imported samples
                description: Made for samples that were imported from a file.
                simulated: %b

                link:
                  serial: {baud: 9600, data-bits: 8, parity: none, stop-bits: 1, flow: none}

                framing:
                  line: {end: "\\n", maximum-bytes: 4096}

                columns: {separator: ",", count: %d}

                fields:
                """, number, simulated, channels.size()));
        for (int i = 0; i < channels.size(); i++) {
            text.append("  - {name: column-")
                    .append(i)
                    .append(", column: ")
                    .append(i)
                    .append(", type: text}\n");
        }
        text.append("\nchannels:\n");
        for (int i = 0; i < channels.size(); i++) {
            ImportedSamples.Column channel = channels.get(i);
            text.append("  - {id: \"")
                    .append(channel.channel())
                    .append("\", field: column-")
                    .append(i)
                    .append(", ")
                    .append(unit(channel.unit()))
                    .append("}\n");
        }
        return ProfileReader.read("imported samples", text.toString().getBytes(StandardCharsets.UTF_8))
                .orThrow();
    }

    private static String unit(Unit unit) {
        for (Inch inch : Inch.values()) {
            if (unit.equals(inch.unit)) {
                return "unit: \"" + Unit.INCH_OF_WATER.code() + "\", inch-of-water: " + inch.key;
            }
        }
        return "unit: \"" + unit.code() + "\"";
    }

    /** A profile tells them apart by a key of their own. */
    private enum Inch {
        AT_4_C(Unit.inchOfWaterAt4C(), "4-Cel"),
        AT_60_F(Unit.inchOfWaterAt60F(), "60-degF"),
        AT_20_C(Unit.inchOfWaterAt20C(), "20-Cel");

        private final Unit unit;
        private final String key;

        Inch(Unit unit, String key) {
            this.unit = unit;
            this.key = key;
        }
    }
}
