package settlemark.link;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.locks.LockSupport;
import java.util.function.IntConsumer;
import settlemark.session.LinkException;

/**
 * Simulated probes in a process of their own, so that the processor time of the listening side can be told from theirs.
 * Takes a command a line and answers each with a line.
 */
public final class BleVmPeer {
    /** A characteristic's value has 512 at most (Bluetooth Core Specification, ATT). */
    private static final int MOST_BYTES = 600;

    private final String bus;
    private final Map<String, BlePeripheral> probes = new HashMap<>();
    private final Map<String, StringBuffer> written = new ConcurrentHashMap<>();
    private final Map<String, Thread> streams = new HashMap<>();
    private final Map<String, BleVmShapes> shapes = new HashMap<>();
    private final Map<String, BleVmHands> hands = new HashMap<>();

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
            case "serve" -> serve(key, words[2], words[3], words[4], words.length > 5 ? words[5] : "");
            case "agent" -> hands.put(key, new BleVmHands(bus, words[2]));
            case "asked" -> {
                return "ok " + String.join(", ", hands(key).asked());
            }
            case "enter" -> hands(key).enter(Integer.parseInt(words[2]));
            case "disagree" -> {
                BleVmHands of = hands.remove(key);
                if (of != null) {
                    of.close();
                }
            }
            case "send" -> {
                return "ok "
                        + probe(key)
                                .send(Integer.parseInt(words[2]), HexFormat.of().parseHex(words[3]));
            }
            case "stream" ->
                stream(key, Integer.parseInt(words[2]), Double.parseDouble(words[3]), Integer.parseInt(words[4]));
            case "wide" -> {
                BlePeripheral probe = probe(key);
                int input = Integer.parseInt(words[2]);
                steadily(
                        key,
                        Double.parseDouble(words[3]),
                        Integer.parseInt(words[4]),
                        i -> probe.send(input, fourChannels(i)));
            }
            case "repeat" -> {
                BlePeripheral probe = probe(key);
                int input = Integer.parseInt(words[2]);
                byte[] bytes = HexFormat.of().parseHex(words[5]);
                steadily(key, Double.parseDouble(words[3]), Integer.parseInt(words[4]), i -> probe.send(input, bytes));
            }
            case "advertise" -> shapes.put(key, new BleVmShapes(bus, words[2]));
            case "good" -> shapes(key).good(HexFormat.of().parseHex(words[2]));
            case "odd" -> {
                Random random = new Random(Long.parseLong(words[4]));
                BleVmShapes of = shapes(key);
                steadily(key, Double.parseDouble(words[2]), Integer.parseInt(words[3]), i -> of.odd(random));
            }
            case "quiet" -> {
                BleVmShapes of = shapes.remove(key);
                if (of != null) {
                    of.close();
                }
            }
            case "garble" ->
                garble(
                        key,
                        Double.parseDouble(words[2]),
                        Integer.parseInt(words[3]),
                        Long.parseLong(words[4]),
                        words[5]);
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

    private BleVmShapes shapes(String key) {
        return java.util.Objects.requireNonNull(shapes.get(key), key);
    }

    private BleVmHands hands(String key) {
        return java.util.Objects.requireNonNull(hands.get(key), key);
    }

    /** @param demand what of a computer before it gets values, such as {@code encrypt-}; empty for nothing */
    private void serve(String key, String profile, String adapter, String name, String demand) throws LinkException {
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
                                log.append(HexFormat.of().formatHex(bytes)).append(','),
                        demand));
    }

    /** Numbers from 0, four bytes each with the low one first, at a steady rate. */
    private void stream(String key, int input, double perSecond, int count) {
        BlePeripheral probe = probe(key);
        steadily(key, perSecond, count, i -> probe.send(input, BleHeard.bytes(i)));
    }

    /** A counter and four steady channels, two bytes each with the low one first. */
    private static byte[] fourChannels(int count) {
        return ByteBuffer.allocate(12)
                .order(ByteOrder.LITTLE_ENDIAN)
                .putInt(count)
                .putShort((short) 350)
                .putShort((short) 683)
                .putShort((short) 5432)
                .putShort((short) 2106)
                .array();
    }

    /** Random bytes of any length, up to longer than a characteristic may be, to each of the inputs in turn. */
    private void garble(String key, double perSecond, int count, long seed, String inputs) {
        Random random = new Random(seed);
        String[] all = inputs.split(",", -1);
        BlePeripheral probe = probe(key);
        steadily(key, perSecond, count, i -> {
            byte[] bytes = new byte[random.nextInt(4) == 0 ? random.nextInt(MOST_BYTES) : random.nextInt(24)];
            random.nextBytes(bytes);
            probe.send(Integer.parseInt(all[i % all.length]), bytes);
        });
    }

    private void steadily(String key, double perSecond, int count, IntConsumer send) {
        Thread thread = Fixtures.THREADS.newThread(() -> {
            long start = System.nanoTime();
            for (int i = 0; i < count && !Thread.currentThread().isInterrupted(); i++) {
                long due = start + Math.round(i / perSecond * 1e9);
                while (System.nanoTime() < due) {
                    LockSupport.parkNanos(due - System.nanoTime());
                }
                send.accept(i);
            }
        });
        streams.put(key, thread);
        thread.start();
    }
}
