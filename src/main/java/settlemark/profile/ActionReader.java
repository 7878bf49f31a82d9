package settlemark.profile;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** What a person may have the device do. */
final class ActionReader {
    private ActionReader() {}

    static List<Action> readAll(Section root, StepReader stepReader) {
        List<Action> actions = new ArrayList<>();
        Set<String> ids = new HashSet<>();
        for (Section section : root.items("actions")) {
            List<Step> steps = stepReader.readAll(section, "steps");
            if (!section.isClean()) {
                continue;
            }
            String id = section.text("id", "");
            if (!ids.add(id)) {
                section.error("id", "action \"" + id + "\" stands twice; give each its own id");
            }
            actions.add(new Action(id, section.text("label", id), section.text("caution", ""), steps, section.line()));
        }
        return actions;
    }
}
