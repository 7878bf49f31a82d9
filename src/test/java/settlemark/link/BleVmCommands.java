package settlemark.link;

import static settlemark.link.BleVmChecks.require;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import settlemark.profile.Profile;
import settlemark.session.SessionEvent;
import settlemark.session.SessionStore;
import settlemark.session.StoreException;
import settlemark.store.SqliteStore;

/** The program's own commands as processes, on the virtual machine's bus. */
final class BleVmCommands {
    /** Takes as long as the virtual radio needs for some forty thousand values, so it runs only where it is asked for. */
    static final String JOB = "a whole job by radio ends in a record";

    private static final int CHANNELS = 4;

    private final BleVmBench bench;
    private final int secondsEach;

    BleVmCommands(BleVmBench bench, int secondsEach) {
        this.bench = bench;
        this.secondsEach = secondsEach;
    }

    List<BleVmScenario> all() {
        return List.of(
                new BleVmScenario("the command probes finds the rig", this::probes),
                new BleVmScenario("the command log, four channels, 10 a second", () -> log(10)),
                new BleVmScenario("the command log, four channels, 50 a second", () -> log(50)),
                new BleVmScenario("the command log, four channels, 100 a second", () -> log(100)),
                new BleVmScenario(JOB, this::job));
    }

    private String probes() throws IOException {
        try (BleVmProcess rig = new BleVmProcess(bench, "rig", "rig", "--ble", "hci1", "--no-drop-outs")) {
            String address = bench.addressOf("hci1");
            rig.says("at ble:" + address, 60);
            try (BleVmProcess probes = new BleVmProcess(
                    bench,
                    "probes",
                    "probes",
                    "--adapter",
                    "hci0",
                    "--workspace",
                    bench.folder().resolve("probes.settlemark").toString())) {
                require(probes.ends(60) == 0, "exit code 0; " + probes.said());
                String out = probes.out();
                require(out.contains(address), address + " in " + out);
                require(out.contains("demo-set-ble"), "the rig's profile in " + out);
                return out.lines().filter(l -> l.contains(address)).findFirst().orElse("");
            }
        }
    }

    /** Every value of four channels is stored, each once and in order. */
    private String log(int perSecond) throws Exception {
        bench.peer("serve f four hci1 Settle_four");
        Path workspace = bench.folder().resolve("log-" + perSecond + ".settlemark");
        int count = perSecond * secondsEach;
        try (BleVmProcess log = new BleVmProcess(
                bench,
                "log-" + perSecond,
                "log",
                "--probe",
                "four=ble:" + bench.addressOf("hci1") + "@hci0",
                "--profile",
                "four=" + BleVmProfiles.FOUR,
                "--workspace",
                workspace.toString())) {
            BleVmChecks.calmly(
                    "subscribed, " + log.said(),
                    90,
                    () -> bench.peer("listened f 0").equals("true"));
            bench.peer("wide f 0 " + perSecond + " " + count);
            log.says("stored four " + count * CHANNELS, secondsEach + 90);
            log.interrupt();
            // A program that Ctrl-C ends has this code.
            require(log.ends(30) == 130, "ended in order; " + log.said());
        } finally {
            bench.peer("close f");
        }
        try (SessionStore store = SqliteStore.openForReading(workspace, BleVmCommands::four)) {
            long session = store.sessions().get(0).number();
            List<Integer> numbers = new ArrayList<>();
            List<Long> nanos = new ArrayList<>();
            store.events(session, event -> {
                if (event instanceof SessionEvent.Bytes bytes) {
                    numbers.add(BleHeard.number(bytes.chunk().bytes()));
                    nanos.add(bytes.timeNanos());
                }
            });
            require(
                    numbers.equals(IntStream.range(0, count).boxed().toList()),
                    "0 to " + (count - 1) + " in order, got " + numbers.size() + ": " + numbers);
            require(nanos.equals(nanos.stream().sorted().toList()), "times in order");
            long samples = store.sampleCount(session, 0);
            require(samples == (long) count * CHANNELS, samples + " samples");
            return count + " values in order, " + samples + " samples stored";
        } catch (StoreException e) {
            throw new AssertionError("the workspace cannot be read", e);
        }
    }

    private static Profile four(String text) {
        return BleVmProfiles.of("four");
    }

    private String job() throws IOException {
        Path folder = bench.folder().resolve("job");
        Files.createDirectories(folder);
        try (BleVmProcess demo = new BleVmProcess(
                bench,
                "demo",
                "demo",
                "--ble",
                "hci1,hci0",
                "--out",
                folder.toString(),
                "--workspace",
                folder.resolve("demo.settlemark").toString())) {
            int code = demo.ends(3000);
            require(code == 0, "exit code 0, got " + code + "; " + demo.said());
            try (Stream<Path> files = Files.list(folder)) {
                List<Path> records =
                        files.filter(f -> f.toString().endsWith(".pdf")).toList();
                require(!records.isEmpty(), "a record in " + folder + "; " + demo.said());
                for (Path record : records) {
                    require(Files.size(record) > 10_000, record + " has " + Files.size(record) + " bytes");
                }
            }
            return String.join(
                    "; ", demo.said().lines().filter(l -> l.contains("radio")).toList());
        }
    }
}
