package settlemark.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.Locale;
import java.util.OptionalInt;
import settlemark.session.PairingPerson;

/** Asks the person at the terminal. Whatever is no clear answer is a no, and so is the end of the input. */
final class TypedPairing implements PairingPerson {
    private final BufferedReader in;
    private final PrintWriter out;

    TypedPairing(BufferedReader in, PrintWriter out) {
        this.in = in;
        this.out = out;
    }

    @Override
    public boolean confirm(String probe, int number) {
        return isYes(String.format(Locale.ROOT, "Does %s show %06d? [y/N] ", probe, number));
    }

    @Override
    public boolean allow(String probe) {
        return isYes(probe + " has neither keys nor display, so nobody can check that it is the one that you mean. Pair"
                + " with it? [y/N] ");
    }

    @Override
    public OptionalInt passkey(String probe) {
        String typed = ask("Type the number that " + probe
                + " shows or that is printed on it, six digits at most; nothing breaks off: ");
        return typed.matches("[0-9]{1,6}") ? OptionalInt.of(Integer.parseInt(typed)) : OptionalInt.empty();
    }

    @Override
    public void show(String probe, int number) {
        out.println(String.format(Locale.ROOT, "Enter on %s: %06d", probe, number));
        out.flush();
    }

    @Override
    public void brokenOff() {
        out.println();
        out.println("The pairing was broken off; an answer is no longer needed.");
        out.flush();
    }

    private boolean isYes(String question) {
        String typed = ask(question).toLowerCase(Locale.ROOT);
        return typed.equals("y") || typed.equals("yes");
    }

    private String ask(String question) {
        out.print(question);
        out.flush();
        try {
            String line = in.readLine();
            return line == null ? "" : line.strip();
        } catch (IOException e) {
            return "";
        }
    }
}
