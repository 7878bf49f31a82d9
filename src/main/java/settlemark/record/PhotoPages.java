package settlemark.record;

import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import settlemark.session.Attachment;
import settlemark.session.JobRecord;

/** The photographs, two side by side, and the names of what else was put beside the session. */
final class PhotoPages {
    private static final double GUTTER = 14;
    private static final double HIGHEST = 170;
    private static final int DIGEST_SHOWN = 16;

    private final JobRecord record;
    private final Times times;
    private final Flow flow;

    PhotoPages(JobRecord record, Flow flow) {
        this.record = record;
        this.times = new Times(record.header());
        this.flow = flow;
    }

    /** A picture that is ready to be printed. */
    private record Ready(byte[] jpeg, double width, double height, List<String> words) {}

    void write() throws IOException {
        List<Ready> ready = new ArrayList<>();
        List<String> others = new ArrayList<>();
        double width = (Flow.WIDTH - GUTTER) / 2;
        for (JobRecord.Filed filed : record.beside().files()) {
            if (filed.picture().length == 0) {
                others.add(words(filed.file()));
            } else {
                try {
                    ready.add(ready(filed, width));
                } catch (IOException e) {
                    others.add(words(filed.file()) + "; it cannot be shown here");
                }
            }
        }
        if (!ready.isEmpty()) {
            flow.need(HIGHEST / 2);
            flow.structure().in("H2", () -> flow.sheet().text("Photographs", Flow.LEFT, flow.y(), Face.STRONG));
            flow.down(8);
        }
        for (int i = 0; i < ready.size(); i += 2) {
            row(ready.subList(i, Math.min(ready.size(), i + 2)), width);
        }
        flow.labelled("Files", others, Face.SMALL, Sheet.THEME.ink());
    }

    private Ready ready(JobRecord.Filed filed, double width) throws IOException {
        byte[] jpeg = filed.file().mediaType().equals(Photograph.MEDIA_TYPE) && plain(filed.picture())
                ? filed.picture()
                : Photograph.clean(filed.picture(), filed.file().name());
        BufferedImage image = ImageIO.read(new ByteArrayInputStream(jpeg));
        if (image == null) {
            throw new IOException(filed.file().name() + " is no picture");
        }
        double scale = Math.min(width / image.getWidth(), HIGHEST / image.getHeight());
        return new Ready(
                jpeg, image.getWidth() * scale, image.getHeight() * scale, Face.FINE.wrap(words(filed.file()), width));
    }

    /** Made by this program: small, upright and in three colours, so it is printed as it is. */
    private static boolean plain(byte[] jpeg) {
        return jpeg.length < (1 << 20) && Upright.of(jpeg).value() == 1 && (jpeg[3] & 0xFF) == 0xE0;
    }

    private String words(Attachment file) {
        return file.name() + ", added " + times.dayAndMinute(file.addedAt()) + ", SHA-256 "
                + file.digest()
                        .substring(0, Math.min(DIGEST_SHOWN, file.digest().length())) + "\u2026";
    }

    private void row(List<Ready> photos, double width) throws IOException {
        double high = photos.stream().mapToDouble(Ready::height).max().orElse(0);
        int lines = photos.stream().mapToInt(p -> p.words().size()).max().orElse(0);
        double total = 12 + high + 10 + lines * Face.FINE.lineHeight();
        flow.need(total);
        for (int i = 0; i < photos.size(); i++) {
            Ready photo = photos.get(i);
            double x = Flow.LEFT + i * (width + GUTTER);
            flow.sheet()
                    .image(
                            photo.jpeg(),
                            new Rectangle2D.Double(x, flow.y(), photo.width(), photo.height()),
                            "Photograph " + photo.words().get(0));
            flow.structure().in("P", () -> words(photo, x, flow.y() + high + 9));
        }
        flow.down(total + 4);
    }

    private void words(Ready photo, double x, double from) {
        double y = from;
        for (String line : photo.words()) {
            flow.sheet().text(line, x, y, Face.FINE, Sheet.THEME.ink2());
            y += Face.FINE.lineHeight();
        }
    }
}
