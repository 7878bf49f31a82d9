package settlemark.link;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Scenarios on the real Bluetooth stack in a virtual machine; see src/test/ble-vm/run. Prints a line for each, beginning
 * with "passed" or "FAILED". No scenario is tried twice, unless the virtual machine itself broke under it: then "BROKEN"
 * is printed and the run ends.
 */
public final class BleVmMain {
    private static final int GUEST_BROKE = 4;

    private BleVmMain() {}

    /**
     * @param arguments port of the guest's bus, socket of its shell, seconds for each rate, part of a name or "", how many
     *     scenarios of those an earlier run has done, and whether the whole job is wanted too, "yes" or "no"
     */
    public static void main(String[] arguments) throws IOException {
        int code = 0;
        try (BleVmBench bench = new BleVmBench(Integer.parseInt(arguments[0]), Path.of(arguments[1]))) {
            List<BleVmScenario> wanted = scenarios(bench, Integer.parseInt(arguments[2])).stream()
                    .filter(s -> s.name().contains(arguments[3]))
                    .filter(s -> !s.name().equals(BleVmCommands.JOB) || arguments[5].equals("yes"))
                    .toList();
            for (BleVmScenario scenario : wanted.subList(Integer.parseInt(arguments[4]), wanted.size())) {
                code = Math.max(code, run(bench, scenario));
                if (code == GUEST_BROKE) {
                    System.exit(code);
                }
            }
        }
        System.out.println("end of the scenarios");
        System.exit(code);
    }

    /** What can end in a fault of the kernel stands last. */
    private static List<BleVmScenario> scenarios(BleVmBench bench, int secondsEach) {
        List<BleVmScenario> all = new ArrayList<>();
        all.addAll(new BleVmProbes(bench).all());
        all.addAll(new BleVmStreams(bench, secondsEach).all());
        all.addAll(new BleVmShipped(bench).all());
        all.addAll(new BleVmOdd(bench).all());
        all.addAll(new BleVmPairing(bench).all());
        all.addAll(new BleVmCommands(bench, secondsEach).all());
        all.addAll(new BleVmReading(bench).all());
        all.addAll(new BleVmOutages(bench).all());
        return all;
    }

    private static int run(BleVmBench bench, BleVmScenario scenario) {
        long start = System.nanoTime();
        String outcome = "passed";
        String detail;
        try {
            detail = scenario.body().run();
        } catch (Exception | AssertionError e) {
            outcome = bench.isBroken() ? "BROKEN" : "FAILED";
            detail = e.toString();
            e.printStackTrace();
        }
        System.out.printf(
                Locale.ROOT,
                "%s %s (%.1f s)%s%n",
                outcome,
                scenario.name(),
                (System.nanoTime() - start) / 1e9,
                detail.isEmpty() ? "" : ": " + detail);
        return switch (outcome) {
            case "passed" -> 0;
            case "FAILED" -> 1;
            default -> GUEST_BROKE;
        };
    }
}
