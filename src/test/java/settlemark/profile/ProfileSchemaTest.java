package settlemark.profile;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import settlemark.document.DocumentLimits;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What editors complete and explain a profile with. */
final class ProfileSchemaTest {
    private static final JsonNode SCHEMA = JsonMapper.shared().readTree(ProfileLibrary.resource("profile.schema.json"));

    @Test
    void noMappingAllowsUnknownKeys() {
        List<String> mappings = new ArrayList<>();
        walk(SCHEMA, "#", (schema, path) -> {
            if (schema.path("type").asString("").equals("object")) {
                mappings.add(path);
                assertThat(schema.has("additionalProperties")).as(path).isTrue();
                assertThat(schema.get("additionalProperties").isBoolean()
                                && schema.get("additionalProperties").asBoolean())
                        .as(path)
                        .isFalse();
            }
        });
        assertThat(mappings).hasSizeGreaterThan(35);
    }

    @Test
    void everyKeyIsExplained() {
        List<String> keys = new ArrayList<>();
        walk(SCHEMA, "#", (schema, path) -> {
            if (path.matches(".*/properties/[^/]+")) {
                keys.add(path);
                assertThat(explained(schema)).as(path).isTrue();
            }
        });
        assertThat(keys).hasSizeGreaterThan(150);
    }

    private static boolean explained(JsonNode schema) {
        if (schema.path("description").asString("").length() > 5) {
            return true;
        }
        String ref = schema.path("$ref").asString("");
        return ref.startsWith("#/$defs/") && explained(SCHEMA.get("$defs").get(ref.substring("#/$defs/".length())));
    }

    @Test
    void everyReferenceLeadsSomewhereAndEveryDefinitionIsUsed() {
        List<String> referred = new ArrayList<>();
        walk(SCHEMA, "#", (schema, path) -> {
            String ref = schema.path("$ref").asString("");
            if (!ref.isEmpty()) {
                assertThat(SCHEMA.at(ref.substring(1)).isMissingNode()).as(path).isFalse();
                referred.add(ref.substring("#/$defs/".length()));
            }
        });
        assertThat(referred).containsAll(SCHEMA.get("$defs").propertyNames());
    }

    @ParameterizedTest
    @CsvSource({
        "/properties/messages/maxItems," + ProfileLimits.MESSAGES,
        "/properties/fields/maxItems," + ProfileLimits.FIELDS,
        "/$defs/message/properties/fields/maxItems," + ProfileLimits.FIELDS,
        "/properties/channels/maxItems," + ProfileLimits.CHANNELS,
        "/properties/facts/maxItems," + ProfileLimits.FACTS,
        "/properties/actions/maxItems," + ProfileLimits.ACTIONS,
        "/properties/start-up/maxItems," + ProfileLimits.STEPS,
        "/$defs/action/properties/steps/maxItems," + ProfileLimits.STEPS,
        "/properties/recognise/maxItems," + ProfileLimits.RECOGNITIONS,
        "/properties/examples/maxItems," + ProfileLimits.EXAMPLES,
        "/$defs/field/properties/table/maxItems," + ProfileLimits.TABLE_POINTS,
        "/$defs/field/properties/polynomial/maxItems," + ProfileLimits.COEFFICIENTS,
        "/$defs/maximum-bytes/maximum," + ProfileLimits.FRAME_BYTES,
    })
    void limitsAreThoseOfTheProgram(String pointer, int limit) {
        assertThat(SCHEMA.at(pointer).asInt(0)).isEqualTo(limit);
    }

    @Test
    void textsAreBounded() {
        assertThat(DocumentLimits.DEFAULT).isEqualTo(new DocumentLimits(1 << 20, 20, 100_000));
    }

    /** What is done with each sub-schema. */
    private interface Visitor {
        void visit(JsonNode schema, String path);
    }

    private static void walk(JsonNode schema, String path, Visitor visitor) {
        visitor.visit(schema, path);
        for (String key : schema.propertyNames()) {
            if (key.equals("properties") || key.equals("$defs")) {
                JsonNode named = schema.get(key);
                named.propertyNames().forEach(name -> walk(named.get(name), path + "/" + key + "/" + name, visitor));
            } else if (key.equals("items") || key.equals("additionalProperties")) {
                walk(schema.get(key), path + "/" + key, visitor);
            }
        }
    }
}
