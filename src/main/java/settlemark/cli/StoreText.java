package settlemark.cli;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import settlemark.session.CheckReport;
import settlemark.session.Damage;
import settlemark.session.RepairReport;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** What the store's tools found, as text and as JSON. */
final class StoreText {
    private StoreText() {}

    /** The workspace that is meant; one that is named must be there. */
    static Path file(CommandSpec spec, Program program, @Nullable Path named) {
        if (named == null) {
            return program.ownWorkspace();
        }
        Commands.checkFile(spec, named);
        return named;
    }

    static String words(CheckReport report) {
        StringBuilder text = new StringBuilder();
        CheckReport.Contents contents = report.contents();
        text.append(report.file())
                .append(": format ")
                .append(report.format())
                .append(", ")
                .append(counted(contents.sessions(), "session"))
                .append(", ")
                .append(counted(contents.rereadings(), "rereading"))
                .append(", ")
                .append(counted(contents.samples(), "sample"))
                .append(", ")
                .append(counted(contents.events(), "event"))
                .append(", ")
                .append(counted(contents.readings(), "reading"))
                .append(", ")
                .append(counted(contents.notes(), "note"))
                .append(", ")
                .append(counted(contents.attachments(), "attachment"))
                .append('\n');
        for (Damage damage : report.damage()) {
            text.append("damaged: ").append(plain(damage.toString())).append('\n');
        }
        if (report.more() > 0) {
            text.append("damaged: ").append(report.more()).append(" more places that are not listed\n");
        }
        text.append(
                report.whole()
                        ? "whole: everything is as it was stored\n"
                        : "DAMAGED: save what is whole with \"settlemark store repair\"; keep this file\n");
        return text.toString();
    }

    static String words(RepairReport report) {
        StringBuilder text = new StringBuilder();
        report.steps().forEach(step -> text.append("done: ").append(step).append('\n'));
        for (RepairReport.Saved saved : report.saved()) {
            String of = saved.samplesBefore() < 0 ? "" : " of " + saved.samplesBefore();
            text.append("saved: ")
                    .append(saved.of())
                    .append(", ")
                    .append(saved.samples())
                    .append(of)
                    .append(" samples, ")
                    .append(counted(saved.events(), "event"))
                    .append(", ")
                    .append(counted(saved.readings(), "reading"))
                    .append('\n');
        }
        report.lost()
                .forEach(d -> text.append("lost: ").append(plain(d.toString())).append('\n'));
        text.append(report.to())
                .append(": whole, with ")
                .append(
                        report.lost().isEmpty()
                                ? "everything that was stored"
                                : "what could be saved; the losses are listed above, and " + report.from()
                                        + " is as it was")
                .append('\n');
        return text.toString();
    }

    private static String counted(long count, String what) {
        return count + " " + what + (count == 1 ? "" : "s");
    }

    /** Names come out of a damaged file: nothing in them moves a terminal's cursor. */
    private static String plain(String text) {
        return text.replaceAll("[\\p{Cntrl}\\u0080-\\u009f]", "?");
    }

    static String json(CheckReport report) {
        ObjectNode object = JsonLine.object();
        object.put("file", report.file().toString());
        object.put("format", report.format());
        object.put("whole", report.whole());
        CheckReport.Contents contents = report.contents();
        object.putObject("contents")
                .put("sessions", contents.sessions())
                .put("rereadings", contents.rereadings())
                .put("samples", contents.samples())
                .put("events", contents.events())
                .put("readings", contents.readings())
                .put("notes", contents.notes())
                .put("attachments", contents.attachments());
        ArrayNode damage = object.putArray("damage");
        for (Damage one : report.damage()) {
            ObjectNode node = damage.addObject();
            node.put("of", one.of());
            node.put("probe", one.probe());
            node.put("channel", one.channel());
            one.span().ifPresent(s -> node.put("from_nanos", s.fromNanos()).put("to_nanos", s.toNanos()));
            node.put("words", one.words());
        }
        object.put("more", report.more());
        return JsonLine.text(object) + "\n";
    }
}
