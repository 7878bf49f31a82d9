package settlemark.record;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import settlemark.job.JobPicture;
import settlemark.job.Limit;
import settlemark.job.RatingPlate;
import settlemark.job.ShownRange;
import settlemark.job.Site;
import settlemark.job.StagePlate;
import settlemark.job.VisitTrend;
import settlemark.measure.Unit;
import settlemark.session.JobRecord;

/** The first page: the verdict at a glance, the plate, the stage table, and everything that was out of the ordinary. */
final class FrontPage {
    private static final Unit BTU = Unit.ucum("[Btu_IT]/h");
    private static final Unit KILOWATT = Unit.ucum("kW");
    private static final double METRES_PER_FOOT = 0.3048;

    private final JobRecord record;
    private final Times times;
    private final Wording wording;
    private final StageColumns columns;
    private final Flow flow;
    private final boolean si;

    FrontPage(JobRecord record, Flow flow, boolean si) {
        this.si = si;
        this.record = record;
        this.times = new Times(record.header());
        this.wording = new Wording(record.job(), times);
        this.columns = new StageColumns(record.job());
        this.flow = flow;
    }

    void write() throws IOException {
        flow.page();
        flow.structure().in("P", this::place);
        verdict();
        again();
        flow.structure().in("P", this::plate);
        new TablePainter(record, columns, flow).write();
        flow.labelled("Other checks", Wording.checks(record.job(), columns));
        flow.labelled("Meter clocked", ClockWords.of(record.job(), si));
        flow.labelled("Flue gas and static pressure", FlueWords.of(record.job()));
        flow.labelled("Supply", new SupplyDrops(record.job()).lines(), Face.SMALL, Sheet.THEME.ink());
        flow.labelled("The picture", picture(), Face.SMALL, Sheet.THEME.ink());
        flow.labelled("Visits", VisitTrend.of(record.job()), Face.SMALL, Sheet.THEME.ink());
        flow.labelled("Zero, ports open", wording.zeros());
        flow.labelled("Safety notices", wording.safety());
        flow.labelled("Findings", wording.remarks());
        flow.labelled("Deviations", orNone(wording.deviations()));
        flow.labelled("Ticked", wording.ticked());
        flow.labelled("Notes", notes());
        flow.labelled("Cautions", wording.cautions(), Face.SMALL, Sheet.THEME.ink2());
    }

    private List<String> picture() {
        return si
                ? JobPicture.of(record.job(), KILOWATT).stream()
                        .map(InUnits::siSentence)
                        .toList()
                : JobPicture.of(record.job()).stream().map(SaidUnits::printed).toList();
    }

    /** The job's own, then those that were put beside the session. */
    private List<String> notes() {
        List<String> notes = new ArrayList<>(wording.notes());
        record.beside()
                .notes()
                .forEach(n -> notes.add(times.dayAndMinute(n.writtenAt()) + " (beside the session): " + n.text()));
        return notes;
    }

    private static List<String> orNone(List<String> lines) {
        return lines.isEmpty() ? List.of("none") : lines;
    }

    private void place() {
        Sheet sheet = flow.sheet();
        long end = record.job().steps().stream()
                .mapToLong(s -> s.doneNanos())
                .max()
                .orElse(0);
        String when = times.day() + ", " + times.minute(0) + " to " + times.minute(Math.max(0, end)) + " ("
                + times.offsetWords() + ")";
        sheet.right(when, Flow.RIGHT, flow.y(), Face.BODY, Sheet.THEME.ink2());
        double room = Flow.WIDTH - Face.BODY.width(when) - 16;
        Face face = Face.NAME.fitting(record.header().title(), room);
        sheet.text(face.cut(record.header().title(), room), Flow.LEFT, flow.y(), face);
        flow.down(11);
        String person = record.job().person();
        String work = "Plan: " + record.job().plan().title() + (person.isBlank() ? "" : ". Readings by " + person);
        sheet.text(Face.BODY.cut(work, Flow.WIDTH), Flow.LEFT, flow.y(), Face.BODY, Sheet.THEME.ink2());
        flow.down(10);
    }

