package settlemark.link;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import settlemark.profile.Match;
import settlemark.profile.Recogniser;
import settlemark.session.LinkChange;
import settlemark.session.LinkException;
import settlemark.session.ProbeLink;

/**
 * Scenarios on the real Bluetooth stack in a virtual machine; see src/test/ble-vm/run. Prints a line for each, beginning
 * with "passed" or "FAILED". No scenario is tried twice.
 */
public final class BleVmMain {
    private static final long BACK_MILLIS = 10_000;

    private final BleVmBench bench;
    private final int secondsEach;

    private BleVmMain(BleVmBench bench, int secondsEach) {
        this.bench = bench;
        this.secondsEach = secondsEach;
    }

    /** @param arguments port of the guest's bus, socket of its shell, seconds for each rate, part of a name or "" */
    public static void main(String[] arguments) throws IOException {
        boolean good;
        try (BleVmBench bench = new BleVmBench(Integer.parseInt(arguments[0]), Path.of(arguments[1]))) {
            good = new BleVmMain(bench, Integer.parseInt(arguments[2])).all(arguments[3]);
        }
        System.exit(good ? 0 : 1);
    }

    private boolean all(String only) {
        boolean good = true;
        for (Scenario scenario : scenarios()) {
            if (scenario.name().contains(only)) {
                good &= run(scenario);
            }
        }
        System.out.println("end of the scenarios");
        return good;
    }

    private List<Scenario> scenarios() {
        return List.of(
                new Scenario("a look around finds the probes and knows their profiles", this::look),
                new Scenario("sensing, battery and a device's own service, with a zero command", this::services),
                new Scenario("another profile's probe is refused with the reason", this::misfit),
                new Scenario("a probe that only advertises, its repetitions too", this::beacon),
                new Scenario("a connected probe and one that advertises, on one adapter", this::mixed),
                new Scenario("two connected probes at once, each on an adapter", this::two),
                new Scenario("10 a second", () -> rate(10)),
                new Scenario("50 a second", () -> rate(50)),
                new Scenario("100 a second, after the warm-up before it", () -> rate(100)),
                new Scenario("a flood on one probe costs the other nothing", this::flood),
                new Scenario("the probe ends the connection and comes back", this::disconnect),
                new Scenario("the probe is away until it is missed", this::missed),
                new Scenario("the radio stands still for a while", this::still),
                new Scenario("bluetoothd is killed", this::daemonKilled),
                new Scenario("the controllers vanish and return", this::controllersVanish),
                new Scenario("Bluetooth is blocked and released", this::blocked));
    }

    private boolean run(Scenario scenario) {
        long start = System.nanoTime();
        String outcome = "passed ";
        String detail;
        try {
            detail = scenario.body().run();
        } catch (Exception | AssertionError e) {
            outcome = "FAILED ";
            detail = e.toString();
            e.printStackTrace();
        }
        System.out.printf(
                Locale.ROOT,
                "%s %s (%.1f s)%s%n",
                outcome.strip(),
                scenario.name(),
                (System.nanoTime() - start) / 1e9,
                detail.isEmpty() ? "" : ": " + detail);
        return outcome.startsWith("passed");
    }

    // --- scenarios -------------------------------------------------------------------------------------------------

    private String look() throws LinkException {
        bench.peer("serve e ess hci1 Settle_ess");
        bench.peer("serve f fast hci2 Settle_fast");
        List<BleSeen> seen = bench.host.look();
        try {
            require(seen.stream().anyMatch(s -> fits("ess", s)), "ess in " + seen);
            require(seen.stream().anyMatch(s -> fits("fast", s)), "fast in " + seen);
        } finally {
            bench.peer("close e");
            bench.peer("close f");
        }
        return seen.stream().map(BleSeen::words).toList().toString();
    }

    private static boolean fits(String profile, BleSeen seen) {
        return Recogniser.match(BleVmProfiles.of(profile), seen.sighting()) instanceof Match.Fits;
    }

