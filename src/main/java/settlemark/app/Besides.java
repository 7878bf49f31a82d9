package settlemark.app;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import settlemark.seal.JudgedAgain;
import settlemark.session.Attachment;
import settlemark.session.JobRecord;
import settlemark.session.Papers;
import settlemark.session.Rejudging;
import settlemark.session.SessionStore;
import settlemark.session.StoreException;

/** Gathers what people put beside a session, for its record. */
final class Besides {
    private Besides() {}

    /** @throws IOException where a kept review is not what was kept */
    static JobRecord.Beside of(SessionStore store, long session) throws StoreException, IOException {
        Papers papers = store.papers();
        List<JobRecord.Filed> files = new ArrayList<>();
        for (Attachment file : papers.attachments(session)) {
            String type = file.mediaType();
            if (!type.equals(Papers.SEAL_TYPE) && !type.equals(Papers.REVIEW_TYPE)) {
                files.add(new JobRecord.Filed(file, type.startsWith("image/") ? papers.content(file) : new byte[0]));
            }
        }
        List<JobRecord.Reviewed> reviews = KeptSeals.of(store, session).reviews().stream()
                .map(r -> new JobRecord.Reviewed(
                        r.accepted(),
                        r.person(),
                        r.comment(),
                        r.madeAt(),
                        r.fingerprint(),
                        r.signatureHolds(),
                        r.again().map(JudgedAgain::under).orElse(List.of()),
                        r.again().map(JudgedAgain::changes).orElse(List.of()).stream()
                                .map(c -> new Rejudging.Change(c.step(), c.figure(), c.from(), c.to()))
                                .toList()))
                .toList();
        return new JobRecord.Beside(papers.notes(session), files, reviews);
    }
}
