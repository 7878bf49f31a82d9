package settlemark.ui;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import settlemark.session.Note;
import settlemark.session.SessionStore;

/** A program around the review that has no workspace. */
final class FakeReview implements ReviewHost {
    final List<SeenView.Form> kept = new ArrayList<>();

    @Override
    public List<Path> workspaces() {
        return List.of();
    }

    @Override
    public <T> void read(Path workspace, Reading<T> reading, Consumer<T> done, Consumer<String> failed) {
        failed.accept("there is no workspace " + workspace);
    }

    @Override
    public <T> void study(Path workspace, Reading<T> reading, Consumer<T> done, Consumer<String> failed) {
        failed.accept("there is no workspace " + workspace);
    }

    @Override
    public void keep(SeenView view, SeenView.Form form, Consumer<Path> done, Consumer<String> failed) {
        kept.add(form);
    }

    @Override
    public void judge(Path workspace, long session, Word word, Consumer<Said> done, Consumer<String> failed) {
        failed.accept("there is no workspace " + workspace);
    }

    @Override
    public Optional<Said> word(SessionStore store, long session) {
        return Optional.empty();
    }

    @Override
    public Optional<String> remembered(Path workspace, SessionStore store, SessionStore.Summary session) {
        return Optional.empty();
    }

    @Override
    public void remember(Path workspace, SessionStore store, SessionStore.Summary session, String cameOut) {
        // There is no workspace beside which it could be kept.
    }

    @Override
    public void note(Path workspace, long session, Note note, Runnable done, Consumer<String> failed) {
        failed.accept("there is no workspace " + workspace);
    }
}