    private String services() throws LinkException {
        bench.peer("serve e ess hci1 Settle_ess");
        bench.peer("send e " + BleVmProfiles.BATTERY + " 58");
        bench.peer("send e " + BleVmProfiles.PRESENTATION + " 08ff2427010000");
        bench.peer("send e " + BleVmProfiles.MEASUREMENT + " 0000010a00000a00000102");
        BleHeard heard = new BleHeard();
        try (ProbeLink link = bench.open("hci1", "ess", heard)) {
            Await.until("the battery twice", 5000, () -> heard.count(BleVmProfiles.BATTERY) >= 2);
            require(heard.numbers(BleVmProfiles.BATTERY).get(0) == 0x58, "battery " + heard.numbers(1));
            require(
                    heard.chunks().get(0).input() == BleVmProfiles.PRESENTATION,
                    "presentation first: " + heard.chunks());
            require(heard.count(BleVmProfiles.MEASUREMENT) == 1, "one measurement descriptor");
            bench.peer("send e " + BleVmProfiles.PRESSURE + " 39300000");
            bench.peer("send e " + BleVmProfiles.VALUE + " 0100");
            // The same value again must arrive again.
            bench.peer("send e " + BleVmProfiles.VALUE + " 0100");
            Await.until(
                    "pressure",
                    3000,
                    () -> heard.numbers(BleVmProfiles.PRESSURE).equals(List.of(12345)));
            Await.until(
                    "value twice",
                    3000,
                    () -> heard.numbers(BleVmProfiles.VALUE).equals(List.of(1, 1)));
            link.act("zero");
            // The service acknowledges a value that also takes unacknowledged writes before it hands the write on.
            Await.until(
                    "the acknowledged write",
                    3000,
                    () -> bench.peer("written e").equals("a501,5a,"));
            link.act("beep");
            Await.until(
                    "the unacknowledged write",
                    3000,
                    () -> bench.peer("written e").endsWith("07,"));
            require(
                    heard.changes().equals(List.of(LinkChange.UP)),
                    heard.words().toString());
        } finally {
            bench.peer("close e");
        }
        return "";
    }

    private String misfit() {
        bench.peer("serve f fast hci1 Settle_fast");
        try {
            bench.open("hci1", "ess", new BleHeard()).close();
            throw new AssertionError("it was opened");
        } catch (LinkException e) {
            require(String.valueOf(e.getMessage()).contains("another kind of device"), String.valueOf(e.getMessage()));
            return String.valueOf(e.getMessage());
        } finally {
            bench.peer("close f");
        }
    }

    private String beacon() throws LinkException {
        bench.peer("serve b beacon hci2 Settle_beacon");
        bench.peer("send b 0 4001");
        BleHeard heard = new BleHeard();
        try (ProbeLink link = bench.open("hci2", "beacon", heard)) {
            // A virtual controller sends an advertisement once; so the probe's side says it anew, the same one too.
            for (int i = 0; i < 5; i++) {
                int before = heard.count();
                bench.peer("send b 0 4001");
                Await.until("the same value again", 5000, () -> heard.count() > before);
            }
            require(heard.numbers(0).stream().allMatch(n -> n == 0x0140), "values " + heard.numbers(0));
            bench.peer("send b 0 4002");
            long millis =
                    Await.until("the new value", 10_000, () -> heard.numbers(0).contains(0x0240));
            require(
                    heard.changes().equals(List.of(LinkChange.UP)),
                    heard.words().toString());
            require(!link.toString().isEmpty(), "a link");
            return "a new value after " + millis + " ms";
        } finally {
            bench.peer("close b");
        }
    }

    private String mixed() throws LinkException {
        bench.peer("serve f fast hci1 Settle_fast");
        bench.peer("serve b beacon hci2 Settle_beacon");
        bench.peer("send b 0 4001");
        BleHeard one = new BleHeard();
        BleHeard other = new BleHeard();
        try (ProbeLink first = bench.open("hci2", "beacon", one);
                ProbeLink second = bench.open("hci1", "fast", other)) {
            require(first != second, "two links");
            bench.peer("stream f 0 20 100");
            for (int i = 1; i <= 20; i++) {
                bench.peer("send b 0 40" + String.format(Locale.ROOT, "%02x", i));
                pause(200);
            }
            Await.until("all of the connected one", 20_000, () -> other.count() >= 100);
            inOrder(other, 100);
            // The first and the last of the data; of those between, the service may have put two into one word.
            require(one.numbers(0).containsAll(List.of(0x0140, 0x1440)), "beacon " + one.numbers(0));
            return one.count() + " advertisements beside 100 values in order";
        } finally {
            bench.peer("close f");
            bench.peer("close b");
        }
    }

