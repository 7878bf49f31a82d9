package settlemark.ui;

import java.util.List;
import java.util.Map;
import java.util.Set;

/** Which sentences of the packages below the window never come to it: by the class that they stand in, or one by one. */
final class NeverShown {
    private static final Map<String, Set<String>> CLASSES = Map.ofEntries(
            // Checks of records against the program's own mistakes.
            Map.entry("document", Set.of("DocumentLimits", "Problem")),
            // Checks of records against the program's own mistakes, and text that is written into files.
            Map.entry(
                    "profile",
                    Set.of(
                            "Action",
                            "ChannelSource",
                            "Checksum",
                            "Connection",
                            "Curve",
                            "DraftWriter",
                            "Example",
                            "Field",
                            "Framing",
                            "Link",
                            "Match",
                            "Poll",
                            "Profile",
                            "ProfileDraft",
                            "ProfileLibrary",
                            "RawRange",
                            "Secrets",
                            "SerialLine",
                            "Source",
                            "Step",
                            "Tagged",
                            "Wire")),
            // Far ends, and captures, which only the commands read and write.
            Map.entry(
                    "link",
                    Set.of(
                            "BleAgent",
                            "BleDialogue",
                            "BlePeripheral",
                            "BleServedAdvert",
                            "BleServedNote",
                            "BleServedObject",
                            "BleServedService",
                            "BleServedTree",
                            "BleServedValue",
                            "BluezValues",
                            "CaptureEvents",
                            "CaptureHead",
                            "CaptureLimits",
                            "CaptureLines",
                            "CaptureReader",
                            "CaptureText",
                            "CaptureWords",
                            "CaptureWriter",
                            "SerialFarEnd")),
            // The tools that check, repair, compact, copy and move a workspace, and rereadings: the commands only.
            Map.entry(
                    "store",
                    Set.of(
                            "ActJson",
                            "Backup",
                            "BatchRows",
                            "BlockContent",
                            "Compaction",
                            "DamagedFile",
                            "EventCheck",
                            "EventSalvage",
                            "FormerBlocks",
                            "FrameCheck",
                            "HeaderSalvage",
                            "InstrumentSalvage",
                            "Levels",
                            "NewWorkspace",
                            "ParquetFile",
                            "Repair",
                            "RowCopy",
                            "Salvage",
                            "SeriesCheck",
                            "SeriesSalvage",
                            "SessionCheck",
                            "SessionFile",
                            "SqliteRereadings",
                            "StructureCheck",
                            "WorkspaceCheck",
                            "WorkspaceTools")),
            // The commands, the rig's far end, and what is said beside the window.
            Map.entry(
                    "app",
                    Set.of(
                            "CaptureRun",
                            "DemoGlue",
                            "DemoRun",
                            "DemoScene",
                            "ExportRun",
                            "ImportRun",
                            "ImportedProfile",
                            "JobLook",
                            "KeyRun",
                            "LogRun",
                            "OwnPlans",
                            "Phrases",
                            "ProbeFloor",
                            "RadioWiring",
                            "RecordRun",
                            "RememberedRoles",
                            "RigRadio",
                            "RigRun",
                            "RigVoice",
                            "SealCheck",
                            "SeenFiles",
                            "SleepGuard",
                            "StoredRun",
                            "TruthCheck",
                            "TypedJob")),
            // Checks against the program's own mistakes, and keys, which the commands read.
            Map.entry("seal", Set.of("JobForm", "Seal", "SealKey", "SealedPart")),
            // Checks against the program's own mistakes, certificates that the commands take in, and plates and plans
            // as files: their problems are said by the commands, at the lines.
            Map.entry(
                    "job",
                    Set.of(
                            "CorrectionPoint",
                            "FormerReading",
                            "Limit",
                            "PlanLimits",
                            "PlanReader",
                            "PlanReading",
                            "PlanStep",
                            "Plans",
                            "PlateChecks",
                            "PlateReader",
                            "PlateText",
                            "StepLimit")),
            // Checks against the program's own mistakes; captures, rereadings, files beside a session and limits that
            // are
            // typed: the commands only.
            Map.entry(
                    "session",
                    Set.of(
                            "Attachment",
                            "CaptureHeader",
                            "CaptureProblem",
                            "Correction",
                            "LastUse",
                            "OtherLimit",
                            "ReadingChange",
                            "SampleBlock",
                            "SnapshotUnits",
                            "Spark",
                            "WhatIfReport")),
            // What is written on the record, which is English, and the samples' way out and in by the commands.
            Map.entry(
                    "record",
                    Set.of(
                            "AgainWords",
                            "BackPages",
                            "ClockWords",
                            "ExactNumber",
                            "FrontPage",
                            "InstrumentWords",
                            "PhotoPages",
                            "Photograph",
                            "SaidUnits",
                            "SampleLines",
                            "SamplesImport",
                            "SessionExport",
                            "SupplyDrops",
                            "TablePainter",
                            "Typeface",
                            "WindowCharts",
                            "Wording")));

