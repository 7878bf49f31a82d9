package settlemark.job;

/** What the appliance burns, as the plate says. */
public enum Fuel {
    NATURAL_GAS("natural gas"),
    PROPANE("propane");

    private final String words;

    Fuel(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
