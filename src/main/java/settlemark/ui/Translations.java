package settlemark.ui;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
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

    private final Map<String, String> window;
    private final Map<String, String> told;
    private final List<Template> templates;
    private final Map<String, String> remembered = new ConcurrentHashMap<>();

    /** Loaded when it is first spoken. */
    private static final class German {
        private static final Translations WORDS = read("german.json");
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

        @Nullable
        Object[] values(String sentence, Translations in) {
            Matcher matcher = english.matcher(sentence);
            if (!matcher.matches()) {
                return null;
            }
            Object[] values = new Object[numbers.stream().mapToInt(n -> n).max().orElse(-1) + 1];
            for (int i = 0; i < numbers.size(); i++) {
                values[numbers.get(i)] = in.told(matcher.group(i + 1));
            }
            return values;
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

    private static Translations read(String file) {
        try (InputStream in = Translations.class.getResourceAsStream(file)) {
            if (in == null) {
                throw new IllegalStateException(file + " is missing in the program");
            }
            JsonNode root = JsonMapper.builder().build().readTree(in);
            return new Translations(texts(root.path("window")), texts(root.path("told")));
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

    /** True where a sentence, or a part of one, is known to the language. */
    boolean knows(String sentence) {
        return exactly(sentence) != null
                || templates.stream()
                        .anyMatch(t -> t.english().matcher(sentence).matches());
    }

    private @Nullable String exactly(String sentence) {
        String words = told.get(sentence);
        return words == null ? window.get(sentence) : words;
    }

    private String byTemplate(String sentence) {
        for (Template template : templates) {
            @Nullable Object[] values = template.values(sentence, this);
            if (values != null) {
                return Words.fill(template.words(), values);
            }
        }
        return sentence;
    }
}
