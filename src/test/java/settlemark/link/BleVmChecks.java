package settlemark.link;

import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;

/** What the scenarios of the virtual machine check with. */
final class BleVmChecks {
    private BleVmChecks() {}

    /** Each number once, from 0, with times that do not go back. */
    static void inOrder(BleHeard heard, int count) {
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
    static void rising(BleHeard heard) {
        List<Integer> numbers = heard.numbers(0);
        for (int i = 1; i < numbers.size(); i++) {
            require(numbers.get(i) > numbers.get(i - 1), "rising at " + i + ": " + numbers);
        }
    }

    static void require(boolean holds, String what) {
        if (!holds) {
            throw new AssertionError("not so: " + what);
        }
    }

    static void pause(long millis) {
        long end = System.nanoTime() + millis * 1_000_000;
        while (System.nanoTime() < end) {
            LockSupport.parkNanos(end - System.nanoTime());
        }
    }

    /** Says what the link said where it does not come true; returns how long it took, in milliseconds. */
    static long waitFor(String what, long limitMillis, BleHeard heard, BooleanSupplier holds) {
        try {
            return Await.until(what, limitMillis, holds);
        } catch (AssertionError e) {
            throw new AssertionError(e.getMessage() + "; said " + heard.words() + ", values " + heard.count(), e);
        }
    }

    /** Looks so seldom that it costs no processor time worth mention. */
    static void calmly(String what, long limitSeconds, BooleanSupplier holds) {
        long end = System.nanoTime() + limitSeconds * 1_000_000_000L;
        while (!holds.getAsBoolean()) {
            require(System.nanoTime() < end, what + " in time");
            pause(100);
        }
    }

    /** Processor time that this program has used. */
    static long cpuNanos() {
        return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
                .getProcessCpuTime();
    }
}
