package settlemark.session;

import java.util.List;

/**
 * How a workspace stands beside what it holds.
 *
 * @param freeBytes left on its disk; -1 where the system does not say
 * @param logBytes in its log, which readers that do not end make grow
 * @param warnings what is about to go wrong, each with its remedy; empty where all is well
 */
public record StoreHealth(long freeBytes, long logBytes, List<String> warnings) {
    public StoreHealth {
        warnings = List.copyOf(warnings);
    }
}
