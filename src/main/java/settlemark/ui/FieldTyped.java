package settlemark.ui;

import java.util.Locale;
import settlemark.measure.Unit;

/** A field of a profile from what was typed of it in the workshop. */
final class FieldTyped {
    private FieldTyped() {}

    /**
     * Makes a field of what stands in the form.
     *
     * @param picked the bytes that it is made of
     * @throws IllegalArgumentException where something typed cannot be one, in the window's language
     */
    static WorkshopDraft.Picked of(WorkshopPane pane, FrameStack.Picked picked) {
        String id = pane.name.getText().strip().toLowerCase(Locale.ROOT).replace(' ', '-');
        String[] type = pane.kind.getText().strip().split(" ", -1);
        int bytes = picked.to() - picked.from();
        require(id.matches("[a-z][a-z0-9-]*"), Words.say("A field needs a name of letters, digits and hyphens"));
        require(
                WorkshopDraft.KINDS.contains(type[0]),
                Words.say("The type is int, uint or float, got \"{0}\"", type[0]));
        require(
                bytes == 1 || bytes == 2 || bytes == 4 || bytes == 8,
                Words.say("A number has 1, 2, 4 or 8 bytes; {0} are picked", bytes));
        require(!type[0].equals("float") || bytes >= 4, Words.say("A float has 4 or 8 bytes; {0} are picked", bytes));
        String scale = pane.scale.getText().strip();
        require(
                scale.matches("-?\\d+(\\.\\d+)?"),
                Words.say("The scale is a number with a point such as 0.1, got \"{0}\"", scale));
        String unit = pane.unit.getText().strip();
        require(
                Unit.find(unit).isPresent(),
                Words.say("The unit is a UCUM code such as Pa, [in_i'H2O] or Cel, got \"{0}\"", unit));
        boolean low = type.length > 1 && type[1].equals("le");
        return new WorkshopDraft.Picked(id, picked.from(), bytes, type[0], !low, Double.parseDouble(scale), unit);
    }

    private static void require(boolean good, String why) {
        if (!good) {
            throw new IllegalArgumentException(why);
        }
    }
}
