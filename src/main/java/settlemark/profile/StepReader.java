package settlemark.profile;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import tools.jackson.databind.JsonNode;

/** The steps of a start-up or an action. */
final class StepReader {
    private final Connection connection;

    StepReader(Connection connection) {
        this.connection = connection;
    }

    /** All steps that could be read, in the document's order. */
    List<Step> readAll(Section parent, String key) {
        List<Step> steps = new ArrayList<>();
        for (Section section : parent.items(key)) {
            if (section.isClean()) {
                steps.add(read(section));
            }
        }
        return steps;
    }

    private Step read(Section step) {
        if (step.present(List.of("send", "expect", "wait")).isEmpty()) {
            step.error("a step must have at least one of send, expect, wait, got none");
        }
        Optional<Step.Send> send = step.child("send").flatMap(this::send);
        Optional<Step.Expect> expect = step.child("expect").flatMap(e -> expect(step, e));
        boolean answered = step.has("expect")
                || send.filter(s ->
                                s instanceof Step.SetRegisters || s instanceof Step.Write write && write.withResponse())
                        .isPresent();
        for (String key : step.present(List.of("time-out", "retries"))) {
            if (!answered && send.isPresent() == step.has("send")) {
                step.error(key, key + " means nothing where no answer is awaited; add expect, or remove it");
            } else if (key.equals("retries") && !step.has("send")) {
                step.error(key, "retries needs send: there is nothing to send again; remove it");
            }
        }
        return new Step(
                send,
                expect,
                step.number("time-out", Poll.DEFAULT_TIME_OUT_SECONDS),
                step.integer("retries", 0),
                step.number("wait", 0),
                step.line());
    }

    private Optional<Step.Send> send(Section send) {
        if (send.has("register") || send.has("values")) {
            return registers(send);
        }
        List<String> named = send.present(List.of("text", "hex"));
        if (named.size() != 1) {
            String kinds = send.has("characteristic") ? "text, hex" : "text, hex, register";
            send.error("send must have exactly one of " + kinds + ", got " + Words.got(named));
            return Optional.empty();
        }
        Optional<ByteText> bytes = bytes(send);
        if (!send.has("characteristic")) {
            if (send.has("acknowledged")) {
                send.error("acknowledged", "acknowledged needs characteristic beside it");
            }
            if (!connection.maySerial()) {
                send.error("send with text or hex alone needs the link serial, got " + connection.shown());
            }
            return bytes.map(Step.Bytes::new);
        }
        if (!connection.mayConnect()) {
            send.error("characteristic", "characteristic needs the link ble: connected, got " + connection.shown());
        }
        UUID uuid = Words.uuid(send.text("characteristic", ""));
        return bytes.map(b -> new Step.Write(uuid, b, send.flag("acknowledged", true)));
    }

    private Optional<Step.Send> registers(Section send) {
        List<String> foreign = send.present(List.of("text", "hex", "characteristic", "acknowledged"));
        if (!foreign.isEmpty()) {
            send.error(foreign.get(0), foreign.get(0) + " means nothing beside register and values; remove it");
            return Optional.empty();
        }
        if (!send.has("register") || !send.has("values")) {
            String missing = send.has("register") ? "values" : "register";
            send.error("send needs \"" + missing + "\" too: {register: 10, values: [1]}");
            return Optional.empty();
        }
        if (!connection.mayModbus()) {
            send.error("register", "register needs the link modbus-rtu, got " + connection.shown());
            return Optional.empty();
        }
        List<Integer> words =
                send.values("values").stream().map(JsonNode::intValue).toList();
        return RegisterNumber.address(send, words.size(), connection).map(first -> new Step.SetRegisters(first, words));
    }

    private Optional<Step.Expect> expect(Section step, Section expect) {
        if (!connection.maySerial()) {
            step.error("expect", "expect needs the link serial, got " + connection.shown() + "; remove it");
        }
        List<String> named = expect.present(List.of("text", "hex", "pattern"));
        if (named.size() != 1) {
            step.error("expect", "expect must have exactly one of text, hex, pattern, got " + Words.got(named));
            return Optional.empty();
        }
        return expect.has("pattern")
                ? PatternReader.read(expect, "pattern").map(Step.ExpectPattern::new)
                : bytes(expect).map(Step.ExpectBytes::new);
    }

    private static Optional<ByteText> bytes(Section section) {
        return section.has("hex") ? Words.hex(section, "hex") : Optional.of(Words.utf8(section, "text"));
    }
}
