package settlemark.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;
import settlemark.session.JobRecord;
import settlemark.session.RecordForm;

/** The record's PDF by PDF/UA-1 (ISO 14289-1), as far as a program can tell: the rules of veraPDF, which is not ours. */
final class PdfUaTest {
    private static final String HOSTILE =
            "=1+2 <b>&\u0001 \u05E9\u05DC\u05D5\u05DD \u202E\u0645\u0631\u062D \uD83D\uDE00";

    @TempDir
    private Path folder = Path.of("");

    @BeforeAll
    static void initialise() {
        VeraGreenfieldFoundryProvider.initialise();
    }

    private Path pdf(JobRecord record, RecordForm form) throws Exception {
        return new RecordFiles("3f7a 9c0d", form)
                .write(record, AshLane.samples(), folder)
                .get(0);
    }

    private static ValidationResult checked(Path pdf) throws Exception {
        try (PDFAParser parser = Foundries.defaultInstance().createParser(pdf.toFile(), PDFAFlavour.PDFUA_1);
                PDFAValidator validator = Foundries.defaultInstance().createValidator(PDFAFlavour.PDFUA_1, false)) {
            return validator.validate(parser);
        }
    }

    private static Set<String> broken(ValidationResult result) {
        Set<String> rules = new TreeSet<>();
        for (TestAssertion assertion : result.getTestAssertions()) {
            if (assertion.getStatus() == TestAssertion.Status.FAILED) {
                rules.add(assertion.getRuleId().getClause() + " " + assertion.getMessage());
            }
        }
        return rules;
    }

    @Test
    @Tag("long")
    void everyFormOfTheRecordHoldsToPdfUa() throws Exception {
        for (RecordForm.Paper paper : RecordForm.Paper.values()) {
            for (RecordForm.Units units : RecordForm.Units.values()) {
                ValidationResult result = checked(pdf(AshLane.job().record(), new RecordForm(paper, units)));
                assertThat(broken(result)).as("%s, %s", paper, units).isEmpty();
                assertThat(result.isCompliant()).isTrue();
                assertThat(result.getTotalAssertions()).isGreaterThan(5_000);
            }
        }
        JobRecord hostile = AshLane.job()
                .title(HOSTILE)
                .person(HOSTILE)
                .note(HOSTILE.repeat(30))
                .record();
        assertThat(broken(checked(pdf(hostile, RecordForm.DEFAULT)))).isEmpty();
    }

    @Test
    @Tag("long")
    void whatIsTakenOutIsMissed() throws Exception {
        Path whole = pdf(AshLane.job().record(), RecordForm.DEFAULT);
        Path without = folder.resolve("without.pdf");
        try (PDDocument document = Loader.loadPDF(whole.toFile())) {
            document.getDocumentCatalog().setMetadata(null);
            document.getDocumentCatalog().setLanguage(null);
            document.save(without.toFile());
        }
        assertThat(broken(checked(without))).anyMatch(r -> r.contains("Metadata"));
    }

    @Test
    void thePdfSaysWhatItIsAsXmpToo() throws Exception {
        try (PDDocument document =
                Loader.loadPDF(pdf(AshLane.job().title("A <b> & B").record(), RecordForm.DEFAULT)
                        .toFile())) {
            String xmp = new String(
                    document.getDocumentCatalog().getMetadata().toByteArray(), java.nio.charset.StandardCharsets.UTF_8);
            assertThat(xmp)
                    .contains(
                            "<pdfuaid:part>1</pdfuaid:part>", "SIMULATED: A &lt;b&gt; &amp; B", "2026-11-25T15:02:00Z")
                    .contains("R. Invented");
        }
    }
}
