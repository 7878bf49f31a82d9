package settlemark.link;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Which other programs have a device open, as far as {@code /proc} shows it: those of the same user, or of all where we
 * are root. Two programs that read one port each get a part of the bytes.
 */
final class PortUsers {
    private final Path proc;
    private final long ownPid;

    PortUsers(Path proc, long ownPid) {
        this.proc = proc;
        this.ownPid = ownPid;
    }

    /** Such as {@code minicom (process 812)}, joined by commas; empty where none is seen. */
    String of(Path node) {
        List<String> users = new ArrayList<>();
        try (DirectoryStream<Path> processes = Files.newDirectoryStream(proc, "[0-9]*")) {
            for (Path process : processes) {
                String pid = process.getFileName().toString();
                if (!pid.equals(Long.toString(ownPid)) && holds(process, node)) {
                    users.add(name(process) + " (process " + pid + ")");
                }
            }
        } catch (IOException e) {
            return "";
        }
        return users.stream().sorted().collect(Collectors.joining(", "));
    }

    private static boolean holds(Path process, Path node) {
        boolean holds = false;
        try (DirectoryStream<Path> descriptors = Files.newDirectoryStream(process.resolve("fd"))) {
            for (Path descriptor : descriptors) {
                String target = Files.readSymbolicLink(descriptor).toString();
                // Whoever holds the multiplexer made the pseudo terminal and keeps its other end.
                if (target.endsWith("/ptmx")) {
                    return false;
                }
                holds |= target.equals(node.toString());
            }
        } catch (IOException e) {
            // The process ended, or is another user's.
            return holds;
        }
        return holds;
    }

    private static String name(Path process) {
        try {
            return Files.readString(process.resolve("comm"), StandardCharsets.UTF_8)
                    .strip();
        } catch (IOException e) {
            return "a program";
        }
    }
}
