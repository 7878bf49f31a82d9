package settlemark.link;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Who is asking for a device: the account, the groups that this session holds, and the groups that the accounts file
 * gives, which differ until the next login.
 *
 * @param user login name
 * @param sessionGroups numbers of the groups that this process holds
 * @param groups by number
 */
record Accounts(String user, Set<Long> sessionGroups, Map<Long, Group> groups) {
    Accounts {
        sessionGroups = Set.copyOf(sessionGroups);
        groups = Map.copyOf(groups);
    }

    record Group(String name, Set<String> members) {}

    static Accounts ofThisProcess() {
        return new Accounts(
                System.getProperty("user.name", "you"),
                sessionGroups(lines(Path.of("/proc/self/status"))),
                groups(lines(Path.of("/etc/group"))));
    }

    /** Reads {@code Gid:} and {@code Groups:} of a process status, as proc(5) describes it. */
    static Set<Long> sessionGroups(List<String> status) {
        Set<Long> numbers = new HashSet<>();
        for (String line : status) {
            if (line.startsWith("Gid:") || line.startsWith("Groups:")) {
                for (String word : line.substring(line.indexOf(':') + 1).strip().split("\\s+", -1)) {
                    if (word.matches("\\d{1,10}")) {
                        numbers.add(Long.valueOf(word));
                    }
                }
            }
        }
        return numbers;
    }

    /** Reads lines {@code name:password:number:member,member}, as group(5) describes them. */
    static Map<Long, Group> groups(List<String> lines) {
        Map<Long, Group> byNumber = new HashMap<>();
        for (String line : lines) {
            String[] fields = line.split(":", -1);
            if (fields.length >= 4 && fields[2].matches("\\d{1,10}")) {
                byNumber.putIfAbsent(Long.valueOf(fields[2]), new Group(fields[0], Set.of(fields[3].split(",", -1))));
            }
        }
        return byNumber;
    }

    private static List<String> lines(Path file) {
        try {
            return Files.readAllLines(file, StandardCharsets.UTF_8);
        } catch (IOException e) {
            return List.of();
        }
    }
}
