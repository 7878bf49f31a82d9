package settlemark.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import settlemark.measure.Role;
import settlemark.settle.ChannelReading;
import settlemark.settle.FromInstrument;
import settlemark.settle.StageReading;

/** Which instrument measures where, as it was said in the course of a job, and its corrections. */
final class InstrumentsInUse {
    private final List<InstrumentUse> uses = new ArrayList<>();

    /** What is said later holds from then on; the former stays listed, because it has measured. */
    void is(long timeNanos, Act.Instrument said) {
        uses.add(new InstrumentUse(said.card(), said.places(), said.saidByProbe(), timeNanos));
    }

    List<InstrumentUse> all() {
        return List.copyOf(uses);
    }

    private Optional<InstrumentUse> at(Role role) {
        return at(uses, role);
    }

    /** The one that was said last of a role. */
    static Optional<InstrumentUse> at(List<InstrumentUse> uses, Role role) {
        return uses.stream().filter(u -> u.places().containsKey(role)).reduce((a, b) -> b);
    }

    /**
     * A reading with the corrections of what measured it. A zero is what it is: it is taken off before the certificate's
     * values are compared.
     *
     * @param typed what was read off another instrument by the person
     */
    StageReading correct(StepKind kind, StageReading reading, Set<Role> typed) {
        if (uses.isEmpty()) {
            return reading;
        }
        boolean zero = kind == StepKind.ZERO || kind == StepKind.CLOSE;
        List<ChannelReading> parts = new ArrayList<>();
        for (ChannelReading part : reading.channels()) {
            Optional<InstrumentUse> use = typed.contains(part.role()) ? Optional.empty() : at(part.role());
            parts.add(use.map(u -> part.correctedBy(share(u, part, zero))).orElse(part));
        }
        return new StageReading(
                reading.step(), reading.purpose(), reading.timeNanos(), reading.byHand(), reading.handReason(), parts);
    }

    private static FromInstrument share(InstrumentUse use, ChannelReading part, boolean zero) {
        InstrumentCard card = use.card();
        String channel = use.places().getOrDefault(part.role(), "");
        return zero ? FromInstrument.uncorrected(card.serial(), "") : card.at(channel, part.unit(), part.value());
    }

    /** Where points did not reach. */
    static List<String> words(StageReading reading) {
        return reading.channels().stream()
                .filter(c -> !c.instrument().remark().isEmpty())
                .map(c -> "The " + c.role().word() + ": " + c.instrument().remark() + " (instrument "
                        + c.instrument().serial() + ").")
                .toList();
    }
}
