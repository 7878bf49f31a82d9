package settlemark.ui;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.Month;
import java.time.YearMonth;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * What a person types to find sessions: words of the title, the appliance or the plan; {@code inside}, {@code close},
 * {@code outside}, {@code unfinished}, {@code simulated}, {@code log}; {@code accepted} or {@code returned} by a second
 * person; a day, a month or a year such as {@code 2026-11}, {@code Oct} or {@code 2025}, also after {@code since} or {@code until}. All of it must fit.
 *
 * @param parts each must fit
 * @param problem what could not be understood, empty where all was
 */
record SessionQuery(List<Predicate<SessionLine>> parts, String problem) {
    private static final int MONTH_LETTERS = 3;

    private static final List<String> KNOWN = List.of(
            Words.key("since"),
            Words.key("until"),
            Words.key("on"),
            Words.key("inside"),
            Words.key("close"),
            Words.key("outside"),
            Words.key("unfinished"),
            Words.key("simulated"),
            Words.key("log"),
            Words.key("accepted"),
            Words.key("returned"),
            Words.key("today"));

    SessionQuery {
        parts = List.copyOf(parts);
    }

    /** The days that a word means. */
    private record Days(LocalDate first, LocalDate last) {}

    /** @param today for months without a year: the last such month that has begun */
    static SessionQuery of(String text, LocalDate today) {
        List<Predicate<SessionLine>> parts = new ArrayList<>();
        String problem = "";
        String[] words = text.strip().split("\\s+", -1);
        for (int i = 0; i < words.length; i++) {
            String word = english(words[i].toLowerCase(Locale.ROOT));
            boolean since = word.equals("since");
            boolean until = word.equals("until");
            if (word.isEmpty()) {
                continue;
            }
            if (since || until || word.equals("on")) {
                Optional<Days> days = i + 1 < words.length ? days(words[++i], today) : Optional.empty();
                if (days.isEmpty()) {
                    problem = Words.say("after \"{0}\" comes a day, such as 2026-11-25, or a month, such as Oct", word);
                } else {
                    parts.add(when(since ? "since" : until ? "until" : "on", days.get()));
                }
            } else {
                parts.add(days(word, today).map(d -> when("on", d)).orElseGet(() -> word(word)));
            }
        }
        return new SessionQuery(parts, problem);
    }

    /** The query's own words may be typed in the window's language, and always in English. */
    private static String english(String word) {
        return KNOWN.stream()
                .filter(known -> Words.told(known).equals(word))
                .findFirst()
                .orElse(word);
    }

    boolean fits(SessionLine line) {
        return parts.stream().allMatch(p -> p.test(line));
    }

    private static Predicate<SessionLine> when(String how, Days days) {
        return line -> {
            LocalDate day = line.startedAt().toLocalDate();
            return (how.equals("until") || !day.isBefore(days.first()))
                    && (how.equals("since") || !day.isAfter(days.last()));
        };
    }

    private static Predicate<SessionLine> word(String word) {
        return switch (word) {
            case "inside", "close", "outside" -> line -> line.verdict().equals(word);
            case "unfinished" -> SessionLine::unfinished;
            case "simulated" -> line -> line.summary().simulated();
            case "accepted", "returned" ->
                line -> line.word()
                        .map(w -> w.accepted() == word.equals("accepted"))
                        .orElse(false);
            case "log" -> line -> !line.isJob();
            default ->
                line -> (line.summary().title() + " " + line.appliance() + " " + line.plan())
                        .toLowerCase(Locale.ROOT)
                        .contains(word);
        };
    }

    private static Optional<Days> days(String word, LocalDate today) {
        try {
            if (word.equals("today")) {
                return Optional.of(new Days(today, today));
            }
            if (word.matches("\\d{4}-\\d{2}-\\d{2}")) {
                LocalDate day = LocalDate.parse(word);
                return Optional.of(new Days(day, day));
            }
            if (word.matches("\\d{4}-\\d{2}")) {
                return Optional.of(month(YearMonth.parse(word)));
            }
            if (word.matches("(19|20)\\d{2}")) {
                int year = Integer.parseInt(word);
                return Optional.of(new Days(LocalDate.of(year, 1, 1), LocalDate.of(year, 12, 31)));
            }
        } catch (DateTimeException e) {
            return Optional.empty();
        }
        return named(word).map(m -> {
            YearMonth named = YearMonth.of(today.getYear(), m);
            return month(named.isAfter(YearMonth.from(today)) ? named.minusYears(1) : named);
        });
    }

    private static Days month(YearMonth month) {
        return new Days(month.atDay(1), month.atEndOfMonth());
    }

    /** By three letters at least, or the whole name. */
    private static Optional<Month> named(String word) {
        String lower = word.toLowerCase(Locale.ROOT);
        for (Month month : Month.values()) {
            String english = month.name().toLowerCase(Locale.ROOT);
            String own = month.getDisplayName(TextStyle.FULL, Words.locale()).toLowerCase(Words.locale());
            if (means(lower, english) || means(lower, own)) {
                return Optional.of(month);
            }
        }
        return Optional.empty();
    }

    private static boolean means(String word, String month) {
        return word.equals(month) || word.length() == MONTH_LETTERS && month.startsWith(word);
    }
}
