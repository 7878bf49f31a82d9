package settlemark.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;

/**
 * Questions to a person, one at a time, each with a line that helps and an answer that an empty line stands for. An
 * answer that cannot be taken is told why at once, and asked for again. Works from a pipe as well.
 */
final class Interview {
    /** There are no more answers. */
    static final class EndedException extends Exception {
        private static final long serialVersionUID = 1L;
    }

    /** An answer that cannot be taken; the message says what was expected. */
    static final class RefusedException extends Exception {
        private static final long serialVersionUID = 1L;

        private final String message;

        RefusedException(String message) {
            super(message);
            this.message = message;
        }

        String message() {
            return message;
        }
    }

    /** What an answer means. */
    interface Meaning<T> {
        T of(String answer) throws RefusedException;
    }

    /**
     * One of several answers.
     *
     * @param word that may be typed instead of its number
     * @param words what it is
     */
    record Choice<T>(String word, String words, T value) {}

    private final BufferedReader in;
    private final PrintWriter out;

    Interview(BufferedReader in, PrintWriter out) {
        this.in = in;
        this.out = out;
    }

    void say(String line) {
        out.println(line);
    }

    /**
     * Asks until the answer can be taken.
     *
     * @param standard what an empty line stands for
     */
    <T> T ask(String question, String help, String standard, Meaning<T> meaning) throws EndedException, IOException {
        out.println();
        out.println(help);
        while (true) {
            out.print(question + " [" + standard + "]: ");
            out.flush();
            String line = in.readLine();
            if (line == null) {
                out.println();
                throw new EndedException();
            }
            try {
                return meaning.of(line.isBlank() ? standard : line.strip());
            } catch (RefusedException e) {
                out.println("  " + e.message());
            }
        }
    }

    int number(String question, String help, int standard, int least, int most) throws EndedException, IOException {
        return ask(question, help, Integer.toString(standard), answer -> {
            try {
                int number = Integer.decode(answer);
                if (number >= least && number <= most) {
                    return number;
                }
            } catch (NumberFormatException e) {
                // Told below, together with numbers that are too small or too large.
            }
            throw new RefusedException(
                    "a whole number from " + least + " to " + most + " is needed, got \"" + answer + "\"");
        });
    }

    /** A number with a point, above or below zero but not zero. */
    double real(String question, String help, String standard, Meaning<Double> others)
            throws EndedException, IOException {
        return ask(question, help, standard, answer -> {
            if (answer.matches("[-+]?([0-9]+\\.?[0-9]*|\\.[0-9]+)([eE][-+]?[0-9]{1,3})?")) {
                double number = Double.parseDouble(answer);
                if (number != 0 && Double.isFinite(number)) {
                    return number;
                }
            }
            return others.of(answer);
        });
    }

    boolean yes(String question, String help, boolean standard) throws EndedException, IOException {
        return ask(question, help, standard ? "yes" : "no", answer -> switch (answer.toLowerCase(Locale.ROOT)) {
            case "y", "yes" -> true;
            case "n", "no" -> false;
            default -> throw new RefusedException("yes or no is needed, got \"" + answer + "\"");
        });
    }

    /** The first choice is the one that an empty line stands for. */
    <T> T choose(String question, String help, List<Choice<T>> choices) throws EndedException, IOException {
        StringBuilder list = new StringBuilder(help);
        for (int i = 0; i < choices.size(); i++) {
            Choice<T> choice = choices.get(i);
            list.append(String.format(Locale.ROOT, "%n  %d  %-9s %s", i + 1, choice.word(), choice.words()));
        }
        return ask(question, list.toString(), "1", answer -> {
            for (int i = 0; i < choices.size(); i++) {
                if (answer.equals(Integer.toString(i + 1))
                        || answer.equalsIgnoreCase(choices.get(i).word())) {
                    return choices.get(i).value();
                }
            }
            throw new RefusedException("a number from 1 to " + choices.size()
                    + " or a word of the list is needed, got \"" + answer + "\"");
        });
    }
}
