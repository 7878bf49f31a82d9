package settlemark.app;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import settlemark.session.Settings;
import settlemark.session.StoreException;
import settlemark.ui.Language;
import settlemark.ui.ScreenState;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** How the window looked, kept in a workspace. */
final class KeptScreen {
    private static final String KEY = "screen";
    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    private KeptScreen() {}

    /** What was kept; nothing where there is none, or what is there cannot be read: a window opens all the same. */
    static ScreenState read(Settings settings) throws StoreException {
        Optional<String> kept = settings.get(KEY);
        if (kept.isEmpty()) {
            return ScreenState.NONE;
        }
        try {
            return read(MAPPER.readTree(kept.get()));
        } catch (IllegalArgumentException | JacksonException e) {
            return ScreenState.NONE;
        }
    }

    private static ScreenState read(JsonNode node) {
        Map<String, String> plate = new LinkedHashMap<>();
        node.path("plate")
                .properties()
                .forEach(p -> plate.put(p.getKey(), p.getValue().asString("")));
        JsonNode place = node.path("place");
        Optional<ScreenState.Place> stood = place.isMissingNode()
                ? Optional.empty()
                : Optional.of(new ScreenState.Place(
                        place.path("x").asInt(0),
                        place.path("y").asInt(0),
                        place.path("width").asInt(0),
                        place.path("height").asInt(0)));
        return new ScreenState(
                node.path("dark").asBoolean(false),
                node.path("units").asInt(-1),
                node.path("sound").asBoolean(false),
                node.path("pixels_per_mm").asDouble(0),
                stood,
                Language.ofCode(node.path("language").asString("")).orElse(Language.ENGLISH),
                plate);
    }

    /** Durable when it returns. */
    static void keep(Settings settings, ScreenState state) throws StoreException {
        ObjectNode node = MAPPER.createObjectNode();
        node.put("dark", state.dark());
        node.put("units", state.units());
        node.put("sound", state.sound());
        node.put("language", state.language().code());
        node.put("pixels_per_mm", state.pixelsPerMm());
        state.place()
                .ifPresent(p -> node.putObject("place")
                        .put("x", p.x())
                        .put("y", p.y())
                        .put("width", p.width())
                        .put("height", p.height()));
        ObjectNode plate = node.putObject("plate");
        state.plate().forEach(plate::put);
        settings.put(KEY, MAPPER.writeValueAsString(node));
    }
}
