package settlemark.ui;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.accessibility.AccessibleRole;
import org.jspecify.annotations.Nullable;
import settlemark.job.Limit;
import settlemark.job.RatingPlate;
import settlemark.job.Site;
import settlemark.job.StagePlate;

/** The rating plate in force, to be held against the one on the appliance. */
final class PlateFace extends Face {
    private final List<List<Painted>> columns = new ArrayList<>();
    private @Nullable RatingPlate shown;

    PlateFace(Look look) {
        super(look, Words.say("rating plate"));
    }

    @Override
    int neededWidth() {
        return look.ipx(720);
    }

    @Override
    void show(Scene scene, boolean digits) {
        RatingPlate plate = scene.job().plate();
        if (plate.equals(shown)) {
            return;
        }
        shown = plate;
        removeAll();
        columns.clear();
        columns.add(appliance(plate));
        columns.add(gas(plate));
        columns.add(air(plate));
        columns.forEach(c -> c.forEach(this::add));
        revalidate();
        repaint();
    }

    private List<Painted> appliance(RatingPlate plate) {
        List<Painted> fields = new ArrayList<>();
        fields.add(heading(Words.say("Appliance")));
        fields.add(field(Words.say("Appliance"), false, plate.appliance(), ""));
        fields.add(field(Words.say("Gas"), false, Words.told(plate.fuel().words()), ""));
        for (StagePlate stage : plate.stages()) {
            if (!Double.isNaN(stage.inputBtuPerHour())) {
                String input = String.format(Locale.ROOT, "%,.0f", stage.inputBtuPerHour());
                fields.add(field(Words.say("Input, {0}", Words.told(stage.name())), true, input, "Btu/h"));
            }
        }
        return fields;
    }

    private List<Painted> gas(RatingPlate plate) {
        List<Painted> fields = new ArrayList<>();
        fields.add(heading(Words.say("Gas side")));
        for (StagePlate stage : plate.stages()) {
            if (stage.manifoldLimit().isOpen()) {
                continue;
            }
            fields.add(field(
                    Words.say("Manifold, {0}", Words.told(stage.name())),
                    true,
                    String.format(Locale.ROOT, "%.2f", stage.manifoldTarget()),
                    "\u00b1" + Numbers.plain(stage.manifoldTolerance()) + " "
                            + stage.unit().symbol()));
        }
        fields.addAll(range(Words.say("Inlet"), plate.inlet()));
        if (!plate.control().isOpen()) {
            fields.add(field(
                    Words.say("Control's own inlet, most"),
                    true,
                    Numbers.plain(plate.control().upper()),
                    plate.control().unit().symbol()));
        }
        return fields;
    }

    private List<Painted> air(RatingPlate plate) {
        List<Painted> fields = new ArrayList<>();
        fields.add(heading(Words.say("Air side")));
        if (!plate.rise().isOpen()) {
            fields.addAll(range(Words.say("Rise"), plate.rise()));
        }
        if (!plate.statics().isOpen()) {
            fields.add(field(
                    Words.say("Total static, most"),
                    true,
                    Numbers.plain(plate.statics().upper()),
                    plate.statics().unit().symbol()));
        }
        if (plate.site().known()) {
            fields.add(field(
                    Words.say("Altitude"),
                    true,
                    String.format(Locale.ROOT, "%,.0f", plate.site().altitudeFeet()),
                    plate.site().derating() == Site.Derating.NONE
                            ? Words.say("ft, no derating")
                            : Words.say(
                                    "ft, input \u00d7 {0}",
                                    Numbers.plain(plate.site().share()))));
        }
        return fields;
    }

    private List<Painted> range(String name, Limit limit) {
        String unit = limit.unit().symbol();
        return List.of(
                field(Words.say("{0}, least", name), true, Numbers.plain(limit.lower()), unit),
                field(Words.say("{0}, most", name), true, Numbers.plain(limit.upper()), unit));
    }

    private FormField field(String name, boolean number, String value, String unit) {
        FormField field = new FormField(look, name, number);
        field.show(value, unit);
        return field;
    }

    private Painted heading(String words) {
        Painted heading = new Painted(look, AccessibleRole.LABEL) {
            @Override
            void draw(Pen pen) {
                pen.text(words, look.semiBold(Look.NAME), pen.theme().ink(), 0, look.px(24));
            }
        };
        heading.sentence(words);
        return heading;
    }

    @Override
    public void doLayout() {
        int left = look.ipx(24);
        int width = (getWidth() - 2 * left) / Math.max(1, columns.size());
        int most = columns.stream().mapToInt(List::size).max().orElse(1) - 1;
        int head = look.ipx(36);
        int each = Math.min(look.ipx(FormField.HEIGHT), (getHeight() - head) / Math.max(1, most));
        for (int c = 0; c < columns.size(); c++) {
            int y = 0;
            for (int i = 0; i < columns.get(c).size(); i++) {
                int height = i == 0 ? head : each;
                columns.get(c)
                        .get(i)
                        .setBounds(left + c * width, y, Math.min(width - look.ipx(8), look.ipx(340)), height);
                y += height;
            }
        }
    }
}
