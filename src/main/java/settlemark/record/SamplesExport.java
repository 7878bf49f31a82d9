package settlemark.record;

import de.siegmar.fastcsv.writer.CsvWriter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import settlemark.measure.Channel;
import settlemark.measure.Role;
import settlemark.session.ProbeSetup;
import settlemark.session.SampleBlock;
import settlemark.session.SessionHeader;
import settlemark.session.Span;
import settlemark.session.StoreException;

/**
 * Every sample of a session, a line each, stretch of time by stretch of time, and in each channel by channel. Every double
 * comes back bit for bit, and every line says for itself where it comes from, in which unit and when.
 */
final class SamplesExport {
    /** So many samples are held at once, more or less. */
    private static final long SAMPLES_AT_ONCE = 200_000;

    private static final DateTimeFormatter ISO =
            DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss.SSSSSSSSSxxx", Locale.ROOT);

    private final SessionHeader header;
    private final ExportSource source;

    SamplesExport(SessionHeader header, ExportSource source) {
        this.header = header;
        this.source = source;
    }

    void write(Writer writer) throws IOException, StoreException {
        CsvWriter csv = CsvWriter.builder().build(writer);
        try {
            csv.writeRecord(SampleColumns.ALL);
            long duration = Math.max(1, source.durationNanos());
            long stretches = Math.min(duration, 1 + source.samples() / SAMPLES_AT_ONCE);
            long step = duration / stretches + 1;
            for (long i = 0; i < stretches; i++) {
                // A probe that dates its samples by itself may be a little before the beginning or behind the end.
                long from = i == 0 ? Long.MIN_VALUE : i * step;
                long to = i == stretches - 1 ? Long.MAX_VALUE : (i + 1) * step - 1;
                stretch(csv, new Span(from, to));
            }
            csv.flush();
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    private void stretch(CsvWriter csv, Span span) throws StoreException {
        for (int probe = 0; probe < header.probes().size(); probe++) {
            ProbeSetup setup = header.probes().get(probe);
            for (int channel = 0; channel < setup.channels().size(); channel++) {
                block(csv, setup, setup.channels().get(channel), source.samples(probe, channel, span));
            }
        }
    }

    private void block(CsvWriter csv, ProbeSetup setup, Channel channel, SampleBlock block) {
        String origin = header.simulated() ? SampleColumns.SIMULATED : SampleColumns.MEASURED;
        String session = GuardedText.of(header.key());
        String probe = GuardedText.of(setup.name());
        String name = GuardedText.of(channel.name());
        Role role = setup.roles().get(channel.name());
        String word = role == null ? "" : role.word();
        for (int i = 0; i < block.size(); i++) {
            long nanos = block.timesNanos()[i];
            csv.writeRecord(
                    origin,
                    session,
                    ISO.format(OffsetDateTime.ofInstant(header.startedAt().plusNanos(nanos), header.zone())),
                    Long.toString(nanos),
                    probe,
                    name,
                    word,
                    ExactNumber.text(block.values()[i]),
                    channel.unit().code(),
                    block.status(i).name().toLowerCase(Locale.ROOT));
        }
    }
}
