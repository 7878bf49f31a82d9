package settlemark.link;

import static settlemark.link.BleVmChecks.inOrder;
import static settlemark.link.BleVmChecks.pause;
import static settlemark.link.BleVmChecks.require;

import java.util.List;
import java.util.Locale;
import settlemark.profile.Match;
import settlemark.profile.Recogniser;
import settlemark.session.LinkChange;
import settlemark.session.LinkException;
import settlemark.session.ProbeLink;

/** Probes of every kind, found, recognised, opened and heard. */
final class BleVmProbes {
    private final BleVmBench bench;

    BleVmProbes(BleVmBench bench) {
        this.bench = bench;
    }

    List<BleVmScenario> all() {
        return List.of(
                new BleVmScenario("a look around finds the probes and knows their profiles", this::look),
                new BleVmScenario("sensing, battery and a device's own service, with a zero command", this::services),
                new BleVmScenario("another profile's probe is refused with the reason", this::misfit),
                new BleVmScenario("a probe that only advertises, its repetitions too", this::beacon),
                new BleVmScenario("a connected probe and one that advertises, on one adapter", this::mixed),
                new BleVmScenario("two connected probes at once, each on an adapter", this::two));
    }

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
}
