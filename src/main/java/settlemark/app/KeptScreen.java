package settlemark.app;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import settlemark.session.Settings;
import settlemark.session.StoreException;
import settlemark.ui.JobPlace;
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
        return kept.map(KeptScreen::read).orElse(ScreenState.NONE);
    }

    /** What {@link #text} wrote; nothing where it cannot be read. */
    static ScreenState read(String text) {
        try {
            return read(MAPPER.readTree(text));
        } catch (IllegalArgumentException | JacksonException e) {
            return ScreenState.NONE;
        }
    }

    private static ScreenState read(JsonNode node) {
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
                texts(node.path("plate")),
                texts(node.path("workshop")),
                node.path("page").asString("first"),
                node.has("job") ? Optional.of(job(node.path("job"))) : Optional.empty());
    }

    private static Map<String, String> texts(JsonNode node) {
        Map<String, String> texts = new LinkedHashMap<>();
        node.properties().forEach(t -> texts.put(t.getKey(), t.getValue().asString("")));
        return texts;
    }

    private static JobPlace job(JsonNode node) {
        return new JobPlace(
                node.path("session").asString(""),
                node.path("step").asString(""),
                node.path("far").asBoolean(false),
                node.path("over").asString(""),
                node.path("asked").asString(""),
                texts(node.path("texts")),
                node.path("speed").asInt(1));
    }

    /** Durable when it returns. */
    static void keep(Settings settings, ScreenState state) throws StoreException {
        settings.put(KEY, text(state));
    }

    static String text(ScreenState state) {
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
        ObjectNode workshop = node.putObject("workshop");
        state.workshop().forEach(workshop::put);
        node.put("page", state.page());
        state.job().ifPresent(j -> {
            ObjectNode job = node.putObject("job");
            job.put("session", j.session()).put("step", j.step()).put("far", j.far());
            job.put("over", j.over()).put("asked", j.asked()).put("speed", j.speed());
            ObjectNode texts = job.putObject("texts");
            j.texts().forEach(texts::put);
        });
        return MAPPER.writeValueAsString(node);
    }
}
