package settlemark.ui;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** What is open before there is a session. */
enum StartPage {
    FIRST,
    PLATE,
    PROBES;

    /** Its word in what is kept. */
    String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    static Optional<StartPage> of(String word) {
        return Stream.of(values()).filter(p -> p.word().equals(word)).findFirst();
    }
}
