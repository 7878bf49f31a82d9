package settlemark.app;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import settlemark.job.Act;
import settlemark.job.InstrumentCard;
import settlemark.job.InstrumentUse;
import settlemark.job.JobState;
import settlemark.job.StepKind;
import settlemark.job.StepState;
import settlemark.measure.Role;
import settlemark.session.Instruments.Kept;
import settlemark.session.LastUse;
import settlemark.session.LiveSession;
import settlemark.session.ProbeSetup;
import settlemark.session.ProbeView;
import settlemark.session.SessionHeader;
import settlemark.session.SessionStore;
import settlemark.session.Snapshot;
import settlemark.session.StoreException;
import settlemark.settle.ChannelReading;

/** Says which instruments of a workspace measure in a job: those that the person names, and those whose probes tell it. */
final class InstrumentLinks {
    private final Map<String, InstrumentCard> known = new HashMap<>();
    private final Map<String, String> named;
    private final Consumer<String> say;
    private final Set<String> said = new HashSet<>();

    /**
     * @param named serial number by the name of the probe, as the person says
     * @param say hears what is odd
     */
    InstrumentLinks(List<Kept> known, Map<String, String> named, Consumer<String> say) {
        known.forEach(k -> this.known.put(k.card().serial(), k.card()));
        this.named = Map.copyOf(named);
        this.say = say;
    }

    /** Whether what the person names is there, both the probes and the instruments; says what is not. */
    boolean fit(SessionHeader header) {
        List<String> probes = header.probes().stream().map(ProbeSetup::name).toList();
        boolean fits = true;
        for (Map.Entry<String, String> entry : named.entrySet()) {
            if (!probes.contains(entry.getKey())) {
                say.accept("--instrument names probe " + entry.getKey() + ", and the session's probes are "
                        + String.join(", ", probes));
                fits = false;
            }
            if (!known.containsKey(entry.getValue())) {
                say.accept("the workspace has no instrument " + entry.getValue()
                        + "; \"settlemark instruments list\" shows those it has, \"settlemark instruments add\" takes"
                        + " one in");
                fits = false;
            }
        }
        return fits;
    }

    /** What the person named; {@link #fit} must have found it good. */
    List<Act> named(SessionHeader header) {
        List<Act> acts = new ArrayList<>();
        for (ProbeSetup probe : header.probes()) {
            Optional.ofNullable(named.get(probe.name())).map(known::get).ifPresent(card -> {
                doubts(probe, card);
                acts.add(new Act.Instrument(card, places(probe), false));
            });
        }
        return acts;
    }

    private void doubts(ProbeSetup probe, InstrumentCard card) {
        if (!card.kind().isEmpty() && !card.kind().equals(probe.profile().id())) {
            say.accept("instrument " + card.serial() + " speaks by profile " + card.kind() + ", and " + probe.name()
                    + " by " + probe.profile().id() + ": is it this one?");
        }
    }

    private static Map<Role, String> places(ProbeSetup probe) {
        Map<Role, String> places = new EnumMap<>(Role.class);
        probe.roles().forEach((channel, role) -> places.put(role, channel));
        return places;
    }

    /** What probes have told since; one that is not in the workspace measures all the same, as one that nothing is known of. */
    List<Act> told(Snapshot now) {
        Optional<JobState> job = now.job();
        if (job.isEmpty()) {
            return List.of();
        }
        List<Act> acts = new ArrayList<>();
        for (ProbeView probe : now.probes()) {
            Map<Role, String> places = places(probe.setup());
            probe.serialNumber()
                    .filter(serial -> !places.isEmpty())
                    .filter(serial -> !isSaid(job.get(), serial, places))
                    .flatMap(serial -> card(probe, serial))
                    .ifPresent(card -> acts.add(new Act.Instrument(card, places, true)));
        }
        return acts;
    }

    private static boolean isSaid(JobState job, String serial, Map<Role, String> places) {
        List<InstrumentUse> uses = job.instruments();
        for (int i = uses.size() - 1; i >= 0; i--) {
            InstrumentUse use = uses.get(i);
            if (use.places().equals(places)) {
                return use.saidByProbe() && use.card().serial().equals(serial);
            }
        }
        return false;
    }

    private Optional<InstrumentCard> card(ProbeView probe, String serial) {
        String name = probe.setup().name();
        String person = named.getOrDefault(name, serial);
        if (!person.equals(serial) && said.add(name)) {
            say.accept(name + " says that its serial number is " + serial + ", and you said " + person
                    + ": what it says holds");
        }
        try {
            return Optional.of(Optional.ofNullable(known.get(serial))
                    .orElseGet(() -> InstrumentCard.unknown(
                            serial, "", probe.setup().profile().id())));
        } catch (IllegalArgumentException e) {
            if (said.add(name)) {
                say.accept(name + ": " + e.getMessage());
            }
            return Optional.empty();
        }
    }

    /** Keeps the battery and the zeros of the instruments that were used and that the workspace has. */
    static void keepUse(SessionStore store, LiveSession session) throws StoreException {
        Optional<JobState> job = session.job();
        if (job.isEmpty() || job.get().instruments().isEmpty()) {
            return;
        }
        Snapshot now = session.snapshot(session.header().startedAt());
        for (InstrumentUse use : job.get().instruments()) {
            store.instruments().used(use.card().serial(), lastUse(now, job.get(), use));
        }
    }

    private static LastUse lastUse(Snapshot now, JobState job, InstrumentUse use) {
        Instant start = now.header().startedAt();
        OptionalInt at = IntStream.range(0, now.probes().size())
                .filter(i ->
                        now.probes().get(i).setup().roles().values().stream().anyMatch(use.places()::containsKey))
                .findFirst();
        double battery = at.isPresent() ? now.probes().get(at.getAsInt()).batteryPercent() : Double.NaN;
        Optional<Instant> told = Double.isNaN(battery)
                ? Optional.empty()
                : Optional.of(start.plusNanos(now.probes().get(at.getAsInt()).lastNanos()));
        return new LastUse(battery, told, zeros(now.header(), job, use));
    }

    private static List<LastUse.Zero> zeros(SessionHeader header, JobState job, InstrumentUse use) {
        Map<String, LastUse.Zero> zeros = new HashMap<>();
        for (StepState step : job.steps()) {
            if (step.step().kind() == StepKind.ZERO && !step.superseded()) {
                step.readings().forEach(reading -> {
                    for (ChannelReading part : reading.channels()) {
                        if (part.instrument().serial().equals(use.card().serial())) {
                            String channel = use.places()
                                    .getOrDefault(part.role(), part.role().word());
                            zeros.put(
                                    channel,
                                    new LastUse.Zero(
                                            channel,
                                            part.value(),
                                            part.unit(),
                                            header.startedAt().plusNanos(reading.timeNanos()),
                                            header.key()));
                        }
                    }
                });
            }
        }
        return List.copyOf(zeros.values());
    }
}
