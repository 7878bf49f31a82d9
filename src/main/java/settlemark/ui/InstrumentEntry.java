package settlemark.ui;

import java.util.List;
import java.util.function.Consumer;
import settlemark.session.Desk;
import settlemark.session.ProbeSetup;
import settlemark.session.SessionHeader;

/** Which instrument a probe is, as a person types it: the probe's name and a serial number, or the number alone. */
final class InstrumentEntry {
    private InstrumentEntry() {}

    static String question(SessionHeader header) {
        return Words.say("Which instrument is it, by its serial number? Such as: {0} 0042", first(header));
    }

    private static String first(SessionHeader header) {
        List<ProbeSetup> probes = header.probes();
        return probes.isEmpty() ? Words.say("gauge") : probes.get(0).name();
    }

    /** Looks for it and says so in the job; what is wrong with it is told. */
    static void typed(String text, SessionHeader header, DesktopHost host, Desk desk, Consumer<String> tell) {
        String line = text.strip();
        ProbeSetup named = header.probes().stream()
                .filter(p -> line.startsWith(p.name() + " ") || line.startsWith(p.name() + "="))
                .findFirst()
                .orElse(null);
        boolean alone = named == null && header.probes().size() == 1;
        if (named == null && !alone) {
            tell.accept(Words.say(
                    "Name the probe before the number: {0}",
                    String.join(
                            ", ", header.probes().stream().map(ProbeSetup::name).toList())));
            return;
        }
        String probe = named == null ? first(header) : named.name();
        String serial =
                named == null ? line : line.substring(probe.length() + 1).strip();
        host.instrument(
                probe,
                serial,
                act -> {
                    desk.act(act);
                    tell.accept(Words.say("{0} is instrument {1} from now on", probe, serial));
                },
                tell);
    }
}
