package settlemark.store;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.function.UnaryOperator;
import settlemark.session.StoreException;

/** A step from one format to the next, within the caller's transaction. */
@FunctionalInterface
interface Migration {
    void run(Connection connection, Failures failures) throws SQLException, StoreException;

    static Migration of(List<String> changes) {
        return (connection, failures) -> {
            for (String change : changes) {
                Connections.run(connection, change);
            }
        };
    }

    /** Changes from a file beside this class, each ended by a semicolon at the end of its line. */
    static Migration read(String name, UnaryOperator<String> template) {
        try (InputStream in = Migration.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("the program lacks its file " + name);
            }
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            return of(split(template.apply(text)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<String> split(String text) {
        return List.of(text.strip().split(";\n|;$", -1)).stream()
                .filter(change -> !change.isBlank())
                .toList();
    }
}
