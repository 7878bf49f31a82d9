package settlemark.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import settlemark.job.StepState;
import settlemark.job.Verdict;
import settlemark.measure.Conversion;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.session.JobRecord;
import settlemark.session.RecordForm;
import settlemark.session.RecordForm.Paper;
import settlemark.session.RecordForm.Units;
import settlemark.settle.ChannelReading;

/** Paper, units and structure of the pages. */
final class RecordFormTest {
    @TempDir
    private Path folder = Path.of("");

    private List<Path> write(JobRecord record, Paper paper, Units units) throws Exception {
        return new RecordFiles("", new RecordForm(paper, units)).write(record, AshLane.samples(), folder);
    }

    private static byte[] bytes(Path file) throws IOException {
        return Files.readAllBytes(file);
    }

    @Test
    void thePaperIsTheOneThatWasChosenAndNothingLeavesIt() throws Exception {
        for (Paper paper : Paper.values()) {
            Path pdf = write(AshLane.job().record(), paper, Units.JOB).get(0);
            try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
                document.getPages().forEach(page -> {
                    assertThat((double) page.getMediaBox().getWidth()).isCloseTo(paper.widthPoints(), within(0.01));
                    assertThat((double) page.getMediaBox().getHeight()).isCloseTo(paper.heightPoints(), within(0.01));
                });
            }
            for (List<Pages.Run> page : Pages.runs(pdf)) {
                assertThat(page).isNotEmpty().allSatisfy(run -> {
                    assertThat(run.box().getMinX()).isGreaterThan(30);
                    assertThat(run.box().getMaxX()).isLessThan(paper.widthPoints() - 30);
                    assertThat(run.box().getMaxY()).isLessThan(paper.heightPoints() - 20);
                });
            }
        }
    }

    @ParameterizedTest
    @EnumSource(Units.class)
    void everyNumberCanBeReadFromThePagesAgain(Units units) throws Exception {
        for (Paper paper : Paper.values()) {
            JobRecord shown = InUnits.of(AshLane.job().record(), units);
            String text = Pages.text(write(AshLane.job().record(), paper, units).get(0));
            StageColumns columns = new StageColumns(shown.job());
            int read = 0;
            for (StepState step : columns.steps()) {
                for (ChannelReading c : StageColumns.reading(step).orElseThrow().channels()) {
                    int decimals = columns.decimals(c.role());
                    assertThat(text)
                            .contains(Figures.value(c.value(), decimals) + " "
                                    + Figures.uncertainty(c.expandedUncertainty(), decimals))
                            .contains(c.unit().symbol());
                    read++;
                }
                for (Verdict v : step.verdicts()) {
                    assertThat(text)
                            .contains(Figures.limit(v.limit()), v.limit().source());
                    read++;
                }
            }
            assertThat(read).isGreaterThan(20);
        }
    }

    @Test
    void aRiseIsConvertedWithoutTheScalesOffset() {
        JobRecord us = AshLane.job().record();
        JobRecord si = InUnits.of(us, Units.SI);
        int compared = 0;
        for (int i = 0; i < us.job().steps().size(); i++) {
            StepState before = us.job().steps().get(i);
            StepState after = si.job().steps().get(i);
            for (int v = 0; v < before.verdicts().size(); v++) {
                Verdict was = before.verdicts().get(v);
                Verdict is = after.verdicts().get(v);
                assertThat(is.outcome()).isEqualTo(was.outcome());
                if (was.subject().equals("rise")) {
                    // 1 degF of difference is 5/9 K: BIPM, The International System of Units, 9th edition, 2.3.1 with
                    // the definition of the Fahrenheit scale, NIST SP 811, B.8.
                    assertThat(is.value()).isCloseTo(was.value() * 5 / 9, within(1e-12));
                    assertThat(is.limit().lower()).isCloseTo(was.limit().lower() * 5 / 9, within(1e-12));
                    assertThat(is.limit().unit().symbol()).isEqualTo("K");
                    compared++;
                }
            }
        }
        assertThat(compared).isEqualTo(4);
        ChannelReading supply = si.job().steps().stream()
                .flatMap(s -> s.readings().stream())
                .flatMap(r -> r.channel(Role.SUPPLY).stream())
                .reduce((a, b) -> b)
                .orElseThrow();
        // 121.4 degF is (121.4 - 32) 5/9 = 49.667 degC (NIST SP 811, B.8).
        assertThat(supply.value()).isCloseTo(49.667, within(0.03));
    }

    @Test
    void sentencesAreConvertedToo() {
        assertThat(SaidUnits.in("The cap moved the manifold by +0.03 inH\u2082O, from 1.67 to 1.71.", u -> Unit.PASCAL))
                // 249.08891 Pa an inch (NIST SP 811, B.8)
                .isEqualTo("The cap moved the manifold by +7.5 Pa, from 416 to 426.");
        assertThat(SaidUnits.in("moves the gauge by about 0.8 inH2O: 1 degF", u -> Unit.PASCAL))
                .isEqualTo("moves the gauge by about 200 Pa: 1 \u00B0F");
        assertThat(SaidUnits.in("0.15 inH2O from low to high stage, U = 0.07 inH2O", u -> Unit.PASCAL))
                .isEqualTo("37 Pa from low to high stage, U = 17 Pa");
        assertThat(SaidUnits.in("sags by 1.39 inH2O; 1.07 to 1.58 inH2O if shared", u -> Unit.PASCAL))
                .isEqualTo("sags by 346 Pa; 267 Pa to 394 Pa if shared");
        String typed = "typed, from gauge 7; within 0.02 inH\u2082O";
        assertThat(SaidUnits.reason(typed, Unit.INCH_OF_WATER.to(Unit.PASCAL)))
                .as("as the person typed it")
                .isEqualTo(typed);
        assertThat(SaidUnits.in("it fell by 0.10 inH\u2082O within 0.1 s", u -> u))
                .isEqualTo("it fell by 0.10 inH\u2082O within 0.1 s");
        Conversion toKelvin = Unit.FAHRENHEIT.to(Unit.CELSIUS);
        assertThat(SaidUnits.reason("settled: moved 0.18 in the last 59 s, could still move 0.45, limit 0.5", toKelvin))
                .isEqualTo("settled: moved 0.1 in the last 59 s, could still move 0.25, limit 0.278");
    }

    @Test
    void theSameChoicesGiveTheSameBytesAndLeaveTheFilesForMachinesAlone() throws Exception {
        List<Path> first = write(AshLane.job().record(), Paper.LETTER, Units.SI);
        byte[] pdf = bytes(first.get(0));
        byte[] json = bytes(first.get(1));
        byte[] readings = bytes(first.get(2));
        assertThat(bytes(write(AshLane.job().record(), Paper.LETTER, Units.SI).get(0)))
                .isEqualTo(pdf);
        List<Path> other = write(AshLane.job().record(), Paper.A4, Units.US);
        assertThat(bytes(other.get(0))).isNotEqualTo(pdf);
        assertThat(bytes(other.get(1))).isEqualTo(json);
        assertThat(bytes(other.get(2))).isEqualTo(readings);
    }

    @Test
    void aReaderThatSpeaksFindsHeadingsTableHeadsAndATextForEveryFigure() throws Exception {
        Path pdf = write(AshLane.job().record(), Paper.A4, Units.JOB).get(0);
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            assertThat(document.getDocumentCatalog().getMarkInfo().isMarked()).isTrue();
            assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo("en");
            assertThat(document.getDocumentCatalog().getViewerPreferences().displayDocTitle())
                    .isTrue();
            List<PDStructureElement> all = new ArrayList<>();
            gather(document.getDocumentCatalog().getStructureTreeRoot(), all);
            List<String> types =
                    all.stream().map(PDStructureElement::getStructureType).toList();
            assertThat(types).contains("H1", "H2", "H3", "P", "Table", "TR", "TH", "TD", "Figure");
            assertThat(types.indexOf("H1")).isLessThan(types.indexOf("H2"));
            assertThat(all)
                    .filteredOn(e -> e.getStructureType().equals("Figure"))
                    .hasSizeGreaterThan(10)
                    .allSatisfy(e -> assertThat(e.getAlternateDescription()).isNotBlank());
            assertThat(all)
                    .filteredOn(e -> e.getStructureType().equals("TH"))
                    .allSatisfy(e -> assertThat(e.getAttributes().size()).isEqualTo(1));
        }
    }

    private static void gather(PDStructureNode node, List<PDStructureElement> all) {
        for (Object kid : node.getKids()) {
            if (kid instanceof PDStructureElement element) {
                all.add(element);
                gather(element, all);
            }
        }
    }
}
