package settlemark.job;

/**
 * Something that can hurt people, seen while a job runs. It stays until the person has seen it, and on the record for ever.
 *
 * @param key unique within the job, such as {@code inlet-over#1}
 * @param sinceNanos session time when it was noticed
 * @param curedNanos session time since which it is no longer so, -1 while it is
 * @param seenNanos session time when the person said that they had seen it, -1 before
 * @param words what is so
 * @param caution what to do first
 */
public record SafetyNotice(String key, long sinceNanos, long curedNanos, long seenNanos, String words, String caution) {
    public boolean seen() {
        return seenNanos >= 0;
    }

    public boolean cured() {
        return curedNanos >= 0;
    }
}
