package settlemark.decode;

import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import settlemark.profile.Field;
import settlemark.profile.Tagged;

/** Finds the fields that stand in tagged values. Not safe for two threads. */
final class TaggedFields implements TagWalk.Visitor {
    private final TagWalk walk;
    /** Tags that some field wants, rising. */
    private final long[] tags;

    private final int[] seen;
    /** By tag: indices of the fields that want it. */
    private final int[][] wanting;
    /** By field. */
    private final int[] nths;

    private final int[] starts;
    private final int[] ends;

    TaggedFields(Tagged tagged, List<Field> fields, int[] starts, int[] ends) {
        this.walk = new TagWalk(tagged);
        this.starts = starts;
        this.ends = ends;
        tags = fields.stream()
                .filter(field -> field.place() instanceof Field.ByTag)
                .mapToLong(field -> ((Field.ByTag) field.place()).tag())
                .distinct()
                .sorted()
                .toArray();
        seen = new int[tags.length];
        wanting = new int[tags.length][];
        nths = new int[fields.size()];
        Arrays.setAll(wanting, i -> new int[0]);
        for (int i = 0; i < nths.length; i++) {
            if (fields.get(i).place() instanceof Field.ByTag place) {
                nths[i] = place.nth();
                int tag = Arrays.binarySearch(tags, place.tag());
                wanting[tag] = Arrays.copyOf(wanting[tag], wanting[tag].length + 1);
                wanting[tag][wanting[tag].length - 1] = i;
            }
        }
    }

    /** Sets where the values of the fields with tags stand, of those that do. */
    @Nullable
    String find(byte[] bytes, int from, int end) {
        Arrays.fill(seen, 0);
        return walk.cut(bytes, from, end, this);
    }

    @Override
    public void value(long tag, int from, int to) {
        int index = Arrays.binarySearch(tags, tag);
        if (index < 0) {
            return;
        }
        for (int field : wanting[index]) {
            if (nths[field] == seen[index]) {
                starts[field] = from;
                ends[field] = to;
            }
        }
        seen[index]++;
    }
}
