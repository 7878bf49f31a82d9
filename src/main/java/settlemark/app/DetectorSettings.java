package settlemark.app;

import java.io.PrintWriter;
import java.util.List;
import java.util.Optional;
import settlemark.job.SettleForm;
import settlemark.session.SessionHeader;
import settlemark.session.SessionStore;
import settlemark.session.SettleFit;
import settlemark.session.StoreException;
import settlemark.settle.SettleChoices;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** The settings of settled detection that a workspace keeps. */
final class DetectorSettings {
    private static final String KEY = "settle";
    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    private DetectorSettings() {}

    static SettleChoices of(SessionStore store) throws StoreException {
        Optional<String> kept = store.settings().get(KEY);
        if (kept.isEmpty()) {
            return SettleChoices.NONE;
        }
        try {
            return SettleForm.read(MAPPER.readTree(kept.get()));
        } catch (IllegalArgumentException | JacksonException e) {
            throw new StoreException(
                    StoreException.Cause.DAMAGED,
                    "the workspace's settings of settled detection cannot be read (" + e.getMessage()
                            + "); set them anew with \"settlemark settings --reset\"",
                    e);
        }
    }

    /** Durable when it returns. */
    static void keep(SessionStore store, SettleChoices choices) throws StoreException {
        if (choices.isNone()) {
            store.settings().remove(KEY);
            return;
        }
        ObjectNode node = MAPPER.createObjectNode();
        SettleForm.write(choices, node);
        store.settings().put(KEY, MAPPER.writeValueAsString(node));
    }

    /** @throws StoreException where what the workspace or the plan sets cannot work with a session's channels */
    static void require(SessionHeader header) throws StoreException {
        List<String> problems = SettleFit.problems(header);
        if (!problems.isEmpty()) {
            throw new StoreException(
                    StoreException.Cause.FAULT, String.join("; ", problems) + " (see \"settlemark settings\")");
        }
    }

    /** Says what cannot work with a session's channels; whether everything can. */
    static boolean fit(SessionHeader header, PrintWriter err) {
        List<String> problems = SettleFit.problems(header);
        problems.forEach(p -> err.println("settlemark: " + p));
        return problems.isEmpty();
    }
}
