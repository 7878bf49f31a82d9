package settlemark.benchmark;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.Stream;

/** A folder for one measurement, and the arithmetic of measurements. */
final class Folders {
    private Folders() {}

    static Path make() throws IOException {
        return Files.createTempDirectory("store-bench-");
    }

    /** Bytes of all files in it. */
    static long size(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(Files::isRegularFile)
                    .mapToLong(p -> p.toFile().length())
                    .sum();
        }
    }

    static void delete(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }

    /** The value that a part of them does not exceed, such as 0.99. */
    static double quantile(double[] values, double part) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[(int) Math.max(0, Math.ceil(part * sorted.length) - 1)];
    }
}
