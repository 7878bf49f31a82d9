package settlemark.session;

import java.util.Map;
import java.util.Optional;

/** What a person has chosen, kept in the workspace: JSON by a key such as {@code units.pressure}. */
public interface Settings {
    Optional<String> get(String key) throws StoreException;

    /** In order of keys. */
    Map<String, String> all() throws StoreException;

    /**
     * Durable when it returns.
     *
     * @param json one JSON value; anything else is refused with IllegalArgumentException
     */
    void put(String key, String json) throws StoreException;

    /** Returns whether there was one. */
    boolean remove(String key) throws StoreException;
}