    /** Said only where the program is at fault. */
    private static final Set<String> OWN_FAULTS = Set.of(
            "every Java platform has SHA-256",
            "the link's thread ended by a fault of the program",
            "a profile has no errors, and what has no errors is a profile",
            "a Bluetooth signal could not be taken",
            // The reader's of YAML, which is recognised by it.
            "mapping values are not allowed",
            "session 7 goes on with event 7, but the batch begins with event 7",
            "session 7 has 7 probes, and none with index 7",
            "session 7 has ended and gains nothing more",
            "no stored form for an event of 7",
            "setting 7 must be JSON, got: 7",
            "the program lacks its file 7",
            "the workspace has no attachment 7",
            "a plan needs a plate, and a plate a plan",
            "a plate has at least one firing stage",
            "an altitude that was checked is refused: 7",
            "cannot judge 7: value 7, uncertainty 7",
            "nothing would be asked: name the rule that stands alone",
            "plan 7 has two steps \"7\"",
            "plan 7, step 7: no stage is called \"7\"",
            "the plate has no stage \"7\"",
            "turns of a dial give an input");

    /** Said where a command was typed. */
    private static final Set<String> TO_COMMANDS = Set.of(
            "--instrument names probe 7, and the session's probes are 7",
            "7 is at 7: say --probe 7=77, or",
            "7 is at no port in reach: plug it in where it was, or say",
            "probe 7 was 7 the last time, and now 7 is named: name the former one, or say --another-device 7 where another"
                    + " device is meant",
            "probe 7 was 7 the last time, but at 7 is now 7: the ports may have changed their numbers. 7 --another-device 7"
                    + " where another device is meant",
            "taken in as session 7",
            "no step \"7\" has a verdict; there are 7",
            "the step \"7\" has no verdict on \"7\"; there are 7",
            "no kind of channel is called \"7\"; there are gas, air and stack",
            "unit \"7\" is no unit of 7; write its UCUM code, such as 7",
            // Of the record, which is English.
            "7 since the first, U =",
            "no change beyond U =",
            ": no verdict is another");

    /** Beginnings of statements for the database, of what goes to the commands' error output, and of what a certificate lacks. */
    private static final List<String> BEGINNINGS = List.of(
            "SELECT ",
            "INSERT ",
            "UPDATE ",
            "DELETE ",
            "PRAGMA ",
            "COPY ",
            "DROP TABLE ",
            "FROM probe ",
            "settlemark: ",
            "instrument 7: ");

    private NeverShown() {}

    /** Classes of a package whose sentences are not looked at. */
    static Set<String> of(String name) {
        return CLASSES.getOrDefault(name, Set.of());
    }

    static boolean mayBeShown(String name, String file, String sentence) {
        return !of(name).contains(file)
                && !OWN_FAULTS.contains(sentence)
                && !TO_COMMANDS.contains(sentence)
                && BEGINNINGS.stream().noneMatch(sentence::startsWith);
    }
}
