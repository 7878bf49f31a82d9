package settlemark.app;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import settlemark.link.CaptureReader;
import settlemark.measure.Chunk;
import settlemark.profile.ByteText;
import settlemark.profile.Profile;
import settlemark.profile.ProfileDraft;
import settlemark.profile.ProfileReader;
import settlemark.profile.SerialLine;
import settlemark.session.CaptureHeader;
import settlemark.session.CaptureProblem;
import settlemark.session.CaptureSink;
import settlemark.session.LinkChange;
import settlemark.session.LinkException;
import settlemark.session.LinkListener;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeLink;
import settlemark.session.SessionEvent;
import settlemark.ui.WorkshopHost;

/** Frames for the profile workshop, from files and ports, and the place of what it makes. */
final class WorkshopRun implements WorkshopHost {
    private static final int MOST_CHUNKS = 5000;
    private static final long MOST_BYTES = 8L << 20;

    private final Hosts hosts;
    private final Path folder;
    private final ExecutorService work = Executors.newSingleThreadExecutor(task -> {
        Thread thread = new Thread(task, "work");
        thread.setDaemon(true);
        return thread;
    });
    private @Nullable ProbeLink link;

    /** @param folder for the profiles that are saved */
    WorkshopRun(Hosts hosts, Path folder) {
        this.hosts = hosts;
        this.folder = folder;
    }

    @Override
    public void frames(Path file, Consumer<List<Chunk>> done, Consumer<String> failed) {
        work.execute(() -> {
            List<Chunk> chunks;
            try {
                chunks = read(file);
            } catch (IOException | IllegalArgumentException e) {
                failed.accept(file + ": " + (e instanceof NoSuchFileException ? "no such file" : e.getMessage()));
                return;
            }
            done.accept(chunks);
        });
    }

    private static List<Chunk> read(Path file) throws IOException {
        if (Files.size(file) > MOST_BYTES) {
            throw new IOException("it has more than " + MOST_BYTES + " bytes; cut a piece out of it");
        }
        byte[] all = Files.readAllBytes(file);
        String text = new String(all, StandardCharsets.UTF_8);
        return text.startsWith("settlemark-capture") ? capture(all) : hex(text);
    }

    private static List<Chunk> hex(String text) {
        List<Chunk> chunks = new ArrayList<>();
        int number = 0;
        for (String line : text.lines().toList()) {
            number++;
            String digits = line.replaceAll("\\s+", "");
            if (!digits.isEmpty() && !digits.startsWith("#")) {
                try {
                    chunks.add(new Chunk(number, 0, HexFormat.of().parseHex(digits)));
                } catch (IllegalArgumentException e) {
                    throw new IllegalArgumentException(
                            "line " + number + " must be hexadecimal pairs such as A5 0E 71, got \"" + line + "\"", e);
                }
            }
        }
        if (chunks.isEmpty()) {
            throw new IllegalArgumentException("there is no frame in it");
        }
        return chunks;
    }

    private static List<Chunk> capture(byte[] all) throws IOException {
        List<Chunk> chunks = new ArrayList<>();
        CaptureReader.read(new ByteArrayInputStream(all), new CaptureSink() {
            @Override
            public void begun(CaptureHeader header) {
                // Frames of every probe are looked at.
            }

            @Override
            public void heard(SessionEvent event) {
                if (event instanceof SessionEvent.Bytes bytes && chunks.size() < MOST_CHUNKS) {
                    chunks.add(bytes.chunk());
                }
            }

            @Override
            public void problem(CaptureProblem problem) {
                // A damaged line costs its frame only.
            }
        });
        if (chunks.isEmpty()) {
            throw new IOException("there is no frame in it");
        }
        return chunks;
    }

    @Override
    public void listen(String port, SerialLine line, Consumer<Chunk> heard, Consumer<String> failed) {
        work.execute(() -> {
            try {
                ProbeAddress address = ProbeAddress.written(port);
                link = hosts.of(address).open(address, silent(line), new SystemTicker(), new LinkListener() {
                    @Override
                    public void arrived(Chunk chunk) {
                        heard.accept(chunk);
                    }

                    @Override
                    public void changed(long timeNanos, LinkChange change, String words) {
                        if (change == LinkChange.LOST) {
                            failed.accept(words);
                        }
                    }
                });
            } catch (LinkException | IllegalArgumentException e) {
                failed.accept(String.valueOf(e.getMessage()));
            }
        });
    }

    /** A profile that only listens. */
    private static Profile silent(SerialLine line) {
        ProfileDraft.Reading any = new ProfileDraft.Reading("any", "Any", "1", 0, "uint8", true, 1, Double.NaN);
        ProfileDraft.Shape shape = new ProfileDraft.FixedFrames(line, ByteText.EMPTY, 2, ProfileDraft.Check.SUM_8);
        String text = ProfileDraft.text(
                new ProfileDraft.Answers("listening", "Listening", shape, List.of(any), Optional.empty()));
        return ProfileReader.read("listening.yaml", text.getBytes(StandardCharsets.UTF_8))
                .orThrow();
    }

    @Override
    public void stop() {
        work.execute(() -> {
            ProbeLink open = link;
            link = null;
            if (open != null) {
                open.close();
            }
        });
    }

    @Override
    public void save(String id, String text, Consumer<Path> done, Consumer<String> failed) {
        work.execute(() -> {
            Path file = folder.resolve(id + ".yaml");
            try {
                Files.createDirectories(folder);
                Files.writeString(file, text, StandardCharsets.UTF_8, StandardOpenOption.CREATE_NEW);
            } catch (FileAlreadyExistsException e) {
                failed.accept(file + " is there already and is not overwritten: give the device another key");
                return;
            } catch (IOException e) {
                failed.accept(file + " was not written: " + e.getMessage());
                return;
            }
            done.accept(file);
        });
    }
}
