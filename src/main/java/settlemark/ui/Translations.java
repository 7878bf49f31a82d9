package settlemark.ui;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * One language's sentences. Those under {@code window} are known by their key; those under {@code told} come from other
 * parts of the program as whole sentences, and are recognised by what stands between their values: the one with most
 * letters of its own first. A value of such a sentence may be a sentence again.
 */
final class Translations {
    /** As many told sentences are remembered with their translation; then they are forgotten at once. */
    private static final int REMEMBERED = 4000;

    private static final Pattern PLACE = Pattern.compile("\\{(\\d)}");

    /** Figures with their units, and published sources. */
    private static final Pattern SAME_EVERYWHERE = Pattern.compile("[-+\u00b1\u2212]?[0-9.,:/-]+"
            + "( ?(inH\u2082O|inH2O|mbar|kPa|Pa|\u00b0F|\u00b0C|%|ppm|s|min|h|Btu/h|kW|ft\u00b3|ft\u00b3/h))?"
            + "( \u00b1[0-9.]+ (Btu/h|kW))?"
            + "|(ANSI|10 CFR|AHRI|ISO|EN) .*");

    private final Map<String, String> window;
    private final Map<String, String> told;
    private final List<Template> templates;
    private final Map<String, String> remembered = new ConcurrentHashMap<>();

    /** Loaded when it is first spoken. */
    private static final class German {
        private static final Translations WORDS = read("german.json", "german-problems.json");
    }

    /**
     * A sentence with values in it.
     *
     * @param english matches the whole of it, a group a value
     * @param numbers of the values, in the order of the groups
     * @param words in the language
     * @param letters of its own
     */
    private record Template(Pattern english, List<Integer> numbers, String words, int letters) {
        static Template of(String english, String words) {
            StringBuilder pattern = new StringBuilder();
            List<Integer> numbers = new ArrayList<>();
            Matcher places = PLACE.matcher(english);
            int at = 0;
            int letters = 0;
            while (places.find()) {
                pattern.append(Pattern.quote(english.substring(at, places.start())))
                        .append("(.+?)");
                letters += places.start() - at;
                numbers.add(Integer.parseInt(places.group(1)));
                at = places.end();
            }
            pattern.append(Pattern.quote(english.substring(at)));
            letters += english.length() - at;
            return new Template(Pattern.compile(pattern.toString(), Pattern.DOTALL), numbers, words, letters);
        }

        Optional<List<String>> groups(String sentence) {
            Matcher matcher = english.matcher(sentence);
            return matcher.matches()
                    ? Optional.of(IntStream.rangeClosed(1, numbers.size())
                            .mapToObj(matcher::group)
                            .toList())
                    : Optional.empty();
        }

        String said(List<String> groups, Translations in) {
            Object[] values = new Object[numbers.size()];
            for (int i = 0; i < values.length; i++) {
                values[numbers.get(i)] = in.told(groups.get(i));
            }
            return Words.fill(words, values);
        }
    }

    Translations(Map<String, String> window, Map<String, String> told) {
        this.window = Map.copyOf(window);
        this.told = Map.copyOf(told);
        this.templates = told.entrySet().stream()
                .filter(e -> PLACE.matcher(e.getKey()).find())
                .map(e -> Template.of(e.getKey(), e.getValue()))
                .sorted(Comparator.comparingInt(Template::letters).reversed())
                .toList();
    }

    static Translations german() {
        return German.WORDS;
    }

    /** @param problems what goes wrong, as other parts say it; known as what they say otherwise */
    private static Translations read(String file, String problems) {
        JsonNode root = tree(file);
        Map<String, String> told = texts(root.path("told"));
        told.putAll(texts(tree(problems)));
        return new Translations(texts(root.path("window")), told);
    }

    private static JsonNode tree(String file) {
        try (InputStream in = Translations.class.getResourceAsStream(file)) {
            if (in == null) {
                throw new IllegalStateException(file + " is missing in the program");
            }
            return JsonMapper.builder().build().readTree(in);
        } catch (IOException e) {
            throw new UncheckedIOException(file + " cannot be read: it is part of the program, install it again", e);
        }
    }

    private static Map<String, String> texts(JsonNode node) {
        Map<String, String> texts = new LinkedHashMap<>();
        node.properties().forEach(p -> texts.put(p.getKey(), p.getValue().asString()));
        return texts;
    }

    /** The window's sentences by their English. */
    Map<String, String> window() {
        return window;
    }

    /** The other parts' sentences by their English. */
    Map<String, String> told() {
        return told;
    }

    String of(String english) {
        String words = window.get(english);
        return words == null ? english : words;
    }

    String told(String sentence) {
        String known = exactly(sentence);
        if (known != null) {
            return known;
        }
        String before = remembered.get(sentence);
        if (before != null) {
            return before;
        }
        String words = byTemplate(sentence);
        if (remembered.size() >= REMEMBERED) {
            remembered.clear();
        }
        remembered.put(sentence, words);
        return words;
    }

    /**
     * The parts of a sentence that there is no translation of, as few as its templates allow; figures with their units
     * and published sources are the same in every language.
     */
    List<String> missing(String sentence) {
        if (exactly(sentence) != null || SAME_EVERYWHERE.matcher(sentence).matches()) {
            return List.of();
        }
        int end = knownSentence(sentence);
        return end > 0
                ? missing(sentence.substring(end + 1))
                : fitting(sentence).map(f -> missing(f.groups())).orElse(List.of(sentence));
    }

    /** Where a known sentence ends that another one follows; 0 where none begins the text. */
    private int knownSentence(String text) {
        for (int dot = text.indexOf(". "); dot > 0; dot = text.indexOf(". ", dot + 1)) {
            if (exactly(text.substring(0, dot + 1)) != null) {
                return dot + 1;
            }
        }
        return 0;
    }

    private List<String> missing(List<String> groups) {
        return groups.stream().flatMap(g -> missing(g).stream()).toList();
    }

    /** A template that a sentence fits: one that leaves nothing untranslated, if there is one. */
    private Optional<Fit> fitting(String sentence) {
        Fit best = null;
        int fewest = Integer.MAX_VALUE;
        for (Template template : templates) {
            List<String> groups = template.groups(sentence).orElse(null);
            int missing = groups == null ? Integer.MAX_VALUE : missing(groups).size();
            if (groups != null && missing < fewest) {
                best = new Fit(template, groups);
                fewest = missing;
            }
            if (missing == 0) {
                break;
            }
        }
        return Optional.ofNullable(best);
    }

    private record Fit(Template template, List<String> groups) {}

    /** The sentence's own translation, null where it is none that is known whole. */
    @Nullable
    String exactly(String sentence) {
        String words = told.get(sentence);
        return words == null ? window.get(sentence) : words;
    }

    private String byTemplate(String sentence) {
        int end = knownSentence(sentence);
        return end > 0
                ? exactly(sentence.substring(0, end)) + " " + told(sentence.substring(end + 1))
                : fitting(sentence)
                        .map(f -> f.template().said(f.groups(), this))
                        .orElse(sentence);
    }
}