    private String two() throws LinkException {
        bench.peer("serve e fast hci1 Settle_fast_1");
        bench.peer("serve f fast hci2 Settle_fast_2");
        BleHeard one = new BleHeard();
        BleHeard other = new BleHeard();
        try (ProbeLink first = bench.open("hci1", "fast", one);
                ProbeLink second = bench.open("hci2", "fast", other, "hci3")) {
            require(first != second, "two links");
            bench.peer("stream e 0 20 200");
            bench.peer("stream f 0 20 200");
            Await.until("all of both", 30_000, () -> one.count() >= 200 && other.count() >= 200);
            inOrder(one, 200);
            inOrder(other, 200);
        } finally {
            bench.peer("close e");
            bench.peer("close f");
        }
        return "2 x 200 in order";
    }

    private String rate(int perSecond) throws LinkException {
        bench.peer("serve f fast hci1 Settle_fast");
        int count = perSecond * secondsEach;
        BleHeard heard = new BleHeard();
        try (ProbeLink link = bench.open("hci1", "fast", heard)) {
            require(!link.toString().isEmpty(), "a link");
            // The probe's side hears of the subscription a moment after it was acknowledged.
            Await.until("subscribed", 5000, () -> bench.peer("listened f 0").equals("true"));
            long start = cpuNanos();
            bench.peer("stream f 0 " + perSecond + " " + count);
            int half = count / 2;
            calmly("half of " + count, () -> heard.count() >= half);
            long middle = cpuNanos();
            calmly("all " + count, () -> heard.count() >= count);
            long end = cpuNanos();
            inOrder(heard, count);
            return String.format(
                    Locale.ROOT,
                    "%d in order, %.2f ms of processor time each, %.2f in the second half",
                    count,
                    (end - start) / 1e6 / count,
                    (end - middle) / 1e6 / (count - half));
        } finally {
            bench.peer("close f");
        }
    }

    /** The flooded probe may lose what its own side cannot send; the other must lose nothing. */
    private String flood() throws LinkException {
        bench.peer("serve e fast hci1 Settle_fast_1");
        bench.peer("serve f fast hci2 Settle_fast_2");
        BleHeard flooded = new BleHeard();
        BleHeard other = new BleHeard();
        try (ProbeLink first = bench.open("hci1", "fast", flooded);
                ProbeLink second = bench.open("hci2", "fast", other, "hci3")) {
            require(first != second, "two links");
            bench.peer("stream f 0 10 100");
            bench.peer("stream e 0 1000 5000");
            Await.until("all of the other", 60_000, () -> other.count() >= 100);
            inOrder(other, 100);
            return flooded.count() + " of 5000 of the flood by then";
        } finally {
            bench.peer("close e");
            bench.peer("close f");
        }
    }

    private String disconnect() throws LinkException, BluezError {
        return outage("hci1", "the connection", () -> {
            try {
                bench.disconnectFrom("hci1");
            } catch (BluezError e) {
                throw new AssertionError(e);
            }
            return 0;
        });
    }

    private String missed() throws LinkException, BluezError {
        bench.peer("serve f fast hci1 Settle_fast");
        BleHeard heard = new BleHeard();
        try (ProbeLink link = bench.open("hci1", "fast", heard)) {
            require(!link.toString().isEmpty(), "a link");
            bench.peer("stream f 0 10 100000");
            Await.until("values before", 10_000, () -> heard.count() >= 20);
            bench.peer("close f");
            bench.disconnectFrom("hci1");
            wait("the causes", 40_000, heard, () -> heard.said("is not heard"));
            bench.peer("serve f fast hci1 Settle_fast");
            bench.peer("stream f 0 10 100000");
            long millis = wait("back", BACK_MILLIS, heard, () -> heard.count(LinkChange.BACK) >= 1);
            return "back " + millis + " ms after its return";
        } finally {
            bench.peer("close f");
        }
    }

    private String still() throws LinkException {
        return outage("hci1", "the probe", () -> {
            bench.guest("kill -STOP $(cat /run/btvirt.pid)");
            pause(8000);
            bench.guest("kill -CONT $(cat /run/btvirt.pid)");
            return 8000;
        });
    }

    private String daemonKilled() throws LinkException {
        return outage("hci1", "bluetoothd", () -> {
            bench.guest("kill -9 $(cat /run/bluetoothd.pid)");
            return 1000;
        });
    }

