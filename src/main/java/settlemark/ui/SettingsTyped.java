package settlemark.ui;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import settlemark.job.SettingsChange;
import settlemark.job.SettleForm;
import settlemark.measure.Unit;
import settlemark.session.SessionHeader;
import settlemark.session.SettleFit;
import settlemark.settle.SettleAdjustment;
import settlemark.settle.SettleChoices;
import settlemark.settle.SettleKind;
import settlemark.settle.SettleSettings;

/**
 * The settings of settled as texts, in the units that the job is shown in, and back. A text that was not touched stands for
 * the very number behind it, so that units and rounding change nothing.
 */
final class SettingsTyped {
    /** What can be set of a kind of channel, in the order of the form. */
    enum Setting {
        DRIFT("drift", true),
        BAND("band", true),
        HORIZON("horizon", false),
        WINDOWS("window", false),
        DWELL("dwell", false),
        HUNTING("hunting", false);

        private final String word;
        private final boolean measured;

        Setting(String word, boolean measured) {
            this.word = word;
            this.measured = measured;
        }
    }

    /** One field of the form. */
    record Place(SettleKind kind, Setting setting) {}

    /** @param problems what is wrong, by the field that it is said at; where there are any, nothing may be used */
    record Read(SettleChoices choices, Map<Place, String> problems) {}

    private static final Pattern PROBLEM =
            Pattern.compile("(?:[^:]*: )?(gas|air|stack) (drift|band|horizon|window|dwell|hunting).*");

    private final SessionHeader header;
    private final SettleChoices before;

    /**
     * @param header of the job, in the units that it is shown in
     * @param before what holds now
     */
    SettingsTyped(SessionHeader header, SettleChoices before) {
        this.header = header;
        this.before = before;
    }

    /** What holds now: what was said last, else what the job began with. */
    static SettleChoices inForce(Scene scene) {
        List<SettingsChange> said = scene.job().settings();
        return said.isEmpty()
                ? scene.snapshot().header().settings()
                : said.get(said.size() - 1).to();
    }

    /** The kinds of channel that the job's probes measure. */
    List<SettleKind> kinds() {
        return header.probes().stream()
                .flatMap(p -> p.roles().values().stream())
                .filter(r -> !r.gasAnalysis())
                .map(SettleFit::kind)
                .distinct()
                .sorted()
                .toList();
    }

    String unit(Place place) {
        return place.setting().measured ? unit(place.kind()).symbol() : "s";
    }

    private Unit unit(SettleKind kind) {
        return kind == SettleKind.GAS ? header.pressureUnit() : header.temperatureUnit();
    }

    private double factor(SettleKind kind) {
        return Math.abs(SettleForm.unit(kind).to(unit(kind)).slope());
    }

    /** As the job began. */
    String planned(Place place) {
        return text(header.settings(), place);
    }

    String now(Place place) {
        return text(before, place);
    }

    private String text(SettleChoices choices, Place place) {
        SettleKind kind = place.kind();
        SettleSettings settings = choices.settings(kind);
        return switch (place.setting()) {
            case DRIFT -> figure(settings.driftLimit() * factor(kind));
            case BAND -> figure(settings.band() * factor(kind));
            case HORIZON -> figure(settings.horizonSeconds());
            case WINDOWS ->
                String.join(
                        ",",
                        settings.windowSeconds().stream()
                                .map(SettingsTyped::figure)
                                .toList());
            case DWELL -> figure(settings.dwellSeconds());
            case HUNTING -> {
                double hunting = choices.of(kind).huntingSeconds();
                yield Double.isNaN(hunting) ? "" : figure(hunting);
            }
        };
    }

    private static String figure(double value) {
        return Numbers.plain(Double.parseDouble(String.format(Locale.ROOT, "%.4g", value)));
    }

