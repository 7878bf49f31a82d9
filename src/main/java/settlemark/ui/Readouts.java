package settlemark.ui;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import settlemark.measure.Role;
import settlemark.session.ChannelView;
import settlemark.settle.ChannelReading;

/** The large rows of a face, one for each channel, and what each shows. */
final class Readouts {
    private final Look look;
    private final Map<Role, Readout> rows = new EnumMap<>(Role.class);

    Readouts(Look look) {
        this.look = look;
    }

    Readout row(Role role) {
        return rows.computeIfAbsent(role, r -> new Readout(look));
    }

    List<Readout> rows(List<Role> roles) {
        List<Readout> list = new ArrayList<>();
        roles.forEach(r -> list.add(row(r)));
        return list;
    }

    void show(Scene scene, List<Role> roles) {
        for (Role role : roles) {
            scene.snapshot().channel(role).ifPresent(c -> row(role).show(shown(scene, c)));
        }
    }

    /** A finished step shows what was read; any other shows now. */
    static Readout.Shown shown(Scene scene, ChannelView channel) {
        String name = Numbers.capital(Words.told(channel.role().word()));
        int decimals = Gap.decimals(channel);
        Optional<ChannelReading> read = scene.open().done() && !scene.live()
                ? scene.open().reading().flatMap(r -> r.channel(channel.role()))
                : Optional.empty();
        if (read.isPresent()) {
            Gap gap = Gap.of(read.get(), channel.settings().driftLimit());
            return new Readout.Shown(
                    Corrected.name(name, read.get().instrument()),
                    read.get().unit(),
                    Numbers.fixed(read.get().value(), decimals),
                    false,
                    gap);
        }
        Gap gap = Gap.of(channel, scene.snapshot().timeNanos());
        return new Readout.Shown(
                Corrected.name(name, channel.instrument()),
                channel.unit(),
                Numbers.fixed(channel.value(), decimals),
                channel.stale(),
                gap);
    }
}
