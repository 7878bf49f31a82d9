package settlemark.ui;

import java.awt.BorderLayout;
import java.awt.CardLayout;
import java.awt.Dimension;
import java.awt.Graphics;
import java.util.EnumMap;
import java.util.Map;
import java.util.function.Consumer;
import javax.accessibility.AccessibleRole;
import javax.swing.BorderFactory;
import javax.swing.JPanel;
import org.jspecify.annotations.Nullable;
import settlemark.job.StepKind;

/** The open column: its head with the parts of the step, the ribbon, and one face. */
final class OpenColumn extends JPanel {
    private final transient Look look;
    private final Title title;
    private final RibbonBar ribbon;
    private final CardLayout cards = new CardLayout();
    private final JPanel holder = new JPanel(cards);
    private final Map<FaceKind, Face> faces = new EnumMap<>(FaceKind.class);
    private FaceKind shown = FaceKind.PLATE;

    /** The faces that there are. */
    enum FaceKind {
        PLATE,
        PROBES,
        WORK,
        ADJUST,
        CLOCK,
        CLOSE,
        TYPED,
        RECORD
    }

    OpenColumn(Look look, Consumer<String> person, Consumer<Integer> tick, Runnable entered) {
        super(new BorderLayout());
        this.look = look;
        title = new Title(look);
        ribbon = new RibbonBar(look, 1);
        faces.put(FaceKind.PLATE, new PlateFace(look));
        faces.put(FaceKind.PROBES, new ProbesFace(look));
        faces.put(FaceKind.WORK, new WorkFace(look));
        faces.put(FaceKind.ADJUST, new AdjustFace(look));
        faces.put(FaceKind.CLOCK, new ClockFace(look));
        faces.put(FaceKind.CLOSE, new CloseFace(look, tick));
        faces.put(FaceKind.TYPED, new TypedFace(look, entered));
        faces.put(FaceKind.RECORD, new RecordFace(look, person));
        faces.forEach((kind, face) -> holder.add(face, kind.name()));
        JPanel top = new JPanel(new BorderLayout());
        top.add(title, BorderLayout.CENTER);
        top.add(ribbon, BorderLayout.SOUTH);
        add(top, BorderLayout.NORTH);
        add(holder, BorderLayout.CENTER);
        restyle();
    }

    static FaceKind kind(Scene scene) {
        if (scene.adjusting()) {
            return FaceKind.ADJUST;
        }
        StepKind kind = scene.kind();
        return switch (kind) {
            case PLATE -> FaceKind.PLATE;
            case PROBES -> FaceKind.PROBES;
            case ZERO, LOCK_UP, THIS_APPLIANCE, ALL_APPLIANCES, FOUND, LEFT, SHUT, HOLD -> FaceKind.WORK;
            case CLOCK -> FaceKind.CLOCK;
            case STATICS, COMBUSTION -> FaceKind.TYPED;
            case CHECK, CLOSE -> FaceKind.CLOSE;
            case RECORD -> FaceKind.RECORD;
        };
    }

    void show(Scene scene, boolean digits) {
        FaceKind wanted = kind(scene);
        boolean changed = wanted != shown;
        shown = wanted;
        title.show(scene);
        ribbon.simulated(scene.simulated());
        getAccessibleContext()
                .setAccessibleName(Words.say(
                        "open column: {0}", Words.told(scene.open().step().title())));
        face().show(scene, digits || changed);
        if (changed) {
            cards.show(holder, wanted.name());
        }
    }

    Face face() {
        Face face = faces.get(shown);
        if (face == null) {
            throw new IllegalStateException("no face " + shown);
        }
        return face;
    }

    @Nullable
    Face face(FaceKind kind) {
        return faces.get(kind);
    }

    int neededWidth() {
        return face().neededWidth() + 2 * (int) Look.OPEN_OUTLINE;
    }

    void restyle() {
        setBorder(BorderFactory.createMatteBorder(2, 2, 2, 2, look.theme().ink()));
        faces.values().forEach(Face::restyle);
    }

    /** Title of the step and its parts, each with its mark and its value. */
    private static final class Title extends Painted {
        private @Nullable Scene scene;
        private String line = "";

        Title(Look look) {
            super(look, AccessibleRole.LABEL);
        }

        void show(Scene newScene) {
            scene = newScene;
            String newLine = Words.told(newScene.open().step().title()) + StepParts.of(newScene);
            sentence(newLine);
            if (!newLine.equals(line)) {
                line = newLine;
                repaint();
            }
        }

        @Override
        public Dimension getPreferredSize() {
            return new Dimension(look.ipx(200), Rows.head(look) - 2);
        }

        @Override
        void draw(Pen pen) {
            pen.fill(pen.theme().sheet(), 0, 0, getWidth(), getHeight());
            if (scene == null) {
                return;
            }
            double baseline = getHeight() / 2.0 + look.px(7);
            double end = pen.fit(
                    Words.told(scene.open().step().title()),
                    look.semiBold(Look.LABEL),
                    pen.theme().ink(),
                    look.px(14),
                    baseline,
                    getWidth() - look.px(28));
            StepParts.draw(pen, StepParts.of(scene), end + look.px(20), getWidth() - look.px(14.0), baseline);
        }
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        graphics.setColor(look.theme().sheet());
        graphics.fillRect(0, 0, getWidth(), getHeight());
    }
}
