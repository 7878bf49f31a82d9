package settlemark.document;

import java.util.Optional;
import org.snakeyaml.engine.v2.exceptions.Mark;

/** Line and column in a document's text, both from 1. */
record Position(int line, int column) {
    static final Position START = new Position(1, 1);

    static Position of(Optional<Mark> mark) {
        return mark.map(m -> new Position(m.getLine() + 1, m.getColumn() + 1)).orElse(START);
    }
}
