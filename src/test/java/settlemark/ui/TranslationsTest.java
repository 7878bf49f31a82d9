package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.source.tree.BinaryTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.ConditionalExpressionTree;
import com.sun.source.tree.ExpressionTree;
import com.sun.source.tree.LiteralTree;
import com.sun.source.tree.MethodInvocationTree;
import com.sun.source.tree.ParenthesizedTree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.TreeScanner;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import settlemark.job.JobPlan;
import settlemark.job.PlanStep;
import settlemark.job.Plans;
import settlemark.measure.Role;

/** No sentence of the window is without German, none is left over, and each carries the same values. */
class TranslationsTest {
    private static final Pattern PLACE = Pattern.compile("\\{\\d}");

    @AfterEach
    void english() {
        Words.speak(Language.ENGLISH);
    }

    @Test
    void everySentenceOfTheSourceIsTranslatedAndNoTranslationIsLeftOver() throws IOException {
        Map<String, String> source = sentences(Path.of("src/main/java/settlemark/ui"));
        Map<String, String> german = Translations.german().window();
        assertThat(source.size()).as("sentences in the source").isGreaterThan(500);
        Map<String, String> missing = new TreeMap<>(source);
        missing.keySet().removeAll(german.keySet());
        assertThat(missing).as("without German, and where").isEmpty();
        Set<String> unused = new TreeSet<>(german.keySet());
        unused.removeAll(source.keySet());
        assertThat(unused).as("German that nothing says").isEmpty();
    }

    @Test
    void everyTranslationCarriesTheSameValues() {
        Map<String, String> all = new HashMap<>(Translations.german().window());
        all.putAll(Translations.german().told());
        all.forEach((english, german) -> {
            assertThat(german).as(english).isNotEmpty();
            assertThat(places(german)).as(english).isEqualTo(places(english));
        });
    }

    private static List<String> places(String text) {
        return PLACE.matcher(text).results().map(r -> r.group()).sorted().toList();
    }

    /** Words.say and Words.key, and nothing else, make a sentence: their first argument must be written out. */
    private static Map<String, String> sentences(Path folder) throws IOException {
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        Map<String, String> found = new TreeMap<>();
        try (Stream<Path> paths = Files.walk(folder);
                StandardJavaFileManager files = compiler.getStandardFileManager(null, null, null)) {
            List<Path> sources =
                    paths.filter(p -> p.toString().endsWith(".java")).toList();
            JavacTask task = (JavacTask) compiler.getTask(
                    null, files, null, List.of("-proc:none"), null, files.getJavaFileObjectsFromPaths(sources));
            for (CompilationUnitTree unit : task.parse()) {
                new TreeScanner<Void, CompilationUnitTree>() {
                    @Override
                    public Void visitMethodInvocation(MethodInvocationTree call, CompilationUnitTree in) {
                        String method = call.getMethodSelect().toString();
                        if (method.equals("Words.say") || method.equals("Words.key")) {
                            for (String sentence : constants(call.getArguments().get(0))) {
                                found.put(sentence, in.getSourceFile().getName());
                            }
                        }
                        return super.visitMethodInvocation(call, in);
                    }
                }.scan(unit, unit);
            }
        }
        return found;
    }

    private static List<String> constants(ExpressionTree written) {
        if (written instanceof ConditionalExpressionTree choice) {
            List<String> both = new ArrayList<>(constants(choice.getTrueExpression()));
            both.addAll(constants(choice.getFalseExpression()));
            return both;
        }
        return List.of(constant(written));
    }

    private static String constant(ExpressionTree written) {
        if (written instanceof ParenthesizedTree inner) {
            return constant(inner.getExpression());
        }
        if (written instanceof LiteralTree literal && literal.getValue() instanceof String text) {
            return text;
        }
        if (written instanceof BinaryTree sum) {
            return constant(sum.getLeftOperand()) + constant(sum.getRightOperand());
        }
        throw new AssertionError("a sentence must be written out where it is said: " + written);
    }

    @Test
    void everyShippedPlanIsSaidInGerman() {
        for (String key : Plans.keys()) {
            JobPlan plan = Plans.get(key);
            Set<String> said = new TreeSet<>(List.of(plan.title(), plan.recordTitle()));
            for (PlanStep step : plan.steps()) {
                said.addAll(List.of(step.title(), step.name(), step.instruction(), step.press(), step.caution()));
                said.addAll(step.ticks());
                step.limits()
                        .forEach(l -> said.addAll(List.of(l.subject(), l.limit().source())));
            }
            assertThat(GermanWords.unknown(said)).as(key).isEmpty();
        }
        Set<String> roles = new TreeSet<>();
        Stream.of(Role.values()).forEach(r -> roles.add(r.word()));
        assertThat(GermanWords.unknown(roles)).isEmpty();
    }

    @Test
    void whatAnotherPartSaysIsKnownByWhatStandsBetweenItsValues() {
        Words.speak(Language.GERMAN);
        assertThat(Words.told("manifold has not settled: could still move 0.05, limit 0.02"))
                .isEqualTo("D\u00fcse ist nicht beruhigt: k\u00f6nnte noch 0.05 wandern, Grenze 0.02");
        assertThat(Words.told("The cap moved the manifold by +0.05 inH\u2082O, from 3.50 to 3.55."))
                .isEqualTo("Die Kappe bewegte den D\u00fcsendruck um +0.05 inH\u2082O, von 3.50 auf 3.55.");
        assertThat(Words.told("Meter behind the shed")).as("a person's words").isEqualTo("Meter behind the shed");
        assertThat(Words.say("{0}, key {1}", "{1}", "X"))
                .as("a value is not looked into")
                .isEqualTo("{1}, Taste X");
    }

    @Test
    void aSentenceWithoutGermanIsFoundOut() {
        assertThat(GermanWords.unknown(List.of("manifold has not settled: nobody translated this")))
                .singleElement()
                .asString()
                .startsWith("nobody translated this");
        assertThat(GermanWords.unknown(List.of("Nobody translated this"))).hasSize(1);
    }

    @Test
    void aQueryIsUnderstoodInGermanAndInEnglish() {
        Words.speak(Language.GERMAN);
        java.time.LocalDate today = java.time.LocalDate.of(2026, 11, 26);
        assertThat(SessionQuery.of("seit Mai", today).problem()).isEmpty();
        assertThat(SessionQuery.of("since May", today).problem()).isEmpty();
        assertThat(SessionQuery.of("seit gestern", today).problem()).contains("kommt ein Tag");
    }

    @Test
    void aKeptLanguageIsSpokenAgain() {
        Words.keep(Language.GERMAN);
        assertThat(Words.language()).isEqualTo(Language.GERMAN);
        assertThat(Words.next()).isEqualTo(Language.ENGLISH);
        assertThat(Words.say("Note")).isEqualTo("Notiz");
    }

    @Test
    void theLengthenedLanguageIsLongerAndTellsWhereItEnds() {
        Words.speak(Language.PSEUDO);
        String words = Words.say("could still move {0}", "0.01");
        assertThat(words).startsWith("[").endsWith("]").contains("0.01");
        assertThat((double) words.length()).isGreaterThan("could still move 0.01".length() * 1.4);
        assertThat(Words.told("[told before]")).isEqualTo("[told before]");
        assertThat(Words.told("3.49")).isEqualTo("3.49");
    }
}
