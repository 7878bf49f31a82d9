package settlemark;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaCodeUnitAccess;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import com.tngtech.archunit.lang.syntax.ArchRuleDefinition;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * The rules of the architecture, for the packages below one root, so that a second tree can prove that they bite.
 *
 * @param root such as {@code settlemark}
 */
record Architecture(String root) {
    static final Set<String> CORE =
            Set.of("measure", "document", "profile", "decode", "exchange", "settle", "calc", "job", "session");

    /** Which packages each package may import; the only place where this is written. */
    static final Map<String, Set<String>> MAY_IMPORT = table();

    /** Where the libraries that touch the outside may be used, besides in app, which wires them. */
    static final Map<String, String> OUTSIDE = Map.of(
            "java\\.sql\\..*|javax\\.sql\\..*|org\\.sqlite\\..*", "store",
            "com\\.fazecast\\..*|org\\.freedesktop\\.dbus\\..*|org\\.bluez\\..*", "link",
            "org\\.bouncycastle\\..*", "decode",
            "org\\.apache\\.pdfbox\\..*|de\\.rototor\\..*", "record",
            "javax\\.swing\\..*|com\\.formdev\\..*|net\\.miginfocom\\..*", "ui",
            "picocli\\..*", "cli");

    private static final Pattern OUTSIDE_OF_CORE = Pattern.compile("java\\.io\\.(File|RandomAccess|Console).*"
            + "|java\\.nio\\.file\\.(Files|FileSystem|FileSystems|WatchService)"
            + "|java\\.nio\\.channels\\..*"
            + "|java\\.net\\.(?!URI$|URISyntaxException$).*|javax\\.net\\..*"
            + "|java\\.lang\\.(Thread|Process|ProcessBuilder|Runtime)"
            + "|java\\.util\\.(Timer|TimerTask)"
            + "|java\\.util\\.concurrent\\.(Executor|Executors|ExecutorService|ForkJoin.*|Thread.*|Scheduled.*)"
            + "|java\\.time\\.(Clock|InstantSource)"
            + "|java\\.awt\\..*|javax\\.swing\\..*|java\\.sql\\..*|javax\\.sql\\..*"
            + "|java\\.util\\.prefs\\..*|java\\.lang\\.ref\\.Cleaner");

    /** Calls, as {@code Owner.method(ParameterTypes)}, that read a clock or take a default from the computer. */
    private static final Pattern AMBIENT = Pattern.compile("java\\.lang\\.System\\.(nanoTime|currentTimeMillis)\\(.*"
            + "|java\\.time\\.[A-Za-z.]+\\.now\\(.*"
            + "|java\\.util\\.Date\\.<init>\\(\\)"
            + "|java\\.util\\.(Gregorian)?Calendar\\.(getInstance|<init>)\\(.*"
            + "|java\\.util\\.Locale\\.getDefault\\(.*"
            + "|java\\.time\\.ZoneId\\.systemDefault\\(.*|java\\.util\\.TimeZone\\.getDefault\\(.*"
            + "|java\\.nio\\.charset\\.Charset\\.defaultCharset\\(.*"
            + "|java\\.lang\\.String\\.(format\\(java\\.lang\\.String, .*|formatted\\(.*)"
            + "|java\\.lang\\.String\\.(toLowerCase|toUpperCase|getBytes)\\(\\)"
            + "|java\\.lang\\.String\\.<init>\\(\\[B\\)"
            + "|java\\.io\\.(InputStreamReader|OutputStreamWriter|PrintStream|PrintWriter)\\.<init>\\("
            + "java\\.io\\.[A-Za-z]+Stream\\)"
            + "|java\\.text\\.DecimalFormat\\.<init>\\((java\\.lang\\.String)?\\)"
            + "|java\\.text\\.NumberFormat\\.get[A-Za-z]*Instance\\(\\)"
            + "|java\\.time\\.format\\.DateTimeFormatter\\.ofPattern\\(java\\.lang\\.String\\)"
            + "|java\\.util\\.Formatter\\.<init>\\(\\)"
            + "|java\\.lang\\.Math\\.random\\(.*");

    private static final Pattern MAKES_A_THREAD = Pattern.compile("java\\.lang\\.Thread\\.<init>\\(.*"
            + "|java\\.util\\.Timer\\.<init>\\(.*"
            + "|java\\.util\\.concurrent\\.Executors\\.new(?!.*ThreadFactory).*"
            + "|java\\.util\\.concurrent\\.ForkJoinPool\\..*"
            + "|java\\.util\\.concurrent\\.CompletableFuture\\.[a-z][A-Za-z]*Async\\((?!.*Executor).*"
            + "|javax\\.swing\\.SwingWorker\\..*");

    private static final Pattern EMPTY_NAME = Pattern.compile(".*(Manager|Helper|Utils?|Impl|Base|Dto)");

    ArchRule imports() {
        return all("import only what the table allows", (type, events) -> {
            String from = packageOf(type);
            if (!MAY_IMPORT.containsKey(from)) {
                violated(events, type, type.getName() + " is in package " + from + ", which is not in the table");
                return;
            }
            for (Dependency dependency : type.getDirectDependenciesFromSelf()) {
                JavaClass target = dependency.getTargetClass().getBaseComponentType();
                String to = packageOf(target);
                if (!to.isEmpty() && !to.equals(from) && !MAY_IMPORT.get(from).contains(to)) {
                    violated(events, type, from + " must not import " + to + ": " + dependency.getDescription());
                }
            }
        });
    }

