package settlemark.calc;

import java.util.List;

/** Inputs that a formula cannot work with; every problem at once, each with its remedy. */
public final class RefusedInputException extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient List<String> problems;

    RefusedInputException(List<String> problems) {
        super(String.join("; ", problems));
        this.problems = List.copyOf(problems);
    }

    public List<String> problems() {
        return problems;
    }
}
