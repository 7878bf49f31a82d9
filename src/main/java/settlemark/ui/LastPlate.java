package settlemark.ui;

import java.awt.Color;
import java.awt.EventQueue;
import java.util.Optional;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import settlemark.job.JobPlan;
import settlemark.job.RatingPlate;

/**
 * The plate of the last job of the title that is typed: it is looked for while the person types and offered as a button.
 * Nothing is taken over by itself; the plate on the appliance may be another by now.
 */
final class LastPlate extends WordButton {
    private static final int LEAST_TITLE = 3;

    private final transient Host host;
    private String asked = "";
    private transient @Nullable RatingPlate found;

    /** Who knows former jobs; answers from any thread, or never. */
    interface Host {
        void lastPlate(String title, JobPlan plan, Consumer<RatingPlate> answer);
    }

    LastPlate(Look look, Host host, Consumer<RatingPlate> taken) {
        super(look, () -> {});
        this.host = host;
        setVisible(false);
        addActionListener(e -> plate().ifPresent(taken));
    }

    Optional<RatingPlate> plate() {
        return Optional.ofNullable(found);
    }

    /** What is typed by now; asked once for each title and plan. */
    void look(String title, JobPlan plan) {
        String question = plan.key() + " " + title;
        if (question.equals(asked)) {
            return;
        }
        asked = question;
        offer(null);
        if (title.strip().length() >= LEAST_TITLE) {
            host.lastPlate(
                    title,
                    plan,
                    plate -> EventQueue.invokeLater(() -> {
                        if (question.equals(asked)) {
                            offer(plate);
                        }
                    }));
        }
    }

    private void offer(@Nullable RatingPlate plate) {
        found = plate;
        setVisible(plate != null);
        getAccessibleContext()
                .setAccessibleName(plate == null ? "" : Words.say("Take the last plate: {0}", plate.appliance()));
        revalidate();
        repaint();
    }

    @Override
    void words(Pen pen, Color ink, Color second) {
        double room = getWidth() - look.px(34);
        pen.text(
                Fitted.words(Words.say("Take the last plate over"), look.regular(Look.AXIS), room),
                look.regular(Look.AXIS),
                second,
                look.px(17),
                getHeight() / 2.0 - look.px(6));
        pen.text(
                Fitted.words(plate().map(RatingPlate::appliance).orElse(""), look.semiBold(Look.NAME), room),
                look.semiBold(Look.NAME),
                ink,
                look.px(17),
                getHeight() / 2.0 + look.px(15));
    }
}
