package settlemark.record;

import java.io.IOException;
import java.io.OutputStream;
import java.time.temporal.ChronoUnit;
import java.util.Calendar;
import java.util.GregorianCalendar;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import settlemark.session.JobRecord;
import settlemark.session.RecordForm;
import settlemark.session.SessionHeader;

/** The record as a PDF: the same record gives the same bytes. */
final class PdfRecord {
    private static final int SHOWN = 16;

    private final JobRecord record;
    private final String digest;
    private final String fingerprint;
    private final RecordForm form;

    /**
     * @param digest SHA-256 of the record's other files in hex, which becomes the document's identity
     * @param fingerprint of the key that seals it, empty where it is not sealed
     */
    PdfRecord(JobRecord record, String digest, String fingerprint, RecordForm form) {
        this.form = form;
        this.record = InUnits.of(record, form.units());
        this.digest = digest;
        this.fingerprint = fingerprint;
    }

    void write(OutputStream out) throws IOException {
        try (PDDocument document = new PDDocument()) {
            Flow flow = new Flow(document, record.job().plan().recordTitle(), record.header(), form.paper());
            new FrontPage(record, flow, form.units() == RecordForm.Units.SI).write();
            new BackPages(record, flow, fingerprint).write();
            String content = "content " + digest.substring(0, SHOWN);
            flow.finish(fingerprint.isEmpty() ? "UNSEALED COPY   " + content : content);
            document.setDocumentInformation(information());
            Xmp.say(document, information());
            document.setDocumentId(Long.parseUnsignedLong(digest.substring(0, SHOWN), 16));
            document.save(out);
        }
    }

    private PDDocumentInformation information() {
        SessionHeader header = record.header();
        PDDocumentInformation information = new PDDocumentInformation();
        String simulated = header.simulated() ? "SIMULATED: " : "";
        information.setTitle(SafeText.plain(simulated + header.title()));
        information.setSubject(simulated + record.job().plan().recordTitle());
        information.setKeywords(header.key() + (header.simulated() ? ", SIMULATED" : ""));
        information.setAuthor(SafeText.plain(record.job().person()));
        information.setCreator("Settlemark " + header.version());
        information.setProducer("Settlemark " + header.version());
        Calendar made = GregorianCalendar.from(
                header.startedAt().truncatedTo(ChronoUnit.SECONDS).atZone(header.zone()));
        information.setCreationDate(made);
        information.setModificationDate(made);
        return information;
    }
}
