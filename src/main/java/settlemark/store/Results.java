package settlemark.store;

/** Where decoded results lie: those of the day under their session, and those of each rereading, in like tables. */
enum Results {
    OF_THE_DAY("", "session"),
    OF_A_REREADING("reread_", "rereading");

    private final String prefix;
    private final String key;

    Results(String prefix, String key) {
        this.prefix = prefix;
        this.key = key;
    }

    /** A statement with the tables' prefix for {@code {t}} and the name of the key's column for {@code {key}}. */
    String sql(String template) {
        return template.replace("{t}", prefix).replace("{key}", key);
    }

    /** What has that key, for messages. */
    String name(long number) {
        return key + " " + number;
    }
}