    ArchRule coreIsPure() {
        return all("touch nothing outside where they are core", (type, events) -> {
            if (!CORE.contains(packageOf(type))) {
                return;
            }
            for (Dependency dependency : type.getDirectDependenciesFromSelf()) {
                String target =
                        dependency.getTargetClass().getBaseComponentType().getName();
                if (OUTSIDE_OF_CORE.matcher(target).matches()) {
                    violated(events, type, "core must not use " + target + ": " + dependency.getDescription());
                }
            }
            calls(type, AMBIENT, "core must take time, locale, zone and charset as arguments", events);
        });
    }

    ArchRule outsideLibrariesStayInOnePackage() {
        return all("use outside libraries in their own package only", (type, events) -> {
            String from = packageOf(type);
            for (Dependency dependency : type.getDirectDependenciesFromSelf()) {
                String target =
                        dependency.getTargetClass().getBaseComponentType().getName();
                OUTSIDE.forEach((library, home) -> {
                    if (!from.equals(home) && !from.equals("app") && target.matches(library)) {
                        violated(events, type, target + " belongs in " + home + ": " + dependency.getDescription());
                    }
                });
            }
        });
    }

    ArchRule onlyAppMakesThreads() {
        return all("make no thread outside app", (type, events) -> {
            if (!packageOf(type).equals("app")) {
                calls(type, MAKES_A_THREAD, "app makes the threads: take a ThreadFactory or an Executor", events);
            }
        });
    }

    ArchRule namesSaySomething() {
        return all("be named after what they are", (type, events) -> {
            if (EMPTY_NAME.matcher(type.getSimpleName()).matches()) {
                violated(events, type, type.getName() + " is named after nothing: use the trade's or the field's term");
            }
        });
    }

    private static void calls(JavaClass type, Pattern banned, String why, ConditionEvents events) {
        for (JavaCodeUnitAccess<?> call : type.getCodeUnitAccessesFromSelf()) {
            String parameters = call.getTarget().getRawParameterTypes().stream()
                    .map(JavaClass::getName)
                    .collect(Collectors.joining(", "));
            String name = call.getTargetOwner().getName() + "." + call.getName() + "(" + parameters + ")";
            if (banned.matcher(name).matches()) {
                violated(events, type, why + ": " + call.getDescription());
            }
        }
    }

    private ArchRule all(String description, Check check) {
        DescribedPredicate<JavaClass> ours = DescribedPredicate.describe(
                "below " + root, type -> !packageOf(type).isEmpty());
        return ArchRuleDefinition.classes().that(ours).should(new ArchCondition<JavaClass>(description) {
            @Override
            public void check(JavaClass type, ConditionEvents events) {
                check.check(type, events);
            }
        });
    }

    /** The first part of a package's name below the root; empty for what lies elsewhere or in the root itself. */
    private String packageOf(JavaClass type) {
        String name = type.getPackageName();
        if (!name.startsWith(root + ".")) {
            return "";
        }
        String below = name.substring(root.length() + 1);
        int dot = below.indexOf('.');
        return dot < 0 ? below : below.substring(0, dot);
    }

    private static void violated(ConditionEvents events, JavaClass type, String words) {
        events.add(SimpleConditionEvent.violated(type, words));
    }

    private static Map<String, Set<String>> table() {
        Map<String, Set<String>> table = new TreeMap<>();
        table.put("measure", Set.of());
        table.put("document", Set.of());
        table.put("profile", Set.of("measure", "document"));
        table.put("decode", Set.of("measure", "profile"));
        table.put("exchange", Set.of("measure", "profile", "decode"));
        table.put("settle", Set.of("measure"));
        table.put("calc", Set.of("measure"));
        table.put("job", Set.of("measure", "document", "settle", "calc"));
        table.put("session", without(CORE, "session", "exchange"));
        table.put("link", Set.of("measure", "profile", "exchange", "session"));
        table.put("rig", Set.of("measure", "profile", "decode", "exchange", "session"));
        // profile and decode only for what the ports carry: a header its profiles, a batch its refused frames
        table.put("store", Set.of("measure", "profile", "decode", "settle", "job", "session", "codec"));
        table.put("codec", Set.of("measure", "session"));
        table.put("chart", Set.of("measure", "settle", "session"));
        table.put("record", Set.of("measure", "settle", "calc", "job", "session", "chart", "document"));
        table.put("ui", with(without(CORE, "exchange"), "chart"));
        table.put("cli", with(without(CORE, "exchange"), "chart"));
        table.put("seal", Set.of("measure", "profile", "settle", "job", "session"));
        table.put("app", Set.copyOf(with(CORE, "link", "rig", "store", "chart", "record", "seal", "ui", "cli")));
        return table;
    }

    private static Set<String> with(Set<String> some, String... more) {
        Set<String> all = new HashSet<>(some);
        all.addAll(List.of(more));
        return all;
    }

    private static Set<String> without(Set<String> some, String... left) {
        Set<String> fewer = new HashSet<>(some);
        List.of(left).forEach(fewer::remove);
        return fewer;
    }

    @FunctionalInterface
    private interface Check {
        void check(JavaClass type, ConditionEvents events);
    }
}
