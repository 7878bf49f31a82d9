package settlemark.decode;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.IntFunction;
import java.util.function.IntPredicate;
import org.jspecify.annotations.Nullable;
import settlemark.profile.Field;

/**
 * Raw numbers for the fields that others depend on, so that exactly the wanted fields stand in a frame.
 */
final class ConditionChoice {
    /** Raw numbers tried beside those that some condition names. */
    private static final int TRIED = 256;

    private final List<Field> fields;
    /** By field that others depend on: what it must be, and what it must not be. */
    private final Map<Integer, List<List<Long>>> musts = new HashMap<>();

    private final Map<Integer, List<List<Long>>> mustNots = new HashMap<>();

    ConditionChoice(List<Field> fields) {
        this.fields = fields;
    }

    /**
     * One of the fields must stand in the frame.
     *
     * @param holds whether a field's condition holds already
     */
    void want(int[] candidates, IntPredicate holds) {
        int chosen = candidates[0];
        for (int candidate : candidates) {
            if (fields.get(candidate).when().isEmpty()) {
                return;
            }
            if (holds.test(candidate)) {
                chosen = candidate;
                break;
            }
        }
        add(musts, fields.get(chosen).when().orElseThrow());
    }

    /** None of the fields must stand in the frame; those in tagged values can be left out whatever the condition. */
    void refuse(int[] candidates) {
        for (int candidate : candidates) {
            Field field = fields.get(candidate);
            if (field.place() instanceof Field.ByTag) {
                continue;
            }
            if (field.when().isPresent()) {
                add(mustNots, field.when().get());
            } else {
                throw new IllegalArgumentException("every frame holds " + field.name() + ": it cannot be left out");
            }
        }
    }

    private static void add(Map<Integer, List<List<Long>>> map, Field.Condition when) {
        map.computeIfAbsent(when.field(), f -> new ArrayList<>()).add(when.raws());
    }

    /**
     * The raw numbers, by field.
     *
     * @param current what stands there now, null where nothing does
     * @throws IllegalArgumentException where there are none that fit
     */
    Map<Integer, Long> solved(IntFunction<@Nullable Long> current) {
        Set<Integer> asked = new LinkedHashSet<>(musts.keySet());
        asked.addAll(mustNots.keySet());
        Map<Integer, Long> solved = new HashMap<>();
        for (int field : asked) {
            Set<Long> tried = new LinkedHashSet<>();
            @Nullable Long now = current.apply(field);
            if (now != null) {
                tried.add(now);
            }
            musts.getOrDefault(field, List.of()).forEach(tried::addAll);
            long beyond = Math.min(TRIED, count(fields.get(field).content()));
            for (long raw = 0; raw < beyond; raw++) {
                tried.add(raw);
            }
            solved.put(
                    field,
                    tried.stream()
                            .filter(raw -> fits(field, raw))
                            .findFirst()
                            .orElseThrow(() -> new IllegalArgumentException("no number in "
                                    + fields.get(field).name() + " makes a frame that holds just this")));
        }
        return solved;
    }

    /** Raw numbers that fit a field. */
    private static long count(Field.Content content) {
        if (!(content instanceof Field.Binary binary)) {
            return TRIED;
        }
        int width =
                binary.bits().map(Field.Bits::count).orElse(8 * binary.wire().bytes());
        return width < 8 ? 1L << width : TRIED;
    }

    private boolean fits(int field, long raw) {
        return musts.getOrDefault(field, List.of()).stream().allMatch(raws -> raws.contains(raw))
                && mustNots.getOrDefault(field, List.of()).stream().noneMatch(raws -> raws.contains(raw));
    }
}
