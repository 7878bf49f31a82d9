package settlemark.link;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.locks.LockSupport;
import settlemark.session.LinkException;

/**
 * Simulated probes in a process of their own, so that the processor time of the listening side can be told from theirs.
 * Takes a command a line and answers each with a line.
 */
public final class BleVmPeer {
    private final String bus;
    private final Map<String, BlePeripheral> probes = new HashMap<>();
    private final Map<String, StringBuffer> written = new ConcurrentHashMap<>();
    private final Map<String, Thread> streams = new HashMap<>();

    private BleVmPeer(String bus) {
        this.bus = bus;
    }

    /** @param arguments address of the bus */
    public static void main(String[] arguments) throws IOException {
        BleVmPeer peer = new BleVmPeer(arguments[0]);
        BufferedReader commands = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
        String line;
        while ((line = commands.readLine()) != null) {
            String answer;
            try {
                answer = peer.obey(line.split(" ", -1));
            } catch (LinkException | RuntimeException e) {
                answer = "fault " + e;
            }
            System.out.println(answer);
            System.out.flush();
        }
        System.exit(0);
    }

    private String obey(String[] words) throws LinkException {
        String key = words[1];
        switch (words[0]) {
            case "serve" -> serve(key, words[2], words[3], words[4]);
            case "send" -> {
                return "ok "
                        + probe(key)
                                .send(Integer.parseInt(words[2]), HexFormat.of().parseHex(words[3]));
            }
            case "stream" ->
                stream(key, Integer.parseInt(words[2]), Double.parseDouble(words[3]), Integer.parseInt(words[4]));
            case "streaming" -> {
                return "ok " + (streams.containsKey(key) && streams.get(key).isAlive());
            }
            case "listened" -> {
                return "ok " + probe(key).isListenedTo(Integer.parseInt(words[2]));
            }
            case "written" -> {
                return "ok " + written.get(key);
            }
            case "trouble" -> {
                return "ok " + probe(key).trouble();
            }
            case "close" -> {
                BlePeripheral probe = probes.remove(key);
                if (probe != null) {
                    probe.close();
                }
            }
            default -> throw new IllegalArgumentException(words[0]);
        }
        return "ok";
    }

    private BlePeripheral probe(String key) {
        return java.util.Objects.requireNonNull(probes.get(key), key);
    }

    private void serve(String key, String profile, String adapter, String name) throws LinkException {
        StringBuffer log = new StringBuffer();
        written.put(key, log);
        probes.put(
                key,
                BlePeripheral.start(
                        new BlePeripheral.Settings(
                                BleVmProfiles.of(profile),
                                name.replace('_', ' '),
                                Optional.of(adapter),
                                Fixtures.THREADS),
                        bus,
                        (uuid, bytes) ->
                                log.append(HexFormat.of().formatHex(bytes)).append(',')));
    }

    /** Numbers from 0, four bytes each with the low one first, at a steady rate. */
    private void stream(String key, int input, double perSecond, int count) {
        BlePeripheral probe = probe(key);
        Thread thread = Fixtures.THREADS.newThread(() -> {
            long start = System.nanoTime();
            for (int i = 0; i < count && !Thread.currentThread().isInterrupted(); i++) {
                long due = start + Math.round(i / perSecond * 1e9);
                while (System.nanoTime() < due) {
                    LockSupport.parkNanos(due - System.nanoTime());
                }
                probe.send(input, BleHeard.bytes(i));
            }
        });
        streams.put(key, thread);
        thread.start();
    }
}
