package settlemark.ui;

import java.awt.Font;
import java.awt.geom.Ellipse2D;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;
import javax.accessibility.AccessibleRole;
import org.jspecify.annotations.Nullable;
import settlemark.chart.Mark;
import settlemark.session.ProbeView;
import settlemark.session.ProbeView.Health;
import settlemark.session.ProbeView.HealthClass;
import settlemark.session.Snapshot;

/** The first line: the mark, SIMULATED, the job, what is abnormal, how old the last stored sample is, the clock. */
final class Head extends Painted {
    static final double HEIGHT = 36;
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);
    private @Nullable Scene scene;

    Head(Look look) {
        super(look, AccessibleRole.STATUS_BAR);
    }

    void show(Scene newScene) {
        Scene before = scene;
        scene = newScene;
        Snapshot snapshot = newScene.snapshot();
        sentence(snapshot.header().title() + (newScene.simulated() ? Words.say(", simulated. ") : ". ")
                + worst(snapshot).map(Health::words).map(Words::told).orElse(Words.say("Probes are well")) + ". "
                + stored(snapshot, newScene.speed()));
        if (before == null || !line(before).equals(line(newScene))) {
            repaint();
        }
    }

    private String line(Scene of) {
        return clock(of.snapshot())
                + stored(of.snapshot(), of.speed())
                + of.speed()
                + worst(of.snapshot()).map(Health::words).map(Words::told).orElse("");
    }

    private static String clock(Snapshot snapshot) {
        return ZonedDateTime.ofInstant(snapshot.wall(), snapshot.header().zone())
                .format(CLOCK);
    }

    /** How much of the past is safe; the age is real time, however fast the demo runs. */
    static String stored(Snapshot snapshot, int speed) {
        if (!snapshot.stored().failure().isEmpty()) {
            return Words.say("not stored");
        }
        if (snapshot.stored().untilNanos() < 0) {
            return Words.say("nothing stored yet");
        }
        double age = Math.max(0, snapshot.timeNanos() - snapshot.stored().untilNanos()) / 1e9 / speed;
        return age < 2 ? Words.say("stored") : Words.say("stored {0} s ago", Numbers.fixed(age, 0));
    }

    /** The worst that is wrong with any probe; a silent probe is a failure. */
    static Optional<Health> worst(Snapshot snapshot) {
        return snapshot.probes().stream().flatMap(p -> health(p).stream()).min(Comparator.comparing(Health::health));
    }

    static Optional<Health> health(ProbeView probe) {
        if (probe.stale()) {
            return Optional.of(new Health(
                    HealthClass.FAILURE,
                    Words.say("{0} is silent", probe.setup().name())));
        }
        return probe.health();
    }

    @Override
    void draw(Pen pen) {
        pen.fill(pen.theme().window(), 0, 0, getWidth(), getHeight());
        if (scene == null) {
            return;
        }
        double baseline = getHeight() / 2.0 + look.px(5.5);
        double left = left(pen, scene, baseline);
        right(pen, scene, baseline, left);
    }

    private double left(Pen pen, Scene shown, double baseline) {
        double mark = look.px(26);
        Mark.STAPLE.draw(pen.g, look.px(11), (getHeight() - mark) / 2, mark, pen.theme());
        double dot = look.px(4.6);
        pen.fill(
                pen.theme().ink(),
                new Ellipse2D.Double(look.px(11) + (mark - dot) / 2, getHeight() / 2.0 + look.px(1), dot, dot));
        double x = look.px(45);
        if (shown.simulated()) {
            Font font = look.semiBold(Look.AXIS);
            double width = Look.width(Words.say("SIMULATED"), font) + look.px(18);
            double height = look.px(24);
            pen.outline(
                    pen.theme().ink(),
                    Look.OPEN_OUTLINE,
                    Pen.box(x, (getHeight() - height) / 2, width, height, Look.OPEN_OUTLINE, 0));
            pen.textCentred(Words.say("SIMULATED"), font, pen.theme().ink(), x + width / 2, baseline - look.px(0.8));
            x += width + look.px(13);
        }
        return pen.text(
                shown.snapshot().header().title(),
                look.semiBold(Look.BODY),
                pen.theme().ink(),
                x,
                baseline);
    }

    private void right(Pen pen, Scene shown, double baseline, double left) {
        Font body = look.regular(Look.BODY);
        double gap = look.px(26);
        double x = getWidth() - look.px(14);
        x = piece(pen, Words.say("keys  ?"), body, x, baseline, left) - gap;
        x = piece(pen, clock(shown.snapshot()), body, x, baseline, left) - gap;
        if (shown.speed() > 1) {
            x = piece(pen, Words.say("demo {0}\u00d7  X", shown.speed()), body, x, baseline, left) - gap;
        }
        String stored = stored(shown.snapshot(), shown.speed());
        boolean lost = !shown.snapshot().stored().failure().isEmpty();
        Font font = lost ? look.semiBold(Look.BODY) : body;
        double width = Look.width(stored, font);
        pen.text(stored, font, lost ? pen.theme().fault() : pen.theme().ink2(), x - width, baseline);
        Optional<Health> worst = worst(shown.snapshot());
        if (worst.isPresent()) {
            abnormal(pen, worst.get(), x - width - gap, baseline, left);
        }
    }

    /** Leaves out what would run into the job's title. */
    private double piece(Pen pen, String words, Font font, double right, double baseline, double left) {
        double width = Look.width(words, font);
        if (right - width < left + look.px(20)) {
            return right;
        }
        pen.text(words, font, pen.theme().ink2(), right - width, baseline);
        return right - width;
    }

    private void abnormal(Pen pen, Health health, double right, double baseline, double left) {
        Font font = look.semiBold(Look.BODY);
        double size = look.px(24);
        String words = Fitted.words(Words.told(health.words()), font, right - left - size - look.px(28));
        double width = Look.width(words, font);
        var color = health.health() == HealthClass.FAILURE
                ? pen.theme().fault()
                : pen.theme().notice();
        pen.text(words, font, color, right - width, baseline);
        double x = right - width - size - look.px(8);
        Mark.drawHealth(pen.g, health.health().letter(), x, (getHeight() - size) / 2, size, color, pen.theme());
    }
}
