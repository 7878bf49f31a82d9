package settlemark.app;

import java.util.Optional;
import settlemark.session.RecordForm;
import settlemark.session.Settings;
import settlemark.session.StoreException;

/** The form that records are made in where nothing else is said, kept in the workspace. */
final class RecordForms {
    private RecordForms() {}

    /** A setting that cannot be read is as one that is not there. */
    static RecordForm of(Settings settings) throws StoreException {
        return new RecordForm(
                word(settings, RecordForm.PAPER_SETTING)
                        .flatMap(RecordForm::paper)
                        .orElse(RecordForm.DEFAULT.paper()),
                word(settings, RecordForm.UNITS_SETTING)
                        .flatMap(RecordForm::units)
                        .orElse(RecordForm.DEFAULT.units()));
    }

    private static Optional<String> word(Settings settings, String key) throws StoreException {
        return settings.get(key).map(json -> json.replace("\"", ""));
    }

    static void keep(Settings settings, RecordForm form) throws StoreException {
        settings.put(RecordForm.PAPER_SETTING, "\"" + RecordForm.word(form.paper()) + "\"");
        settings.put(RecordForm.UNITS_SETTING, "\"" + RecordForm.word(form.units()) + "\"");
    }
}