    private void verdict() throws IOException {
        flow.rule();
        flow.down(11);
        Sheet sheet = flow.sheet();
        sheet.mark(wording.headMark(), Flow.LEFT, flow.y() - 14, 21);
        double x = Flow.LEFT + 30;
        Face head = Face.VERDICT.fitting(wording.headline(), Flow.RIGHT - x);
        flow.structure().in("H2", () -> sheet.text(head.cut(wording.headline(), Flow.RIGHT - x), x, flow.y(), head));
        flow.down(13);
        flow.structure().begin("P");
        for (String line : Face.BODY.wrap(wording.underHeadline(), Flow.RIGHT - x)) {
            flow.sheet().text(line, x, flow.y(), Face.BODY, Sheet.THEME.ink2());
            flow.down(Face.BODY.lineHeight());
        }
        flow.structure().end();
        flow.down(2);
        flow.rule();
    }

    private void again() throws IOException {
        List<String> words = AgainWords.of(record);
        if (!words.isEmpty()) {
            flow.labelled("Decoded again", words);
            flow.rule();
        }
    }

    private void plate() {
        RatingPlate plate = record.job().plate();
        List<String[]> cells = new ArrayList<>();
        String stages = plate.stages().stream().map(StagePlate::name).collect(Collectors.joining(" / "));
        cells.add(new String[] {"Plate", plate.appliance()});
        cells.add(new String[] {"Fuel", plate.fuel().words()});
        cells.add(new String[] {"Input, " + stages, input(plate)});
        cells.add(new String[] {"Manifold, " + stages, manifold(plate)});
        cells.add(new String[] {"Inlet (" + plate.inlet().source() + ")", range(plate.inlet())});
        cells.add(
                plate.rise().isOpen()
                        ? new String[] {"Rise", "not asked"}
                        : new String[] {"Rise (" + plate.rise().source() + ")", range(plate.rise())});
        if (!plate.control().isOpen()) {
            cells.add(new String[] {"Gas control's own inlet, most", range(plate.control())});
        }
        if (plate.site().known()) {
            cells.add(new String[] {"Altitude", site(plate)});
        }
        double width = Flow.WIDTH / 3;
        for (int i = 0; i < cells.size(); i++) {
            double x = Flow.LEFT + i % 3 * width;
            double y = flow.y() + i / 3 * 26.0;
            double room = width - 10;
            Face small = Face.SMALL.fitting(cells.get(i)[0], room);
            Face name = Face.NAME.fitting(cells.get(i)[1], room);
            flow.sheet().text(small.cut(cells.get(i)[0], room), x, y, small, Sheet.THEME.ink2());
            flow.sheet().text(name.cut(cells.get(i)[1], room), x, y + 11.5, name);
        }
        flow.down(43 + (cells.size() - 1) / 3 * 26.0 - 26);
        flow.rule();
    }

    /** How high, and what is left of the rated input; who says so stands with the input's limit. */
    private String site(RatingPlate plate) {
        double feet = plate.site().altitudeFeet();
        String high = si ? Figures.whole(feet * METRES_PER_FOOT) + " m" : Figures.whole(feet) + " ft";
        return plate.site().derating() == Site.Derating.NONE
                ? high + ", no derating"
                : high + ", input \u00D7 "
                        + Figures.plain(
                                ShownRange.of(plate.site().share(), plate.site().share())
                                        .lower());
    }

    private String input(RatingPlate plate) {
        boolean known = plate.stages().stream().allMatch(s -> s.inputBtuPerHour() > 0);
        return known
                ? plate.stages().stream()
                                .map(s -> si
                                        ? Figures.value(BTU.to(KILOWATT).apply(s.inputBtuPerHour()), 2)
                                        : Figures.whole(s.inputBtuPerHour()))
                                .collect(Collectors.joining(" / "))
                        + (si ? " kW" : " Btu/h")
                : "not on the plate";
    }

    private static String manifold(RatingPlate plate) {
        if (plate.stages().stream().anyMatch(s -> s.manifoldLimit().isOpen())) {
            return "not asked";
        }
        String targets = plate.stages().stream()
                .map(s -> read(s.manifoldTarget()) + " \u00B1" + read(s.manifoldTolerance()))
                .collect(Collectors.joining(" / "));
        return targets + " " + plate.stages().get(0).unit().symbol();
    }

    private static String read(double figure) {
        return Figures.plain(ShownRange.of(figure, figure).lower());
    }

    private static String range(Limit limit) {
        return Figures.limit(limit) + " " + limit.unit().symbol();
    }
}
