package settlemark.link;

import static settlemark.link.BleVmChecks.inOrder;
import static settlemark.link.BleVmChecks.require;

import java.util.List;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;
import settlemark.session.LinkChange;
import settlemark.session.LinkException;
import settlemark.session.ProbeLink;

/** Probes that say what no probe should, and ones that say the same for ever: the others lose nothing. */
final class BleVmOdd {
    private static final long SEED = 20_261_125;
    private static final int GARBAGE = 600;

    /**
     * Advertising data against the rules (Bluetooth Core Specification, Supplement, part A, and volume 3, part C, 11):
     * lengths of nothing, lengths beyond the end, lists cut in the middle of an identifier, names that are no UTF-8.
     */
    private static final List<String> BROKEN = List.of(
            "00",
            "ff",
            "01",
            "01 09",
            "02 01",
            "1f ff 4c 00",
            "20 16 d2 fc 40 01",
            "02 16 d2",
            "03 16 d2 fc",
            "01 16 01 16 01 16",
            "02 ff 4c 02 ff 4c",
            "05 09 ff fe c0 80",
            "04 08 ed a0 80",
            "02 03 0f",
            "04 03 0f 18 0a",
            "06 05 01 02 03 04 05",
            "05 07 01 02 03 04",
            "11 21 00 01 02 03",
            "02 0a 7f 02 0a 80 02 0a 00",
            "03 19 ff ff",
            "1e 09 41 00 42 00 43",
            "00 00 00 05 16 d2 fc 40 01",
            "02 01 06 00 05 16 d2 fc 40 02",
            "05 16 d2 fc 40 03 ff",
            "01 ff 01 ff 01 ff 01 ff",
            "02 00 00 02 00 00",
            "03 fe 00 00 03 fd 00 00",
            "ff ff ff ff ff ff ff ff",
            "07 20 d2 fc 00 00 40 01",
            "1d 24 68 74 74 70");

    private final BleVmBench bench;

    BleVmOdd(BleVmBench bench) {
        this.bench = bench;
    }

    List<BleVmScenario> all() {
        return List.of(
                new BleVmScenario("garbage of any length on one probe costs the other nothing", this::garbage),
                new BleVmScenario(
                        "a thousand odd advertisements and some broken ones cost the others nothing", this::shapes),
                new BleVmScenario("a value that stays the same is not stale", this::constant));
    }

    /** Three channels take random bytes of any length, up to longer than a characteristic may be; then a good value. */
    private String garbage() throws LinkException {
        Profile profile = ProfileLibrary.get("ble-environment");
        bench.peer("serve e ble-environment hci1 Settle_env");
        bench.peer("serve f fast hci2 Settle_fast");
        Gathered noisy = new Gathered(profile);
        BleHeard other = new BleHeard();
        try (ProbeLink first = bench.open("hci1", "ble-environment", noisy);
                ProbeLink second = bench.open("hci2", "fast", other, "hci3")) {
            require(first != second, "two links");
            Await.until("subscribed", 10_000, () -> bench.peer("listened f 0").equals("true"));
            bench.peer("stream f 0 20 400");
            bench.peer("garble e 40 " + GARBAGE + " " + SEED + " " + inputs(profile));
            BleVmChecks.waitFor("all of the other", 90_000, other, () -> other.count() >= 400);
            inOrder(other, 400);
            require(
                    other.changes().equals(List.of(LinkChange.UP)),
                    other.words().toString());
            Await.until(
                    "the end of the garbage",
                    60_000,
                    () -> bench.peer("streaming e").equals("false"));
            int before = noisy.of("air-pressure").size();
            bench.peer("send e 0 02760f00");
            Await.until("a good value", 60_000, () -> noisy.of("air-pressure").size() > before);
            List<String> pressures = noisy.of("air-pressure");
            require(pressures.get(pressures.size() - 1).equals("101325.0"), "the good value, in " + pressures);
            require(!noisy.rejected().isEmpty(), "something of it rejected");
            require(noisy.changes().equals(List.of(LinkChange.UP)), noisy.said().toString());
            return "400 in order beside " + noisy.nanos().size() + " of " + GARBAGE + " pieces of garbage (seed " + SEED
                    + "), " + noisy.rejected().size() + " rejected";
        } finally {
            bench.peer("close e");
            bench.peer("close f");
        }
    }

