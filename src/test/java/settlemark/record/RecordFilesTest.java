package settlemark.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TimeZone;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.job.JobState;
import settlemark.job.SettingsChange;
import settlemark.job.StepState;
import settlemark.job.Verdict;
import settlemark.session.JobRecord;
import settlemark.session.RecordForm;
import settlemark.session.StoreException;
import settlemark.settle.ChannelReading;
import settlemark.settle.SettleAdjustment;
import settlemark.settle.SettleChoices;
import settlemark.settle.SettleKind;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class RecordFilesTest {
    private static final String HOSTILE = "\u0000=cmd|x\r\n\tZo\u00EB \u05E9\u05DC\u05D5\u05DD \u202E\u0645\u0631\u062D"
            + "\uD83D\uDE00\uD83C\uDFFD \uFB01n\u2002\u2028 \uD800 \u03A9 \u0416 ";

    @TempDir
    private Path folder;

    private List<Path> write(JobRecord record) throws IOException, StoreException {
        return new RecordFiles().write(record, AshLane.samples(), folder);
    }

    private Path pdf(AshLane job) throws IOException, StoreException {
        return write(job.record()).get(0);
    }

    @Test
    void theFourFilesBearTheSessionsKeyAndNothingElseIsLeft() throws Exception {
        List<Path> files = write(AshLane.job().record());
        assertThat(files)
                .containsExactly(
                        folder.resolve("2026-11-25-1002-ash-lane.pdf"),
                        folder.resolve("2026-11-25-1002-ash-lane.json"),
                        folder.resolve("2026-11-25-1002-ash-lane-readings.csv"),
                        folder.resolve("2026-11-25-1002-ash-lane-samples.csv"));
        try (Stream<Path> all = Files.list(folder)) {
            assertThat(all).containsExactlyInAnyOrderElementsOf(files);
        }
    }

    @Test
    void everyValueStandsOnThePagesWithItsUncertaintyAndItsLimit() throws Exception {
        JobRecord record = AshLane.job().record();
        String front = Pages.texts(write(record).get(0)).get(0);
        StageColumns columns = new StageColumns(record.job());
        for (StepState step : columns.steps()) {
            for (ChannelReading c : StageColumns.reading(step).orElseThrow().channels()) {
                int decimals = columns.decimals(c.role());
                assertThat(front)
                        .contains(Figures.value(c.value(), decimals) + " "
                                + Figures.uncertainty(c.expandedUncertainty(), decimals));
            }
            for (Verdict v : step.verdicts()) {
                assertThat(front)
                        .contains(
                                Figures.limit(v.limit()),
                                v.limit().source(),
                                v.outcome().word());
            }
        }
        // As read by a person: the job's figures, by hand.
        assertThat(front)
                .contains("7.80", "6.97", "1.51", "3.12", "3.49", "104.8", "121.4", "71.0")
                .contains("34.2", "47.2", "36.2", "50.4", "\u00B10.02", "\u00B10.5", "\u00B10.3", "\u00B10.6")
                .contains("4.5 to 10.5", "1.5 to 1.9", "3.15 to 3.85", "30 to 60", "at most 0.05")
                .contains("inside", "close, inside", "outside", "limit: plate", "common practice")
                .contains("inH\u2082O", "\u00B0F", "56\u00A0000 / 80\u00A0000 Btu/h".replace('\u00A0', ' '));
    }

    @Test
    void whatWasOutOfTheOrdinaryStandsOnTheFirstPage() throws Exception {
        String front = Pages.texts(pdf(AshLane.job().skipping("shut"))).get(0);
        assertThat(front)
                .contains("As left: every reading inside its limit")
                .contains("As found, outside: manifold at high fire.")
                .contains("Valve shut: skipped, no access today")
                .contains("taken by hand, supply still creeping, customer waits (not settled: supply)")
                .contains("not ticked, All other appliances relit and working")
                .contains(
                        "Blower doors on, filter in; Bypass and dampers as in use; Room doors and windows closed, 10:16,"
                                + " 10:29")
                .contains("putting the cap on moved the manifold by \u22120.04 inH\u2082O")
                .contains("inlet +0.012 inH\u2082O, manifold \u22120.004 inH\u2082O")
                .contains("inlet zero drift 0.00 \u00B10.02 inH\u2082O, limit \u22120.05 to 0.05 inH\u2082O")
                .contains("Filter was dusty; customer told.")
                .contains("Work on gas is for a licensed or registered person");
    }

    @Test
    void theSecondPageSaysHowItWasMeasuredAndDecidedAndWhatItDoesNotCover() throws Exception {
        String back = Pages.texts(pdf(AshLane.job())).get(1).replaceAll("\\s+", " ");
        assertThat(back)
                .contains("As left, high fire", "10:53:40", "rise 50.4", "cap on", "adjusted 3.53", "gap 38 s")
                .contains("manifold: moved 0.004 in the last 40 s, could still move 0.013, limit 0.02")
                .contains("SHA-256 3f7a9c0d1e2b", "32 410 samples, 3 frames refused", "link lost 1 time")
                .contains("no more than 0.02 inH\u2082O within the next 30 s")
                .contains("no more than 0.5 \u00B0F within the next 180 s")
                .contains("JCGM 106:2012", "k = 2", "plate for inlet, manifold, rise")
                .contains("It authorises nothing", "no combustion analysis", "no let-by test")
                .contains("R. Invented", "Signature and date");
    }

    @Test
    void simulatedStandsOnEveryPageOnEveryChartAndInTheFilesProperties() throws Exception {
        Path pdf = pdf(AshLane.job().manyEvents(60));
        List<String> pages = Pages.texts(pdf);
        assertThat(pages).allSatisfy(p -> assertThat(p).contains("SIMULATED"));
        assertThat(pages.get(1).split("SIMULATED", -1)).hasSizeGreaterThan(8);
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            assertThat(document.getDocumentInformation().getTitle()).startsWith("SIMULATED");
            assertThat(document.getDocumentInformation().getSubject()).contains("SIMULATED");
        }
    }

    @Test
    void whatIsRealNeverSaysSimulated() throws Exception {
        List<Path> files = write(AshLane.job().real().record());
        assertThat(Pages.text(files.get(0))).doesNotContainIgnoringCase("simulated");
        for (Path csv : files.subList(1, 3)) {
            assertThat(Files.readString(csv)).doesNotContain("SIMULATED").contains("measured");
        }
    }

    @Test
    void theSameRecordGivesTheSameBytesWhateverTheDefaultsOfTheMachine() throws Exception {
        List<Path> first = write(AshLane.job().record());
        List<byte[]> before = first.stream().map(RecordFilesTest::bytes).toList();
        Locale locale = Locale.getDefault();
        TimeZone zone = TimeZone.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("ar-EG"));
            TimeZone.setDefault(TimeZone.getTimeZone("Asia/Kolkata"));
            List<Path> again = write(AshLane.job().record());
            for (int i = 0; i < 3; i++) {
                assertThat(bytes(again.get(i))).as(again.get(i).toString()).isEqualTo(before.get(i));
            }
        } finally {
            Locale.setDefault(locale);
            TimeZone.setDefault(zone);
        }
        assertThat(bytes(write(AshLane.job().note("another").record()).get(0))).isNotEqualTo(before.get(0));
    }

    private static byte[] bytes(Path file) {
        try {
            return Files.readAllBytes(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Test
    void datesAndIdentityComeFromTheRecordAlone() throws Exception {
        try (PDDocument document = Loader.loadPDF(pdf(AshLane.job()).toFile())) {
            assertThat(document.getDocumentInformation().getCreationDate().toInstant())
                    .isEqualTo(Instant.parse("2026-11-25T15:02:00Z"));
            assertThat(document.getDocument().getDocumentID()).isNotNull();
        }
    }

    @Test
    void noNameBreaksThePagesAndWhatCanBePrintedIs() throws Exception {
        Path pdf = pdf(AshLane.job()
                .title(HOSTILE + "title" + "x".repeat(500))
                .person(HOSTILE + "person")
                .note(HOSTILE.repeat(20)));
        String text = Pages.text(pdf);
        assertThat(text).contains("=cmd|x", "Zo\u00EB", "\u03A9", "\u0416", "fin", Printable.MISSING);
        assertThat(text).contains("stands for a character that its typeface does not have");
        noOverlap(pdf);
    }

    @Test
    void twoPagesAreEnoughForAnOrdinaryJobAndAThirdTakesWhatIsTooMuch() throws Exception {
        assertThat(Pages.texts(pdf(AshLane.job()))).hasSize(2);
        RecordFiles sealed = new RecordFiles("3f7a 9c0d 1e2b 5a6c 7d8e 9f01 2b3c 4d5e", RecordForm.DEFAULT);
        Path sealing = Files.createDirectory(folder.resolve("sealed"));
        assertThat(Pages.texts(sealed.write(AshLane.job().record(), AshLane.samples(), sealing)
                        .get(0)))
                .hasSize(2);
        List<String> pages =
                Pages.texts(pdf(AshLane.job().note("word ".repeat(600)).manyEvents(20)));
        assertThat(pages).hasSize(3);
        assertThat(pages.get(2)).contains("page 3 of 3", "Signature and date", "and 9 more, in the session");
    }

    @Test
    void noTextCoversAnotherOrLeavesThePage() throws Exception {
        noOverlap(pdf(AshLane.job()));
        noOverlap(pdf(
                AshLane.job().skipping("left-high").note("word ".repeat(400)).manyEvents(30)));
    }

    private static void noOverlap(Path pdf) {
        int checked = 0;
        for (List<Pages.Run> page : Pages.runs(pdf)) {
            for (int i = 0; i < page.size(); i++) {
                Pages.Run a = page.get(i);
                assertThat(a.box().getX()).as(a.text()).isGreaterThan(30);
                assertThat(a.box().getMaxX()).as(a.text()).isLessThan(Sheet.WIDTH - 30);
                assertThat(a.box().getMaxY()).as(a.text()).isLessThan(RecordForm.Paper.A4.heightPoints() - 20);
                for (int k = i + 1; k < page.size(); k++) {
                    Pages.Run b = page.get(k);
                    Rectangle2D common = a.box().createIntersection(b.box());
                    boolean covered = common.getWidth() > 0.4 && common.getHeight() > 0.4;
                    assertThat(covered)
                            .as("\"%s\" over \"%s\" at %s", a.text(), b.text(), common)
                            .isFalse();
                    checked++;
                }
            }
        }
        assertThat(checked).isGreaterThan(10_000);
    }

    @Test
    void onlyTheTwoCutsOfTheTypefaceAreUsedAndBothAreEmbedded() throws Exception {
        try (PDDocument document = Loader.loadPDF(pdf(AshLane.job()).toFile())) {
            for (PDPage page : document.getPages()) {
                for (COSName name : page.getResources().getFontNames()) {
                    PDFont font = page.getResources().getFont(name);
                    assertThat(font.isEmbedded()).isTrue();
                    assertThat(font.getName()).matches("[A-Z]{6}\\+Inter-(Regular|SemiBold)");
                }
                assertThat(page.getResources().getFontNames()).isNotEmpty();
            }
        }
    }

    @Test
    void aPageStaysUnderAMegabyte() throws Exception {
        Path pdf = pdf(AshLane.job());
        assertThat(Files.size(pdf)).isLessThan(Pages.texts(pdf).size() * 1_000_000L);
    }

    @Test
    void whenTheSamplesCannotBeReadNoFileAppearsAndTheOldOnesStay() throws Exception {
        List<Path> old = write(AshLane.job().record());
        List<byte[]> before = old.stream().map(RecordFilesTest::bytes).toList();
        assertThatThrownBy(() -> new RecordFiles()
                        .write(
                                AshLane.job().note("newer").record(),
                                (probe, channel) -> {
                                    if (channel > 0) {
                                        throw new StoreException(StoreException.Cause.DAMAGED, "block 7 is damaged");
                                    }
                                    return AshLane.samples().samples(probe, channel);
                                },
                                folder))
                .isInstanceOf(StoreException.class)
                .hasMessageContaining("block 7");
        for (int i = 0; i < 3; i++) {
            assertThat(bytes(old.get(i))).isEqualTo(before.get(i));
        }
        try (Stream<Path> all = Files.list(folder)) {
            assertThat(all).hasSize(4);
        }
    }

    @Test
    void theHeadlineNeverSaysInsideWhereSomethingIsMissingOrOutside() throws Exception {
        assertThat(Pages.text(pdf(AshLane.job().skipping("left-high"))))
                .contains("As left: not every stage was read", "Not complete: As left, high fire")
                .doesNotContain("every reading inside its limit");
    }

    @Test
    void otherSettingsOfSettledAreSaidWithTimePersonAndWhatTheyWere() throws Exception {
        JobRecord day = AshLane.job().record();
        SettleChoices tighter = new SettleChoices(
                Map.of(SettleKind.GAS, new SettleAdjustment(0.01, Double.NaN, 60, List.of(), Double.NaN, Double.NaN)));
        JobState job = day.job();
        JobState changed = new JobState(
                job.plan(),
                job.plate(),
                job.steps(),
                job.current(),
                job.zeroOffsets(),
                job.person(),
                job.notes(),
                job.notices(),
                job.instruments(),
                job.visits(),
                List.of(new SettingsChange(1200 * AshLane.SECOND, SettleChoices.NONE, tighter, "R. Invented")));
        JobRecord record = new JobRecord(day.header(), changed, day.windows(), day.instruments(), day.events());
        assertThat(Pages.texts(write(record).get(0)).get(1).replaceAll("\\s+", " "))
                .contains(
                        "Changed at 10:22:00 by R. Invented: gas pressure, drift limit 0.01 inH\u2082O instead of 0.02"
                                + " inH\u2082O; gas pressure, look ahead 60 s instead of 30 s.");
        JsonNode told =
                JsonMapper.shared().readTree(new RecordJson(record).text()).path("settings_changed");
        assertThat(told).hasSize(2);
        assertThat(told.get(0).path("person").asString()).isEqualTo("R. Invented");
        assertThat(told.get(1).path("change").asString()).isEqualTo("gas pressure, look ahead 60 s instead of 30 s");
        assertThat(told.get(1).path("time").asString()).startsWith("2026-11-25T10:22:00");
        assertThat(new RecordJson(day).text()).doesNotContain("settings_changed");
    }

    @Test
    void aRecordOfARereadingSaysSoAtItsHead() throws Exception {
        JobRecord day = AshLane.job().record();
        // In summer: the date is told in the offset of that day, not of the session's.
        JobRecord.Again again = new JobRecord.Again(
                2,
                Instant.parse("2027-07-01T12:05:00Z"),
                List.of(new JobRecord.Instead("gauge", "better-gauge", "0123456789abcdef", "fedcba9876543210")));
        JobRecord record = new JobRecord(
                day.header(), day.job(), day.windows(), day.instruments(), day.events(), Optional.of(again));
        String front = Pages.texts(write(record).get(0)).get(0).replaceAll("\\s+", " ");
        assertThat(front)
                .contains("Decoded again", "decoded again on 1 July 2027, 08:05 (rereading 2)")
                .contains("gauge with profile better-gauge (SHA-256 0123456789ab\u2026)")
                .contains("instead of the one of the day (SHA-256 fedcba987654\u2026)")
                .contains("The readings of the day stay stored as they were.");
        assertThat(StageTable.text(record)).contains("decoded again on 1 July 2027, 08:05 (rereading 2)");
        assertThat(Pages.text(write(day).get(0))).doesNotContain("Decoded again");
        JobRecord.Again same = new JobRecord.Again(3, Instant.parse("2027-07-01T12:05:00Z"), List.of());
        assertThat(AgainWords.of(new JobRecord(
                        day.header(), day.job(), day.windows(), day.instruments(), day.events(), Optional.of(same))))
                .singleElement()
                .asString()
                .contains("with the profiles of the day");
    }
}
