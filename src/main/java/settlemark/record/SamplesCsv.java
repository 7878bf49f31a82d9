package settlemark.record;

import de.siegmar.fastcsv.writer.CsvWriter;
import java.io.IOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import settlemark.measure.Channel;
import settlemark.measure.Role;
import settlemark.session.ProbeSetup;
import settlemark.session.RecordWriter;
import settlemark.session.SampleBlock;
import settlemark.session.SessionHeader;
import settlemark.session.StoreException;

/** Every sample as CSV, channel by channel, in the unit in which it was measured. */
final class SamplesCsv {
    private static final List<String> HEAD =
            List.of("origin", "time", "session_seconds", "probe", "channel", "role", "value", "unit_ucum", "status");

    private final SessionHeader header;
    private final Times times;

    SamplesCsv(SessionHeader header) {
        this.header = header;
        this.times = new Times(header);
    }

    void write(Writer writer, RecordWriter.SampleSource samples) throws IOException, StoreException {
        CsvWriter csv = CsvWriter.builder().build(writer);
        csv.writeRecord(HEAD);
        for (int probe = 0; probe < header.probes().size(); probe++) {
            ProbeSetup setup = header.probes().get(probe);
            for (int channel = 0; channel < setup.channels().size(); channel++) {
                block(csv, setup, setup.channels().get(channel), samples.samples(probe, channel));
            }
        }
        csv.flush();
    }

    private void block(CsvWriter csv, ProbeSetup setup, Channel channel, SampleBlock block) {
        String origin = Cells.origin(header);
        String probe = Cells.text(setup.name());
        String name = Cells.text(channel.name());
        Role role = setup.roles().get(channel.name());
        String word = role == null ? "" : role.word();
        for (int i = 0; i < block.size(); i++) {
            csv.writeRecord(
                    origin,
                    times.iso(block.timesNanos()[i]),
                    seconds(block.timesNanos()[i]),
                    probe,
                    name,
                    word,
                    Cells.number(block.values()[i]),
                    channel.unit().code(),
                    block.status(i).name().toLowerCase(Locale.ROOT));
        }
    }

    /** Nanoseconds as seconds, without the rounding of a binary fraction. */
    private static String seconds(long nanos) {
        return BigDecimal.valueOf(nanos, 9).toPlainString();
    }
}
