package settlemark.ui;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Supplier;
import settlemark.job.Progress;
import settlemark.measure.Role;
import settlemark.session.ProbeView.HealthClass;

/** The scenes that are looked at. */
final class Shots {
    private Shots() {}

    static Showroom room(String shot) {
        return Objects.requireNonNull(all().get(shot), shot).get();
    }

    static Map<String, Supplier<Showroom>> all() {
        Map<String, Supplier<Showroom>> shots = new LinkedHashMap<>();
        shots.put("01-plate", () -> new Showroom().at("plate", Progress.OPEN, 30));
        shots.put(
                "02-probes",
                () -> new Showroom()
                        .at("probes", Progress.OPEN, 60)
                        .health(HealthClass.MAINTENANCE_REQUIRED, "air battery 14 %"));
        shots.put(
                "03-zero-gathering",
                () -> new Showroom()
                        .at("zero", Progress.ARMED, 16)
                        .filling(Role.INLET, 4)
                        .filling(Role.MANIFOLD, 14)
                        .noisy(Role.SUPPLY));
        shots.put(
                "04-lock-up-holding",
                () -> new Showroom()
                        .at("lock-up", Progress.ARMED, 60)
                        .holding(Role.MANIFOLD)
                        .moving(Role.SUPPLY, 1.3));
        shots.put(
                "05-found-low-moving",
                () -> new Showroom()
                        .at("found-low", Progress.ARMED, 60)
                        .swinging(Role.MANIFOLD, 1.6)
                        .moving(Role.SUPPLY, 6)
                        .noisy(Role.RETURN));
        shots.put(
                "06-left-low-adjusting",
                () -> new Showroom()
                        .at("left-low", Progress.OPEN, 30)
                        .adjusting()
                        .bias(Role.MANIFOLD, -0.12)
                        .moving(Role.MANIFOLD, 8));
        shots.put(
                "07-left-high-adjusting",
                () -> new Showroom()
                        .at("left-high", Progress.OPEN, 25)
                        .adjusting()
                        .bias(Role.MANIFOLD, -0.25)
                        .moving(Role.MANIFOLD, 8));
        shots.put(
                "08-left-high-armed",
                () -> new Showroom()
                        .at("left-high", Progress.ARMED, 150)
                        .moving(Role.SUPPLY, 2.6)
                        .remark("the cap moved it by \u22120.04 inH\u2082O")
                        .health(HealthClass.MAINTENANCE_REQUIRED, "air battery 14 %"));
        shots.put(
                "09-stale",
                () -> new Showroom()
                        .at("left-high", Progress.ARMED, 150)
                        .failing("the disk is full: /home/moss/settlemark.db; free some space, nothing is lost yet")
                        .stale(Role.INLET)
                        .stale(Role.MANIFOLD));
        shots.put("10-shut", () -> new Showroom().at("shut", Progress.OPEN, 40).moving(Role.SUPPLY, 5));
        shots.put(
                "11-close-ticks",
                () -> new Showroom()
                        .at("close", Progress.OPEN, 100)
                        .closingZeroRead()
                        .ticked(List.of("Ports closed and caps on, leak-tested with the burner firing")));
        shots.put(
                "12-record",
                () -> new Showroom()
                        .at("record", Progress.OPEN, 60)
                        .skipped("shut")
                        .ticked(List.of(
                                "Ports closed and caps on, leak-tested with the burner firing",
                                "Thermostat and staging put back to normal",
                                "All other appliances relit and working")));
        shots.put(
                "30-visits", () -> new Showroom().at("close", Progress.OPEN, 20).visited());
        return shots;
    }
}
