package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.cli.Commands;
import settlemark.cli.Program;
import settlemark.session.Attachment;
import settlemark.store.SqliteStore;

/** Photographs are kept without their place, upright, and stand in the record. */
final class PhotographsTest {
    /** Stands for what a camera writes of the place; looked for byte by byte afterwards. */
    private static final String PLACE = "GPS N 51.4779 W 0.0015";

    @TempDir
    private Path folder = Path.of("");

    private Path workspace = Path.of("");

    @BeforeEach
    void aSession() throws Exception {
        workspace = folder.resolve("w.settlemark");
        try (SqliteStore store = Workspaces.demo(Optional.of(workspace))) {
            TwoMinutes.in(store);
        }
    }

    private record Ran(int code, String out, String err) {}

    private Ran run(String... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Commands.run(new Settlemark(), new PrintWriter(out), new PrintWriter(err), arguments);
        return new Ran(code, out.toString(), err.toString());
    }

    private Ran attach(Path... files) {
        List<String> words = new ArrayList<>(List.of("session", "attach", "latest"));
        for (Path file : files) {
            words.add(file.toString());
        }
        words.addAll(List.of("--workspace", workspace.toString()));
        return run(words.toArray(String[]::new));
    }

    /** 60 wide, 40 high as it lies in the file; Exif says that its top is at the right (6), and where it was taken. */
    private Path turned() throws Exception {
        ByteArrayOutputStream plain = new ByteArrayOutputStream();
        ImageIO.write(new BufferedImage(60, 40, BufferedImage.TYPE_INT_RGB), "jpeg", plain);
        ByteArrayOutputStream exif = new ByteArrayOutputStream();
        exif.writeBytes("Exif\0\0MM\0*".getBytes(StandardCharsets.ISO_8859_1));
        exif.writeBytes(new byte[] {0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, 6, 0, 0, 0, 0, 0, 0});
        exif.writeBytes(PLACE.getBytes(StandardCharsets.US_ASCII));
        int length = exif.size() + 2;
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        file.write(plain.toByteArray(), 0, 2);
        file.writeBytes(new byte[] {(byte) 0xFF, (byte) 0xE1, (byte) (length >> 8), (byte) length});
        file.writeBytes(exif.toByteArray());
        file.write(plain.toByteArray(), 2, plain.size() - 2);
        return Files.write(folder.resolve("plate.jpg"), file.toByteArray());
    }

    @Test
    void aPhotographLosesItsPlaceAndStandsUpright() throws Exception {
        Path photo = turned();
        assertThat(Files.readString(photo, StandardCharsets.ISO_8859_1)).contains(PLACE);
        assertThat(attach(photo).code()).isEqualTo(Program.DONE);
        try (SqliteStore store = Workspaces.reading(Optional.of(workspace))) {
            Attachment kept = store.papers().attachments(1).get(0);
            byte[] content = store.papers().content(kept);
            assertThat(new String(content, StandardCharsets.ISO_8859_1)).doesNotContain("GPS", "Exif");
            BufferedImage image = ImageIO.read(new ByteArrayInputStream(content));
            assertThat(image.getWidth()).isEqualTo(40);
            assertThat(image.getHeight()).isEqualTo(60);
            assertThat(kept.name()).isEqualTo("plate.jpg");
            assertThat(kept.mediaType()).isEqualTo("image/jpeg");
        }
    }

    @Test
    void itStaysAsItIsWhereThatIsWanted() throws Exception {
        Path photo = turned();
        Ran ran = run(
                "session",
                "attach",
                "latest",
                photo.toString(),
                "--keep-location",
                "--workspace",
                workspace.toString());
        assertThat(ran.code()).as(ran.err()).isEqualTo(Program.DONE);
        try (SqliteStore store = Workspaces.reading(Optional.of(workspace))) {
            assertThat(store.papers().content(store.papers().attachments(1).get(0)))
                    .isEqualTo(Files.readAllBytes(photo));
        }
    }

    @Test
    void aPhotographThatIsNoPictureIsRefused() throws Exception {
        Path fake = Files.writeString(folder.resolve("burner.jpg"), "not a picture");
        Ran ran = attach(fake);
        assertThat(ran.code()).isEqualTo(Program.DAMAGED);
        assertThat(ran.err()).contains("burner.jpg is no picture that can be read", "JPEG");
        byte[] whole = Files.readAllBytes(turned());
        Path cut = Files.write(folder.resolve("cut.jpg"), Arrays.copyOf(whole, 120));
        assertThat(attach(cut).err()).contains("cut.jpg is no picture that can be read");
        try (SqliteStore store = Workspaces.reading(Optional.of(workspace))) {
            assertThat(store.papers().attachments(1)).isEmpty();
        }
    }

    @Test
    void aTelephonesOwnFormatIsRefusedWithWhatToDo() throws Exception {
        ByteBuffer box = ByteBuffer.allocate(64);
        box.putInt(24).put("ftypheic".getBytes(StandardCharsets.ISO_8859_1)).putInt(0);
        box.put("mif1heic".getBytes(StandardCharsets.ISO_8859_1)).putInt(40);
        for (String name : List.of("burner.heic", "burner.jpg")) {
            Ran ran = attach(Files.write(folder.resolve(name), box.array()));
            assertThat(ran.code()).as(name).isEqualTo(Program.DAMAGED);
            assertThat(ran.err()).contains(name + " is a HEIC or AVIF picture", "as JPEG");
        }
        try (SqliteStore store = Workspaces.reading(Optional.of(workspace))) {
            assertThat(store.papers().attachments(1)).isEmpty();
        }
    }

    @Test
    void theRecordShowsItAndTheSealCoversIt() throws Exception {
        assertThat(attach(turned(), Files.writeString(folder.resolve("parts.txt"), "orifice 42"))
                        .code())
                .isEqualTo(Program.DONE);
        Path records = folder.resolve("records");
        Ran made = run("record", "latest", "--out", records.toString(), "--workspace", workspace.toString());
        assertThat(made.code()).as(made.err()).isEqualTo(Program.DONE);
        Path pdf = records.resolve("2026-03-14-093000-000-ash-lane.pdf");
        try (var document = org.apache.pdfbox.Loader.loadPDF(pdf.toFile())) {
            String text = new org.apache.pdfbox.text.PDFTextStripper().getText(document);
            assertThat(text).contains("plate.jpg, added", "parts.txt, added", "SHA-256");
        }
        assertThat(Files.readString(records.resolve("2026-03-14-093000-000-ash-lane.json")))
                .contains("\"name\" : \"plate.jpg\"", "\"media_type\" : \"image/jpeg\"");
        assertThat(Files.readString(records.resolve("2026-03-14-093000-000-ash-lane-seal.json")))
                .contains("attachment 1, plate.jpg, added at", "attachment 2, parts.txt");
    }
}
