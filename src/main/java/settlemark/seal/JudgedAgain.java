package settlemark.seal;

import java.util.List;

/**
 * What a second person's other limits and settings made of a job's verdicts, as it stands in their review.
 *
 * @param under the other limits and settings, one text each; never empty
 * @param changes verdicts that are others under them, in the order of the job; empty where none is
 */
public record JudgedAgain(List<String> under, List<Change> changes) {
    static final int MOST_UNDER = 50;
    static final int MOST_CHANGES = 200;

    public JudgedAgain {
        under = List.copyOf(under);
        changes = List.copyOf(changes);
        if (under.isEmpty() || under.size() > MOST_UNDER || changes.size() > MOST_CHANGES) {
            throw new IllegalArgumentException("a review judges again under 1 to " + MOST_UNDER
                    + " limits and settings and lists at most " + MOST_CHANGES + " verdicts, got " + under.size()
                    + " and "
                    + changes.size());
        }
    }

    /**
     * @param step key of the job's step
     * @param figure what is judged, such as {@code manifold}
     * @param from outcome as it was sealed, in words
     * @param to outcome under the other limits and settings
     */
    public record Change(String step, String figure, String from, String to) {
        /** For people. */
        public String words() {
            return step + " " + figure + ": " + from + " became " + to;
        }
    }

    void into(Canon canon) {
        canon.each(under, canon::add);
        canon.each(
                changes, c -> canon.add(c.step()).add(c.figure()).add(c.from()).add(c.to()));
    }

    /** One sentence, for people. */
    public String words() {
        StringBuilder words = new StringBuilder("judged again under ").append(String.join(", ", under));
        if (changes.isEmpty()) {
            return words.append(": no verdict is another").toString();
        }
        return words.append(": ")
                .append(String.join("; ", changes.stream().map(Change::words).toList()))
                .toString();
    }
}