    /** What is typed, with all that is wrong about it. */
    Read read(Map<Place, String> texts) {
        Map<Place, String> problems = new LinkedHashMap<>();
        Map<SettleKind, SettleAdjustment> all = new EnumMap<>(SettleKind.class);
        all.putAll(before.adjustments());
        for (SettleKind kind : kinds()) {
            SettleAdjustment set = SettleAdjustment.NONE;
            for (Setting setting : Setting.values()) {
                Place place = new Place(kind, setting);
                try {
                    set = set.over(
                            of(place, texts.getOrDefault(place, now(place)).strip()));
                } catch (IllegalArgumentException e) {
                    problems.put(place, String.valueOf(e.getMessage()));
                }
            }
            all.put(kind, set);
        }
        SettleChoices choices = new SettleChoices(all);
        if (problems.isEmpty()) {
            // One fault hides others, so each kind is looked at alone, and without the hunting that it is held to.
            all.forEach((kind, set) -> {
                find(new SettleChoices(Map.of(kind, withoutHunting(set))), problems);
                find(new SettleChoices(Map.of(kind, set)), problems);
            });
        }
        return new Read(choices, Map.copyOf(problems));
    }

    private void find(SettleChoices choices, Map<Place, String> problems) {
        SettleFit.problems(header.withSettings(choices)).forEach(p -> problems.putIfAbsent(at(p), p));
    }

    private static SettleAdjustment withoutHunting(SettleAdjustment set) {
        return new SettleAdjustment(
                set.driftLimit(),
                set.band(),
                set.horizonSeconds(),
                set.windowSeconds(),
                set.dwellSeconds(),
                Double.NaN);
    }

    /** The field that a sentence is about; the windows where it names none. */
    private Place at(String problem) {
        Matcher found = PROBLEM.matcher(problem);
        if (!found.matches()) {
            return new Place(kinds().get(0), Setting.WINDOWS);
        }
        for (Setting setting : Setting.values()) {
            if (setting.word.equals(found.group(2))) {
                return new Place(SettleForm.kind(found.group(1)), setting);
            }
        }
        throw new IllegalStateException("no field for \"" + problem + "\"");
    }

    /** One setting alone, the others open. */
    private SettleAdjustment of(Place place, String text) {
        if (text.equals(now(place))) {
            return alone(place.setting(), before.of(place.kind()));
        }
        boolean open = text.isEmpty() && place.setting() != Setting.HUNTING;
        if (open || text.equals(planned(place))) {
            return alone(place.setting(), header.settings().of(place.kind()));
        }
        if (text.isEmpty()) {
            return SettleAdjustment.NONE;
        }
        double none = Double.NaN;
        double factor = place.setting().measured ? factor(place.kind()) : 1;
        return switch (place.setting()) {
            case DRIFT -> new SettleAdjustment(number(text) / factor, none, none, List.of(), none, none);
            case BAND -> new SettleAdjustment(none, number(text) / factor, none, List.of(), none, none);
            case HORIZON -> new SettleAdjustment(none, none, number(text), List.of(), none, none);
            case WINDOWS -> new SettleAdjustment(none, none, none, numbers(text), none, none);
            case DWELL -> new SettleAdjustment(none, none, none, List.of(), number(text), none);
            case HUNTING -> new SettleAdjustment(none, none, none, List.of(), none, number(text));
        };
    }

    private static SettleAdjustment alone(Setting setting, SettleAdjustment set) {
        double none = Double.NaN;
        return new SettleAdjustment(
                setting == Setting.DRIFT ? set.driftLimit() : none,
                setting == Setting.BAND ? set.band() : none,
                setting == Setting.HORIZON ? set.horizonSeconds() : none,
                setting == Setting.WINDOWS ? set.windowSeconds() : List.of(),
                setting == Setting.DWELL ? set.dwellSeconds() : none,
                setting == Setting.HUNTING ? set.huntingSeconds() : none);
    }

    private static List<Double> numbers(String text) {
        List<Double> numbers = new ArrayList<>();
        for (String part : text.split("[,; ]+", -1)) {
            numbers.add(number(part));
        }
        return numbers;
    }

    private static double number(String text) {
        try {
            double value = Double.parseDouble(text);
            if (Double.isFinite(value)) {
                return value;
            }
        } catch (NumberFormatException e) {
            // Said below, as of what is endless.
        }
        throw new IllegalArgumentException(Words.say("type a number with a point, such as 0.01; got \"{0}\"", text));
    }
}
