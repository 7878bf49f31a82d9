package settlemark.link;

import static settlemark.link.BleVmChecks.calmly;
import static settlemark.link.BleVmChecks.cpuNanos;
import static settlemark.link.BleVmChecks.inOrder;
import static settlemark.link.BleVmChecks.require;

import java.util.List;
import java.util.Locale;
import settlemark.session.LinkException;
import settlemark.session.ProbeLink;

/** Streams at their rates: nothing lost, nothing out of order, and what a value costs. */
final class BleVmStreams {
    private final BleVmBench bench;
    private final int secondsEach;

    BleVmStreams(BleVmBench bench, int secondsEach) {
        this.bench = bench;
        this.secondsEach = secondsEach;
    }

    List<BleVmScenario> all() {
        return List.of(
                new BleVmScenario("10 a second", () -> rate(10)),
                new BleVmScenario("50 a second", () -> rate(50)),
                new BleVmScenario("100 a second, after the warm-up before it", () -> rate(100)),
                new BleVmScenario("a flood on one probe costs the other nothing", this::flood));
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
            calmly("half of " + count, secondsEach + 60, () -> heard.count() >= half);
            long middle = cpuNanos();
            calmly("all " + count, secondsEach + 60, () -> heard.count() >= count);
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
}
