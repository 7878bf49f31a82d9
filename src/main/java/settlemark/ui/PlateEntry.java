package settlemark.ui;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import settlemark.job.Fuel;
import settlemark.job.JobPlan;
import settlemark.job.Limit;
import settlemark.job.PlanStep;
import settlemark.job.RatingPlate;
import settlemark.job.Site;
import settlemark.job.StagePlate;
import settlemark.measure.Unit;

/** A plate while it is typed. */
final class PlateEntry {
    static final String PLACE = "place";
    static final String APPLIANCE = "appliance";
    static final String STATICS = "statics.most";
    static final String CONTROL = "control.most";
    static final String ALTITUDE = "altitude";
    static final String DERATING = "derating";
    private static final String SOURCE = "plate";
    private static final String CONTROL_SOURCE = "gas control";

    private static final int MOST_EDITS = 1000;

    private final Map<String, String> typed = new HashMap<>();
    private final Deque<Edit> edits = new ArrayDeque<>();
    private final Deque<Edit> taken = new ArrayDeque<>();
    private @Nullable JobPlan plan;
    private Fuel fuel = Fuel.NATURAL_GAS;
    private Units units = Units.ALL.get(0);

    /** A change of one text. */
    private record Edit(String key, String before, String after) {}

    /**
     * Something to be typed.
     *
     * @param unit beside it, empty for words
     * @param needed whether the job needs it
     */
    record Asked(String key, String label, String unit, boolean needed) {}

    void plan(JobPlan newPlan) {
        plan = newPlan;
        if (!newPlan.fuels().contains(fuel)) {
            fuel = newPlan.fuels().get(0);
        }
    }

    JobPlan plan() {
        JobPlan chosen = plan;
        if (chosen == null) {
            throw new IllegalStateException("a plate is typed for a plan");
        }
        return chosen;
    }

    Fuel fuel() {
        return fuel;
    }

    void fuel(Fuel newFuel) {
        fuel = newFuel;
    }

    Units units() {
        return units;
    }

    void units(Units newUnits) {
        units = newUnits;
    }

    void type(String key, String text) {
        String before = text(key);
        String after = text.strip();
        if (!before.equals(after)) {
            typed.put(key, after);
            taken.clear();
            edits.push(new Edit(key, before, after));
            if (edits.size() > MOST_EDITS) {
                edits.removeLast();
            }
        }
    }

    /** Takes the last edit back; returns what was edited, empty where there was nothing. */
    Optional<String> undo() {
        return Optional.ofNullable(edits.pollFirst()).map(edit -> {
            typed.put(edit.key(), edit.before());
            taken.push(edit);
            return edit.key();
        });
    }

    /** Does again what was taken back last. */
    Optional<String> redo() {
        return Optional.ofNullable(taken.pollFirst()).map(edit -> {
            typed.put(edit.key(), edit.after());
            edits.push(edit);
            return edit.key();
        });
    }

    /** All that was typed. */
    Map<String, String> texts() {
        return Map.copyOf(typed);
    }

    String text(String key) {
        return typed.getOrDefault(key, "");
    }

    List<Asked> job() {
        return List.of(
                new Asked(PLACE, Words.say("Place and job"), "", true),
                new Asked(APPLIANCE, Words.say("Appliance, as on the plate"), "", true),
                new Asked(
                        CONTROL,
                        Words.say("Gas control's own maximum, if given"),
                        units.pressure().symbol(),
                        false));
    }

    List<Asked> gas() {
        String unit = units.pressure().symbol();
        List<Asked> asked = new ArrayList<>();
        for (String stage : plan().readsManifold() ? plan().stages() : List.<String>of()) {
            asked.add(new Asked("manifold." + stage, Words.say("Manifold, {0}", name(stage)), unit, true));
            asked.add(
                    new Asked("tolerance." + stage, Words.say("Allowed to either side, {0}", name(stage)), unit, true));
        }
        asked.add(new Asked("inlet.least", Words.say("Inlet, least"), unit, true));
        asked.add(new Asked("inlet.most", Words.say("Inlet, most"), unit, true));
        return asked;
    }

    List<Asked> air() {
        String unit = units.rise().symbol();
        List<Asked> asked = new ArrayList<>();
        if (plan().readsRise()) {
            asked.add(new Asked("rise.least", Words.say("Air temperature rise, least"), unit, true));
            asked.add(new Asked("rise.most", Words.say("Air temperature rise, most"), unit, true));
        }
        if (plan().readsStatics()) {
            String pressure = units.pressure().symbol();
            asked.add(new Asked(STATICS, Words.say("Total static, most, if given"), pressure, false));
        }
        for (String stage : plan().readsInput() ? plan().stages() : List.<String>of()) {
            asked.add(new Asked("input." + stage, Words.say("Input, {0}, if given", name(stage)), "Btu/h", false));
        }
        if (plan().readsInput()) {
            asked.add(new Asked(ALTITUDE, Words.say("Altitude, if it matters"), "ft", false));
            asked.add(new Asked(DERATING, Words.say("Derating: none, 4% or a factor"), "", false));
        }
        return asked;
    }

