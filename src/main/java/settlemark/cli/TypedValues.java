package settlemark.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import settlemark.job.Act;
import settlemark.job.StepState;
import settlemark.measure.Role;
import settlemark.session.SessionHeader;

/** Values as a person types them in one line, from an instrument that the line names. */
final class TypedValues {
    private static final String FROM = " from ";

    private TypedValues() {}

    static String prompt(StepState step) {
        return "type what no probe gives, such as "
                + step.step().required().stream().map(r -> r.word() + "=...").collect(Collectors.joining(" "))
                + FROM + "INSTRUMENT";
    }

    /**
     * The acts of a line such as {@code o2=6.4 co=12+-5 stack=380 from analyser 0815}.
     *
     * @throws IllegalArgumentException in words, where it is none
     */
    static List<Act> of(StepState step, SessionHeader header, String line) {
        int at = line.indexOf(FROM);
        if (at < 0) {
            throw new IllegalArgumentException("say which instrument the values are from: ... from analyser 0815");
        }
        List<Act> acts = new ArrayList<>();
        for (String pair : line.substring(0, at).strip().split("\\s+", -1)) {
            acts.add(one(step, header, pair, line.substring(at + FROM.length()).strip()));
        }
        return acts;
    }

    private static Act one(StepState step, SessionHeader header, String pair, String instrument) {
        int equals = pair.indexOf('=');
        Optional<Role> role = equals < 0 ? Optional.empty() : Role.ofWord(pair.substring(0, equals));
        if (role.isEmpty()) {
            throw new IllegalArgumentException("\"" + pair + "\" is no value; write such as "
                    + step.step().required().get(0).word() + "=6.4, or =6.4+-0.2 with what it may be off by");
        }
        String[] parts = pair.substring(equals + 1).split("\\+-", 2);
        try {
            return new Act.Entered(
                    step.key(),
                    role.get(),
                    Double.parseDouble(parts[0]),
                    header.unit(role.get()),
                    parts.length > 1 ? Double.parseDouble(parts[1]) : Double.NaN,
                    instrument);
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException(
                    "\"" + pair + "\": a number is needed behind the =, with a point, in "
                            + header.unit(role.get()).symbol(),
                    e);
        }
    }
}