    private String controllersVanish() throws LinkException {
        return outage("hci1", "the controllers", () -> {
            bench.guest("kill -9 $(cat /run/btvirt.pid)");
            return 3000;
        });
    }

    private String blocked() throws LinkException {
        return outage("hci1", "the radio", () -> {
            bench.guest("for r in /sys/class/rfkill/rfkill*; do echo 1 > $r/soft; done");
            pause(4000);
            bench.guest("for r in /sys/class/rfkill/rfkill*; do echo 0 > $r/soft; done");
            return 4000;
        });
    }

    /** Streams through an outage: the gap is marked, and after the return values come again within ten seconds. */
    private String outage(String adapter, String what, Outage outage) throws LinkException {
        bench.peer("serve f fast " + adapter + " Settle_fast");
        BleHeard heard = new BleHeard();
        try (ProbeLink link = bench.open(adapter, "fast", heard)) {
            require(!link.toString().isEmpty(), "a link");
            bench.peer("stream f 0 10 100000");
            Await.until("values before", 10_000, () -> heard.count() >= 20);
            long start = System.nanoTime();
            long awayMillis = outage.happens();
            long lost = Await.until(what + " lost", 15_000, () -> heard.count(LinkChange.LOST) >= 1);
            wait(what + " back", awayMillis + 60_000, heard, () -> heard.count(LinkChange.BACK) >= 1);
            long backMillis = (System.nanoTime() - start) / 1_000_000 - awayMillis;
            int before = heard.count();
            Await.until("values after", 10_000, () -> heard.count() >= before + 20);
            rising(heard);
            require(backMillis <= BACK_MILLIS, "back " + backMillis + " ms after its return; said " + heard.words());
            return String.format(
                    Locale.ROOT,
                    "lost seen after %d ms, back %.1f s after its return, said %s",
                    lost,
                    backMillis / 1e3,
                    heard.words().subList(1, heard.words().size()));
        } finally {
            bench.peer("close f");
        }
    }

    // --- what they share -------------------------------------------------------------------------------------------

    private static void inOrder(BleHeard heard, int count) {
        List<Integer> numbers = heard.numbers(0);
        List<Integer> expected = IntStream.range(0, count).boxed().toList();
        if (!numbers.equals(expected)) {
            List<Integer> missing = new ArrayList<>(expected);
            missing.removeAll(numbers);
            throw new AssertionError(
                    numbers.size() + " of " + count + " values, missing " + missing + ", or out of order");
        }
        require(!heard.timeWentBack(), "times in order");
    }

    /** Across a gap values are missing, but none comes twice or late. */
    private static void rising(BleHeard heard) {
        List<Integer> numbers = heard.numbers(0);
        for (int i = 1; i < numbers.size(); i++) {
            require(numbers.get(i) > numbers.get(i - 1), "rising at " + i + ": " + numbers);
        }
    }

    private static void require(boolean holds, String what) {
        if (!holds) {
            throw new AssertionError("not so: " + what);
        }
    }

    private static void pause(long millis) {
        long end = System.nanoTime() + millis * 1_000_000;
        while (System.nanoTime() < end) {
            java.util.concurrent.locks.LockSupport.parkNanos(end - System.nanoTime());
        }
    }

    /** Says what the link said where it does not come true. */
    private static long wait(String what, long limitMillis, BleHeard heard, BooleanSupplier holds) {
        try {
            return Await.until(what, limitMillis, holds);
        } catch (AssertionError e) {
            throw new AssertionError(e.getMessage() + "; said " + heard.words() + ", values " + heard.count(), e);
        }
    }

    /** Looks so seldom that it costs no processor time worth mention. */
    private void calmly(String what, BooleanSupplier holds) {
        long end = System.nanoTime() + (secondsEach + 30) * 1_000_000_000L;
        while (!holds.getAsBoolean()) {
            require(System.nanoTime() < end, what + " in time");
            pause(100);
        }
    }

    private static long cpuNanos() {
        return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
                .getProcessCpuTime();
    }

    @FunctionalInterface
    private interface Body {
        String run() throws Exception;
    }

    @FunctionalInterface
    private interface Outage {
        /** @return for how long the probe cannot be there, in milliseconds */
        long happens();
    }

    private record Scenario(String name, Body body) {}
}
