package settlemark;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** Holds the program to its architecture, and holds the rules to a tree that breaks them. */
final class ArchitectureTest {
    private static final Architecture OURS = new Architecture("settlemark");
    private static final Architecture BROKEN = new Architecture("settlemark.archproof");

    private static final JavaClasses PROGRAM = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .withImportOption(new ImportOption.DoNotIncludeJars())
            .importPackages("settlemark");

    @Test
    void everyPackageOfTheProgramIsInTheTable() {
        Set<String> packages = new TreeSet<>();
        PROGRAM.forEach(type -> packages.add(type.getPackageName().substring("settlemark.".length())));
        assertThat(packages).hasSizeGreaterThan(8).isSubsetOf(Architecture.MAY_IMPORT.keySet());
    }

    @Test
    void packagesImportOnlyWhatTheTableAllows() {
        OURS.imports().check(PROGRAM);
    }

    @Test
    void theCoreTouchesNothingOutside() {
        OURS.coreIsPure().check(PROGRAM);
    }

    @Test
    void outsideLibrariesStayInOnePackage() {
        OURS.outsideLibrariesStayInOnePackage().check(PROGRAM);
    }

    @Test
    void onlyAppMakesThreads() {
        OURS.onlyAppMakesThreads().check(PROGRAM);
    }

    @Test
    void namesSaySomething() {
        OURS.namesSaySomething().check(PROGRAM);
    }

    @Test
    void importsBite() {
        assertThat(violations(BROKEN.imports()))
                .anySatisfy(words -> assertThat(words).contains("measure must not import ui"))
                .anySatisfy(words -> assertThat(words).contains("package odd, which is not in the table"));
    }

    @Test
    void purityBites() {
        List<String> violations = violations(BROKEN.coreIsPure());
        for (String offence : List.of(
                "java.io.File",
                "java.io.FileInputStream",
                "java.nio.file.Files",
                "java.net.Socket",
                "java.lang.Thread",
                "java.util.concurrent.Executors",
                "System.nanoTime()",
                "System.currentTimeMillis()",
                "Instant.now()",
                "LocalDate.now()",
                "Locale.getDefault()",
                "ZoneId.systemDefault()",
                "String.format(",
                "String.toLowerCase()",
                "String.getBytes()",
                "javax.swing.JLabel",
                "java.sql.DriverManager")) {
            assertThat(violations)
                    .as(offence)
                    .anySatisfy(words -> assertThat(words).contains(offence).contains("Offender"));
        }
    }

    @Test
    void theOtherRulesBite() {
        assertThat(violations(BROKEN.outsideLibrariesStayInOnePackage()))
                .anySatisfy(words -> assertThat(words).contains("java.sql.DriverManager belongs in store"))
                .anySatisfy(words -> assertThat(words).contains("javax.swing.JLabel belongs in ui"));
        assertThat(violations(BROKEN.onlyAppMakesThreads()))
                .anySatisfy(words -> assertThat(words).contains("java.lang.Thread.<init>"))
                .anySatisfy(words -> assertThat(words).contains("Executors.newCachedThreadPool"));
        assertThat(violations(BROKEN.namesSaySomething()))
                .singleElement()
                .asString()
                .contains("ThingManager");
    }

    private static List<String> violations(ArchRule rule) {
        JavaClasses broken = new ClassFileImporter().importPackages("settlemark.archproof");
        return rule.evaluate(broken).getFailureReport().getDetails();
    }
}
