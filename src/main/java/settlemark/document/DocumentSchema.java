package settlemark.document;

import com.networknt.schema.Error;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * A JSON Schema (draft 2020-12) that documents are checked against, every problem with its line and column. A
 * sub-schema's {@code title} is the phrase that its messages use for what was expected.
 */
public final class DocumentSchema {
    private final Schema schema;
    private final JsonNode root;

    private DocumentSchema(Schema schema, JsonNode root) {
        this.schema = schema;
        this.root = root;
    }

    /**
     * The schema of a JSON text, which must not refer to other files.
     *
     * @throws RuntimeException where the text is no schema: a bug of ours, not of the person's document
     */
    public static DocumentSchema of(byte[] json) {
        JsonNode root = JsonMapper.shared().readTree(json);
        SchemaRegistry registry = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12);
        return new DocumentSchema(registry.getSchema(root), root);
    }

    /**
     * Adds all that the schema finds wrong with a document.
     *
     * @return JSON Pointers of the values that are wrong; the rest of the document is as the schema says
     */
    public Set<String> check(Document document, List<Problem> problems) {
        SchemaMessages messages = new SchemaMessages(document, root);
        Set<String> wrong = new HashSet<>();
        Set<Position> complained = new HashSet<>();
        problems.forEach(problem -> complained.add(new Position(problem.line(), problem.column())));
        Set<Problem> found = new LinkedHashSet<>();
        for (Error error : schema.validate(LargeNumbers.asIntegers(document.root()))) {
            wrong.add(error.getInstanceLocation().toString());
            Problem problem = messages.problem(error);
            // What the text itself got wrong needs no second complaint about what was made of it.
            if (!complained.contains(new Position(problem.line(), problem.column()))) {
                found.add(problem);
            }
        }
        problems.addAll(found);
        return wrong;
    }
}
