package settlemark.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Consumer;
import settlemark.job.SettledBy;
import settlemark.profile.Profile;
import settlemark.session.ProbeKeys;
import settlemark.session.RecordForm;
import settlemark.session.RereadReport;
import settlemark.session.StoreException;
import settlemark.session.WhatIfReport;
import settlemark.settle.SettleChoices;

/** What the commands ask about stored sessions: shown, run and judged again, recorded, checked, exported and taken in. */
public interface StoredDesk {
    int record(Record request, PrintWriter out, PrintWriter err) throws StoreException, IOException;

    /** Runs a stored session again at a pace, as lines or in the review window. */
    int replay(Replay request, PrintWriter out, PrintWriter err) throws StoreException, InterruptedException;

    /** Lists the jobs of a workspace, newest first. */
    int jobs(Optional<Path> workspace, PrintWriter out) throws StoreException;

    /** Shows one job without writing anything. */
    int job(Job request, PrintWriter out, PrintWriter err) throws StoreException, IOException;

    /** Holds a seal against what is there now; the exit code says whether all is untouched. */
    int verify(Verify request, PrintWriter out, PrintWriter err) throws StoreException, IOException;

    /** @param report hears what came of it, where it came so far */
    int reread(Reread request, Consumer<RereadReport> report, PrintWriter err) throws StoreException;

    /** Writes a session's samples for other programs. */
    int export(Export request, PrintWriter out, PrintWriter err) throws StoreException, IOException;

    /** Reads exported samples into a workspace. */
    int importSamples(Import request, PrintWriter out, PrintWriter err) throws StoreException, IOException;

    /** @param report hears what came of it; nothing is stored */
    int whatIf(WhatIf request, Consumer<WhatIfReport> report, PrintWriter err) throws StoreException;

    /** @param shown hears what a workspace sets of the detectors, after what was to be changed */
    int settings(SettleSettings request, Consumer<SettleChoices> shown, PrintWriter err) throws StoreException;

    /**
     * @param session number or key, {@code latest} for the newest
     * @param csv a new file, or a folder that is there
     * @param parquet a new file
     * @param rereading number of the one that is exported, empty for what was decoded on the day
     */
    record Export(
            String session,
            Optional<Path> csv,
            Optional<Path> parquet,
            OptionalInt rereading,
            Optional<Path> workspace) {}

    /** @param title of the session, empty for one that names the file */
    record Import(Path file, Optional<Path> workspace, Optional<String> title) {}
    /**
     * @param session number or key, {@code latest} for the newest
     * @param rereading number of the one that the record is made from, empty for what was decoded on the day
     * @param keys of probes whose frames are protected
     * @param paper empty for what the workspace is set to
     * @param units empty for what the workspace is set to
     * @param remember whether paper and units become what the workspace is set to
     * @param phraseFile with the pass phrase of the key for seals in its first line
     * @param copies single files instead of the sealed record
     */
    record Record(
            String session,
            Optional<Path> workspace,
            Optional<Path> folder,
            OptionalInt rereading,
            ProbeKeys keys,
            Optional<RecordForm.Paper> paper,
            Optional<RecordForm.Units> units,
            boolean remember,
            Optional<Path> phraseFile,
            Copies copies) {}

    /**
     * Single files of a record, without a seal, instead of the sealed record. None may be there.
     *
     * @param csv a file for the readings, or a folder for the readings and every sample
     * @param parquet the same
     */
    record Copies(Optional<Path> pdf, Optional<Path> json, Optional<Path> csv, Optional<Path> parquet) {
        public static final Copies NONE =
                new Copies(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

        public boolean any() {
            return pdf.isPresent() || json.isPresent() || csv.isPresent() || parquet.isPresent();
        }
    }

    /**
     * @param session number or key, {@code latest} for the newest
     * @param workspace empty for the person's own
     * @param keys of probes whose frames are protected
     */
    record Job(String session, Optional<Path> workspace, ProbeKeys keys) {}

    /**
     * @param session number or key, {@code latest} for the newest
     * @param speed how many times as fast as it was, 0 for as fast as it goes
     * @param window in the review window
     * @param workspace empty for the person's own
     * @param keys of probes whose frames are protected
     * @param dark the window begins dark
     * @param widthPx 0 for as large as the screen
     * @param heightPx 0 for as large as the screen
     */
    record Replay(
            String session,
            int speed,
            boolean window,
            Optional<Path> workspace,
            ProbeKeys keys,
            boolean dark,
            int widthPx,
            int heightPx) {
        static final int FASTEST_IN_WINDOW = 100;
    }

    /**
     * @param file the seal, a file of the record beside it, or a session in a file of its own
     * @param workspace empty for the person's own, where there is one
     * @param key public key that it must be sealed with
     */
    record Verify(Path file, Optional<Path> workspace, Optional<Path> key) {}

    /**
     * @param session number or key, {@code latest} for the newest
     * @param profiles by the name of the probe; a probe that is not in it keeps its own
     * @param keys of probes whose frames are protected
     */
    record Reread(String session, Map<String, Profile> profiles, Optional<Path> workspace, ProbeKeys keys) {}

    /**
     * @param session number or key, {@code latest} for the newest
     * @param choices what is set otherwise than on the day
     * @param by by what every step's channels are called settled, empty for what the plan says
     * @param keys of probes whose frames are protected
     */
    record WhatIf(
            String session, SettleChoices choices, Optional<SettledBy> by, Optional<Path> workspace, ProbeKeys keys) {}

    /**
     * @param choices what is to be set
     * @param reset whether everything else goes back to the defaults
     * @param workspace empty for the person's own
     */
    record SettleSettings(SettleChoices choices, boolean reset, Optional<Path> workspace) {}
}