    private static String inputs(Profile profile) {
        StringBuilder inputs = new StringBuilder();
        for (int i = 0; i < profile.inputs().size(); i++) {
            if (profile.inputs().get(i).kind() == settlemark.profile.Input.Kind.FRAMES) {
                inputs.append(inputs.length() == 0 ? "" : ",").append(i);
            }
        }
        return inputs.toString();
    }

    /** Through the service, which keeps to the rules, and past it, straight to the controller, against the rules. */
    private String shapes() throws Exception {
        bench.peer("advertise b hci2");
        bench.peer("good b 4001");
        bench.peer("serve f fast hci1 Settle_fast");
        BleHeard beacon = new BleHeard();
        BleHeard other = new BleHeard();
        try (BleVmWitness witness =
                        new BleVmWitness(bench.bus, Bluez.devicePath("/org/bluez/hci0", bench.addressOf("hci2")));
                ProbeLink first = bench.open("hci2", "beacon", beacon);
                ProbeLink second = bench.open("hci1", "fast", other)) {
            require(first != second, "two links");
            Await.until("subscribed", 10_000, () -> bench.peer("listened f 0").equals("true"));
            bench.peer("stream f 0 10 600");
            bench.peer("odd b 25 1000 " + SEED);
            Await.until(
                    "the end of the odd ones",
                    120_000,
                    () -> bench.peer("streaming b").equals("false"));
            int odd = witness.told();
            require(odd > 300, odd + " of 1000 told");
            broken();
            String seen = bench.host.look().size() + " in reach";
            BleVmChecks.waitFor("all of the other", 90_000, other, () -> other.count() >= 600);
            inOrder(other, 600);
            require(
                    other.changes().equals(List.of(LinkChange.UP)),
                    other.words().toString());
            comesBack(beacon);
            require(bench.host.central().oddSignals() == 0, "signals that could not be taken");
            return "600 in order beside 1000 odd ones (seed " + SEED + "), of which the service told " + odd + ", and "
                    + BROKEN.size() + " broken ones; " + seen;
        } finally {
            bench.peer("quiet b");
            bench.peer("close f");
        }
    }

    private void broken() {
        for (String bytes : BROKEN) {
            String all = (bytes + " 00".repeat(31)).substring(0, 31 * 3 - 1);
            bench.guest("hcitool -i hci2 cmd 08 000a 00 >/dev/null; hcitool -i hci2 cmd 08 0008 1f " + all
                    + " >/dev/null; hcitool -i hci2 cmd 08 000a 01 >/dev/null");
        }
    }

    private void comesBack(BleHeard beacon) {
        for (int i = 0; i < 40 && !beacon.numbers(0).contains(0x0740); i++) {
            bench.peer("good b " + (i % 2 == 0 ? "4007" : "4008"));
            BleVmChecks.pause(250);
        }
        require(beacon.numbers(0).contains(0x0740), "the good one is heard again, said " + beacon.words());
    }

    /** Three times as long as the silence after which a probe would be asked anew. */
    private String constant() throws LinkException {
        bench.peer("serve f fast hci1 Settle_fast");
        BleHeard heard = new BleHeard();
        try (ProbeLink link = bench.open("hci1", "fast", heard)) {
            require(!link.toString().isEmpty(), "a link");
            Await.until("subscribed", 10_000, () -> bench.peer("listened f 0").equals("true"));
            bench.peer("repeat f 0 5 60 39300000");
            BleVmChecks.waitFor("all of them", 60_000, heard, () -> heard.count() >= 60);
            require(
                    heard.numbers(0).stream().allMatch(n -> n == 12345),
                    heard.numbers(0).toString());
            require(
                    heard.changes().equals(List.of(LinkChange.UP)),
                    heard.words().toString());
            return "60 times the same, and nothing was called lost";
        } finally {
            bench.peer("close f");
        }
    }
}
