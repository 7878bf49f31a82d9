package settlemark.link;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.Writer;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.format.DateTimeFormatter;
import java.util.List;
import settlemark.measure.Chunk;
import settlemark.session.CaptureHeader;
import settlemark.session.SessionEvent;

/**
 * Writes raw bytes with their times to a text file, a line for each chunk, that {@link CaptureReader} reads. What was
 * flushed survives a killed process and a power cut. For one thread at a time.
 */
public final class CaptureWriter implements AutoCloseable {
    private static final List<String> REMARKS = List.of(
            "# Raw bytes as they arrived. Each line: seconds since the start, probe, input of its profile (from 0), bytes in",
            "# hexadecimal; or a change of its link. Lines that begin with # are not read.");

    /** On one line; packets, which must stay whole, are far shorter. */
    private static final int MOST_BYTES = 1 << 16;

    private final FileChannel channel;
    private final Writer writer;
    private final List<CaptureHeader.Probe> probes;

    private CaptureWriter(FileChannel channel, CaptureHeader header) {
        this.channel = channel;
        this.writer = new BufferedWriter(Channels.newWriter(channel, StandardCharsets.UTF_8));
        this.probes = header.probes();
    }

    /**
     * Begins a new file.
     *
     * @param remarks further lines for whoever looks into the file
     * @throws java.nio.file.FileAlreadyExistsException where there is one: no capture is overwritten
     */
    public static CaptureWriter create(Path file, CaptureHeader header, List<String> remarks) throws IOException {
        FileChannel channel = FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        CaptureWriter made = new CaptureWriter(channel, header);
        try {
            made.head(header, remarks);
            made.flush();
        } catch (IOException e) {
            channel.close();
            throw e;
        }
        return made;
    }

    private void head(CaptureHeader header, List<String> remarks) throws IOException {
        line(CaptureText.FORMAT + " " + CaptureText.VERSION);
        for (String remark : REMARKS) {
            line(remark);
        }
        for (String remark : remarks) {
            line("# " + CaptureText.oneLine(remark));
        }
        if (header.start().isPresent()) {
            line(CaptureText.START + " "
                    + DateTimeFormatter.ISO_ZONED_DATE_TIME.format(
                            header.start().get()));
        }
        for (CaptureHeader.Probe probe : header.probes()) {
            String digest = probe.digest().isEmpty() ? CaptureText.UNKNOWN : CaptureText.DIGEST + probe.digest();
            String profile = probe.profile().isEmpty() ? CaptureText.UNKNOWN : probe.profile();
            line((CaptureText.PROBE + " " + probe.name() + " " + profile + " " + digest + " "
                            + CaptureText.oneLine(probe.address()))
                    .strip());
        }
    }

    /** Writes bytes or a change of a link; what else happens in a session does not belong into a capture. */
    public void write(SessionEvent event) throws IOException {
        if (event instanceof SessionEvent.Bytes bytes) {
            Chunk chunk = bytes.chunk();
            String input = chunk.input() == Chunk.STRAY ? CaptureText.STRAY : Integer.toString(chunk.input());
            String start = start(event, bytes.probe()) + input + " ";
            int length = chunk.bytes().length;
            for (int from = 0; from < length; from += MOST_BYTES) {
                line(start + CaptureText.HEX.formatHex(chunk.bytes(), from, Math.min(length, from + MOST_BYTES)));
            }
        } else if (event instanceof SessionEvent.Link link) {
            line((start(event, link.probe()) + CaptureText.word(link.change()) + " "
                            + CaptureText.oneLine(link.words()))
                    .strip());
        }
    }

    /** All that was written is safe when this returns. To be called once a second at least. */
    public void flush() throws IOException {
        writer.flush();
        channel.force(false);
    }

    /** Marks the capture as whole and closes it. */
    public void end(long timeNanos) throws IOException {
        line(CaptureText.END + " " + CaptureText.seconds(timeNanos));
        flush();
    }

    @Override
    public void close() throws IOException {
        writer.close();
    }

    private String start(SessionEvent event, int probe) {
        return CaptureText.seconds(event.timeNanos()) + " " + probes.get(probe).name() + " ";
    }

    private void line(String text) throws IOException {
        writer.write(text);
        writer.write('\n');
    }
}
