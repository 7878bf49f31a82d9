package settlemark.archproof.odd;

/** Lives in a package that nobody planned, under a name that says nothing. */
final class NotInTheTable {
    private NotInTheTable() {}

    static final class ThingManager {
        private ThingManager() {}
    }
}
