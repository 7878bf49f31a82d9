package settlemark.ui;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import settlemark.job.Limit;
import settlemark.job.StagePlate;
import settlemark.measure.Role;
import settlemark.session.ChannelView;

/** Turns scenes into sounds while sound is on: how far from the target, settled, lost, and what can hurt people. */
final class SoundBoard {
    private static final long SAFETY_NANOS = 640_000_000L;

    private final Tones tones;
    private boolean on;
    private long nextNanos;
    private long nextSafetyNanos;
    private @Nullable String step;
    private boolean settled;

    SoundBoard(Tones tones) {
        this.tones = tones;
    }

    boolean on() {
        return on;
    }

    void on(boolean newOn) {
        on = newOn;
        step = null;
        nextNanos = 0;
        nextSafetyNanos = 0;
    }

    /** @param nowNanos monotonic */
    void look(Scene scene, long nowNanos) {
        if (!on) {
            return;
        }
        if (scene.job().alarm().isPresent()) {
            if (nowNanos >= nextSafetyNanos) {
                tones.play(Cue.safety());
                nextSafetyNanos = nowNanos + SAFETY_NANOS;
            }
            return;
        }
        if (scene.adjusting()) {
            step = null;
            adjusting(scene, nowNanos);
        } else {
            settling(scene);
        }
    }

    private void adjusting(Scene scene, long nowNanos) {
        Optional<Cue> cue = cue(scene);
        if (cue.isPresent() && nowNanos >= nextNanos) {
            tones.play(cue.get().beat());
            nextNanos = nowNanos + Math.round(1e9 / cue.get().perSecond());
        }
    }

    /** By where the manifold is heading, as the words beside it say. */
    static Optional<Cue> cue(Scene scene) {
        Optional<ChannelView> manifold = scene.snapshot().channel(Role.MANIFOLD);
        Optional<StagePlate> stage = scene.stage();
        if (manifold.isEmpty() || stage.isEmpty()) {
            return Optional.empty();
        }
        ChannelView now = manifold.get();
        double target = stage.get().unit().to(now.unit()).apply(stage.get().manifoldTarget());
        Limit limit = stage.get().manifoldLimit().to(now.unit());
        AdjustFace.Distance distance = AdjustFace.Distance.of(now, target);
        return Double.isNaN(distance.amount())
                ? Optional.empty()
                : Optional.of(Cue.of(-distance.amount(), limit.upper() - target, distance.near()));
    }

    /** All that an armed reading needs has settled, or some of it no longer is. */
    private void settling(Scene scene) {
        if (!scene.live() || scene.required().isEmpty()) {
            step = null;
            return;
        }
        boolean now = scene.settledCount() == scene.required().size();
        if (scene.open().key().equals(step) && now != settled) {
            tones.play(now ? Cue.settled() : Cue.lost());
        }
        step = scene.open().key();
        settled = now;
    }
}