    /** As the plan's own steps call the stage. */
    private String name(String stage) {
        return plan().steps().stream()
                .filter(s -> s.stage().equals(stage))
                .map(PlanStep::name)
                .map(Words::told)
                .findFirst()
                .orElse(Words.say("{0} fire", stage));
    }

    private List<Asked> all() {
        List<Asked> all = new ArrayList<>(job());
        all.addAll(gas());
        all.addAll(air());
        return all;
    }

    Optional<String> firstMissing() {
        return all().stream()
                .filter(a -> a.needed() && text(a.key()).isEmpty())
                .map(Asked::key)
                .findFirst();
    }

    /** What is wrong with what was typed, else what is missing; empty where nothing is. */
    String problem() {
        for (Asked asked : all()) {
            String wrong = wrong(asked);
            if (!wrong.isEmpty()) {
                return wrong;
            }
        }
        for (Asked asked : all()) {
            if (asked.needed() && text(asked.key()).isEmpty()) {
                return asked.unit().isEmpty()
                        ? Words.say("{0}: type it", asked.label())
                        : Words.say("{0}: copy it from the plate, in {1}", asked.label(), asked.unit());
            }
        }
        if (PlateSite.of(asked(ALTITUDE), plan().readsInput() ? text(DERATING) : "")
                .isEmpty()) {
            return Words.say(
                    "Derating: none, 4% (common practice) or the maker's factor such as 0.84, for an altitude of up to"
                            + " 20000 ft");
        }
        String range = range("inlet", Words.say("Inlet"));
        return range.isEmpty() ? range("rise", Words.say("Air temperature rise")) : range;
    }

    private String wrong(Asked asked) {
        String text = text(asked.key());
        if (asked.unit().isEmpty() || text.isEmpty()) {
            return "";
        }
        double value = number(asked.key());
        if (Double.isNaN(value)) {
            return Words.say(
                    "{0} must be a number, got \"{1}\"{2}",
                    asked.label(), text, text.contains(",") ? Words.say(" (use a point)") : "");
        }
        return value > 0 ? "" : Words.say("{0} must be above 0, got {1}", asked.label(), text);
    }

    private String range(String key, String name) {
        if (text(key + ".least").isEmpty() && text(key + ".most").isEmpty()) {
            return "";
        }
        double least = number(key + ".least");
        double most = number(key + ".most");
        return least <= most
                ? ""
                : Words.say(
                        "{0}: the least, {1}, is above the most, {2}", name, text(key + ".least"), text(key + ".most"));
    }

    /** NaN where it is none; only plain decimal numbers are. */
    private double number(String key) {
        String text = text(key);
        return text.matches("[+-]?[0-9]{1,9}([.][0-9]{1,9})?") ? Double.parseDouble(text) : Double.NaN;
    }

    Optional<RatingPlate> plate() {
        if (!problem().isEmpty()) {
            return Optional.empty();
        }
        Unit pressure = units.pressure();
        List<StagePlate> stages = plan().stages().stream()
                .map(s -> new StagePlate(
                        s, name(s), asked("manifold." + s), asked("tolerance." + s), pressure, asked("input." + s)))
                .toList();
        return Optional.of(new RatingPlate(
                text(APPLIANCE),
                fuel,
                stages,
                new Limit(number("inlet.least"), number("inlet.most"), pressure, SOURCE),
                plan().readsRise()
                        ? new Limit(number("rise.least"), number("rise.most"), units.rise(), SOURCE)
                        : Limit.open(units.rise(), "not asked"),
                most(STATICS, SOURCE),
                most(CONTROL, CONTROL_SOURCE),
                PlateSite.of(asked(ALTITUDE), plan().readsInput() ? text(DERATING) : "")
                        .orElse(Site.UNKNOWN)));
    }

    private Limit most(String key, String source) {
        return Double.isNaN(asked(key))
                ? Limit.open(units.pressure(), "not asked")
                : new Limit(Double.NEGATIVE_INFINITY, asked(key), units.pressure(), source);
    }

    /** NaN where this plan does not ask for it, though it was typed for another. */
    private double asked(String key) {
        return all().stream().anyMatch(a -> a.key().equals(key)) ? number(key) : Double.NaN;
    }
}
