package settlemark.settle;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Samples for the tests: made by a formula, or read from the resources beside. */
final class Traces {
    record Trace(double[] seconds, double[] values) {
        Trace shifted(double bySeconds, double byValue, double factor) {
            double[] times = seconds.clone();
            double[] others = values.clone();
            for (int i = 0; i < times.length; i++) {
                times[i] += bySeconds;
                others[i] = (others[i] + byValue) * factor;
            }
            return new Trace(times, others);
        }

        Trace until(double endSeconds) {
            int kept = 0;
            while (kept < seconds.length && seconds[kept] < endSeconds) {
                kept++;
            }
            return new Trace(java.util.Arrays.copyOf(seconds, kept), java.util.Arrays.copyOf(values, kept));
        }
    }

    private Traces() {}

    static Trace made(double samplesPerSecond, double endSeconds, double resolution, DoubleUnaryOperator signal) {
        int count = (int) Math.round(endSeconds * samplesPerSecond) + 1;
        double[] seconds = new double[count];
        double[] values = new double[count];
        for (int i = 0; i < count; i++) {
            seconds[i] = i / samplesPerSecond;
            double value = signal.applyAsDouble(seconds[i]);
            values[i] = resolution > 0 ? Math.rint(value / resolution) * resolution : value;
        }
        return new Trace(seconds, values);
    }

    static DoubleUnaryOperator noisy(DoubleUnaryOperator signal, double sigma, long seed) {
        Random random = new Random(seed);
        return t -> signal.applyAsDouble(t) + sigma * random.nextGaussian();
    }

    static List<SettleEvent> events(SettleSettings settings, double resolution, Trace trace) {
        return events(settings, resolution, Set.of(), trace);
    }

    static List<SettleEvent> events(SettleSettings settings, double resolution, Set<Part> leftOut, Trace trace) {
        List<SettleEvent> events = new ArrayList<>();
        SettleDetector detector = new SettleDetector(settings, resolution, events::add, leftOut);
        for (int i = 0; i < trace.seconds().length; i++) {
            detector.accept(trace.seconds()[i], trace.values()[i]);
        }
        return events;
    }

    static List<SettleEvent> events(SettleKind kind, double resolution, Trace trace) {
        return events(SettleSettings.defaults(kind), resolution, trace);
    }

    static Trace read(String resource) {
        List<double[]> rows = new ArrayList<>();
        try (BufferedReader reader =
                new BufferedReader(new InputStreamReader(open(resource), StandardCharsets.UTF_8))) {
            reader.readLine();
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                int comma = line.indexOf(',');
                rows.add(new double[] {
                    Double.parseDouble(line.substring(0, comma)), Double.parseDouble(line.substring(comma + 1))
                });
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return new Trace(
                rows.stream().mapToDouble(row -> row[0]).toArray(),
                rows.stream().mapToDouble(row -> row[1]).toArray());
    }

    static JsonNode json(String resource) {
        try (InputStream in = open(resource)) {
            return JsonMapper.shared().readTree(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static InputStream open(String resource) {
        InputStream in = Traces.class.getResourceAsStream("/settle/" + resource);
        if (in == null) {
            throw new IllegalStateException("no test resource /settle/" + resource);
        }
        return in;
    }
}
