package settlemark.record;

import de.siegmar.fastcsv.writer.CsvWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.StringWriter;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import settlemark.measure.Channel;
import settlemark.measure.Role;
import settlemark.measure.SampleStatus;
import settlemark.session.ProbeSetup;
import settlemark.session.RecordWriter;
import settlemark.session.SampleBlock;
import settlemark.session.SessionHeader;
import settlemark.session.StoreException;

/** Every sample as CSV, channel by channel, in the unit in which it was measured. */
final class SamplesCsv {
    private static final List<String> HEAD =
            List.of("origin", "time", "session_seconds", "probe", "channel", "role", "value", "unit_ucum", "status");

    private static final String LINE_END = "\r\n";
    private static final long SECOND = 1_000_000_000L;
    private static final int LONG_ENOUGH = 1 << 13;

    private final SessionHeader header;
    private final Times times;
    private final StringBuilder text = new StringBuilder();

    SamplesCsv(SessionHeader header) {
        this.header = header;
        this.times = new Times(header);
    }

    /** In UTF-8. */
    void write(OutputStream out, RecordWriter.SampleSource samples) throws IOException, StoreException {
        text.append(line(HEAD)).append(LINE_END);
        for (int probe = 0; probe < header.probes().size(); probe++) {
            ProbeSetup setup = header.probes().get(probe);
            for (int channel = 0; channel < setup.channels().size(); channel++) {
                block(out, setup, setup.channels().get(channel), samples.samples(probe, channel));
            }
        }
        pass(out);
    }

    /** What is the same in all lines of a channel is put into the form of CSV once. */
    private void block(OutputStream out, ProbeSetup setup, Channel channel, SampleBlock block) throws IOException {
        Role role = setup.roles().get(channel.name());
        String before = line(List.of(Cells.origin(header))) + ",";
        String between = ","
                + line(List.of(Cells.text(setup.name()), Cells.text(channel.name()), role == null ? "" : role.word()))
                + ",";
        Map<SampleStatus, String> after = new EnumMap<>(SampleStatus.class);
        for (SampleStatus status : SampleStatus.values()) {
            after.put(
                    status,
                    "," + line(List.of(channel.unit().code(), status.name().toLowerCase(Locale.ROOT))) + LINE_END);
        }
        for (int i = 0; i < block.size(); i++) {
            long time = block.timesNanos()[i];
            text.append(before);
            times.iso(time, text);
            text.append(',');
            seconds(time, text);
            text.append(between).append(Cells.number(block.values()[i])).append(after.get(block.status(i)));
            if (text.length() >= LONG_ENOUGH) {
                pass(out);
            }
        }
    }

    /** Whole lines: an encoder that is given one at a time takes longer than all the rest. */
    private void pass(OutputStream out) throws IOException {
        out.write(text.toString().getBytes(StandardCharsets.UTF_8));
        text.setLength(0);
    }

    private static String line(List<String> cells) throws IOException {
        StringWriter text = new StringWriter();
        CsvWriter csv = CsvWriter.builder().build(text);
        csv.writeRecord(cells);
        csv.flush();
        String line = text.toString();
        return line.substring(0, line.length() - LINE_END.length());
    }

    /** Nanoseconds as seconds, without the rounding of a binary fraction. */
    private static void seconds(long nanos, StringBuilder into) {
        if (nanos < 0) {
            into.append(BigDecimal.valueOf(nanos, 9).toPlainString());
            return;
        }
        into.append(nanos / SECOND).append('.');
        long rest = nanos % SECOND;
        for (long digit = SECOND / 10; digit > 0; digit /= 10) {
            into.append((char) ('0' + rest / digit % 10));
        }
    }
}
