package settlemark.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayDeque;
import java.util.Deque;
import org.jspecify.annotations.Nullable;
import settlemark.session.StoreException;

/**
 * Connections that only read. Each question has one to itself, so that questions wait neither for each other nor for
 * the writer; a few are kept for the next. One that has failed is thrown away.
 */
final class Readers {
    private static final int KEPT = 2;

    private final Path file;
    private final Failures failures;
    private final Deque<Connection> idle = new ArrayDeque<>();
    private boolean closed;

    Readers(Path file, Failures failures) {
        this.file = file;
        this.failures = failures;
    }

    @FunctionalInterface
    interface Question<T> {
        T ask(Connection connection) throws SQLException, StoreException;
    }

    <T> T read(Question<T> question) throws StoreException {
        @Nullable Connection connection = null;
        boolean sound = false;
        try {
            connection = take();
            // One view of the workspace for the whole question, however much is written meanwhile.
            Connections.run(connection, "BEGIN");
            T answer = question.ask(connection);
            Connections.run(connection, "COMMIT");
            sound = true;
            return answer;
        } catch (SQLException e) {
            throw failures.of("cannot be read", e);
        } finally {
            if (connection != null) {
                giveBack(connection, sound);
            }
        }
    }

    void close() throws SQLException {
        Deque<Connection> rest;
        synchronized (idle) {
            closed = true;
            rest = new ArrayDeque<>(idle);
            idle.clear();
        }
        for (Connection connection : rest) {
            connection.close();
        }
    }

    private Connection take() throws SQLException {
        synchronized (idle) {
            if (closed) {
                throw new IllegalStateException("workspace " + file + " is closed");
            }
            Connection kept = idle.poll();
            if (kept != null) {
                return kept;
            }
        }
        return Connections.reader(file);
    }

    private void giveBack(Connection connection, boolean sound) throws StoreException {
        synchronized (idle) {
            if (sound && !closed && idle.size() < KEPT) {
                idle.push(connection);
                return;
            }
        }
        try {
            connection.close();
        } catch (SQLException e) {
            throw failures.of("cannot be read to the end", e);
        }
    }
}
