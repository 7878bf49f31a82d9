package settlemark.profile;

import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Where the bytes of a message come from, and whether the link can bring them. */
final class SourceReader {
    static final List<String> KEYS = List.of("ask", "characteristic", "service-data", "company-data");

    private final Section message;
    private final String title;
    private final Connection connection;

    SourceReader(Section message, String title, Connection connection) {
        this.message = message;
        this.title = title;
        this.connection = connection;
    }

    /** Empty where it could not be read. */
    Optional<Source> read() {
        List<String> named = message.present(KEYS);
        if (named.size() > 1) {
            message.error(
                    named.get(1),
                    title + " must have at most one of " + String.join(", ", KEYS) + ", got " + Words.got(named));
            return Optional.empty();
        }
        if (named.isEmpty()) {
            return unasked();
        }
        Section section = message.child(named.get(0)).orElseThrow();
        if (!section.isClean()) {
            return Optional.empty();
        }
        return switch (named.get(0)) {
            case "ask" -> ask(section);
            case "characteristic" -> characteristic(section);
            default -> advertised(named.get(0));
        };
    }

    private Optional<Source> unasked() {
        if (connection.link().isEmpty() || connection.maySerial()) {
            return Optional.of(new Source.Unasked());
        }
        String needed = connection.mayModbus()
                ? "ask: a Modbus device sends nothing by itself"
                : "characteristic, service-data or company-data with the link ble";
        message.error(title + " needs " + needed);
        return Optional.empty();
    }

    private Optional<Source> ask(Section ask) {
        List<String> named = ask.present(List.of("text", "hex", "function"));
        if (named.size() != 1) {
            ask.error("ask must have exactly one of text, hex, function, got " + Words.got(named));
            return Optional.empty();
        }
        if (ask.has("function")) {
            return registers(ask);
        }
        for (String key : ask.present(List.of("register", "count"))) {
            ask.error(key, key + " needs function beside it, 3 or 4; a text or hex is sent as it is");
        }
        if (!connection.maySerial()) {
            message.error("ask", "ask with text or hex needs the link serial, got " + connection.shown());
            return Optional.empty();
        }
        Optional<ByteText> request = ask.has("hex") ? Words.hex(ask, "hex") : Optional.of(Words.utf8(ask, "text"));
        return request.map(bytes -> new Source.Answer(bytes, PollReader.read(ask)));
    }

    private Optional<Source> registers(Section ask) {
        if (!connection.mayModbus()) {
            message.error("ask", "ask with function needs the link modbus-rtu, got " + connection.shown());
            return Optional.empty();
        }
        List<String> missing = List.of("register", "count").stream()
                .filter(key -> !ask.has(key))
                .toList();
        if (!missing.isEmpty()) {
            ask.error("function needs " + String.join(" and ", missing) + " beside it");
            return Optional.empty();
        }
        int count = ask.integer("count", 1);
        return RegisterNumber.address(ask, count, connection)
                .map(first -> new Source.Registers(ask.integer("function", 3), first, count, PollReader.read(ask)));
    }

    private Optional<Source> characteristic(Section section) {
        if (!connection.mayConnect()) {
            message.error("characteristic", "characteristic needs the link ble: connected, got " + connection.shown());
            return Optional.empty();
        }
        Source.By by = Words.by(section.text("by", ""));
        if (by != Source.By.READ) {
            for (String key : section.present(List.of("period", "time-out", "retries"))) {
                section.error(
                        key,
                        key + " needs by: read; with " + section.text("by", "")
                                + " the device decides when; remove it");
            }
        }
        Optional<UUID> service =
                section.has("service") ? Optional.of(Words.uuid(section.text("service", ""))) : Optional.empty();
        return Optional.of(new Source.Characteristic(
                service,
                Words.uuid(section.text("uuid", "")),
                by,
                PollReader.read(section),
                section.flag("presentation-format"),
                section.flag("measurement")));
    }

    private Optional<Source> advertised(String key) {
        if (!connection.mayAdvertise()) {
            message.error(key, key + " needs the link ble: advertising or ble: connected, got " + connection.shown());
            return Optional.empty();
        }
        return Optional.of(
                key.equals("service-data")
                        ? new Source.ServiceData(Words.uuid(message.text(key, "")))
                        : new Source.CompanyData(message.integer(key, 0)));
    }
}
