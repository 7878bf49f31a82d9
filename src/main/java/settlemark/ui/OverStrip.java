package settlemark.ui;

import java.awt.Component;
import java.awt.Container;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import javax.swing.JComponent;
import org.jspecify.annotations.Nullable;
import settlemark.job.SettleForm;
import settlemark.settle.SettleChoices;
import settlemark.settle.SettleKind;

/**
 * What lies over the strip, one thing at a time: the list of keys, what counts as settled, or the earlier visits. Opens and
 * closes each of them, says which keys close it, and gives the focus back to the pane.
 */
final class OverStrip {
    private final JComponent strip;
    private final Runnable focus;
    private final KeyList keys;
    private final SettingsPane settings;
    private final VisitsView visits;

    /** @param focus gives the focus back to what the keys of a job are bound to */
    OverStrip(Look look, JComponent strip, Runnable focus) {
        this.strip = strip;
        this.focus = focus;
        keys = new KeyList(look);
        settings = new SettingsPane(look);
        visits = new VisitsView(look);
        parts().forEach(p -> p.setVisible(false));
    }

    private List<JComponent> parts() {
        return List.of(keys, settings, visits);
    }

    void into(Container desk) {
        parts().forEach(desk::add);
    }

    /** Lies where the strip lies. */
    void layOut() {
        parts().forEach(p -> p.setBounds(strip.getBounds()));
    }

    KeyList keys() {
        return keys;
    }

    SettingsPane settings() {
        return settings;
    }

    VisitsView visits() {
        return visits;
    }

    /**
     * Opens or closes the list of keys.
     *
     * @param demo with the keys of the demo's hands
     */
    void turnKeys(boolean demo) {
        boolean open = !keys.isVisible();
        keys.list(demo);
        only(open ? keys : null);
    }

    /** Opens or closes the visits; what they show comes with the next scene. */
    void turnVisits() {
        only(visits.isVisible() ? null : visits);
    }

    /**
     * Opens what counts as settled.
     *
     * @param chosen gets the settings that are to hold from now on
     */
    void openSettings(SettingsTyped now, Consumer<SettleChoices> chosen) {
        only(settings);
        settings.open(now, choices -> {
            leave();
            chosen.accept(choices);
        });
    }

    private void only(@Nullable JComponent open) {
        boolean typing = settings.isVisible();
        for (JComponent part : parts()) {
            part.setVisible(part == open);
        }
        strip.setVisible(open == null);
        if (typing && open != settings) {
            focus.run();
        }
    }

    /** Closes whatever is open. */
    void leave() {
        only(null);
    }

    /**
     * Closes what a key does not leave open: light or dark and the language change what is typed into no more than the rest
     * of the window, and the key that opened something is still to close it.
     *
     * @return whether closing it was all that the key asked for
     */
    boolean takes(Deed deed) {
        Optional<JComponent> open =
                parts().stream().filter(Component::isVisible).findFirst();
        if (open.isEmpty()) {
            return false;
        }
        boolean typing = open.get() == settings;
        boolean stays = typing ? deed == Deed.THEME || deed == Deed.LANGUAGE : deed == opener(open.get());
        if (stays) {
            return false;
        }
        leave();
        return deed == Deed.NOW || deed == opener(open.get());
    }

    private Deed opener(JComponent part) {
        return part == keys ? Deed.KEYS : part == visits ? Deed.VISITS : Deed.SETTINGS;
    }

    /** What is open, in a word: of what counts as settled the kind of channel; empty where nothing is. */
    String open() {
        if (settings.isVisible()) {
            return SettleForm.word(settings.kind());
        }
        return keys.isVisible() ? "keys" : visits.isVisible() ? "visits" : "";
    }

    /**
     * Opens what was open before the program ended.
     *
     * @param typed opens what counts as settled
     */
    void open(String word, boolean demo, Runnable typed) {
        switch (word) {
            case "keys" -> turnKeys(demo);
            case "visits" -> turnVisits();
            case "" -> leave();
            default -> {
                typed.run();
                Stream.of(SettleKind.values())
                        .filter(k -> SettleForm.word(k).equals(word))
                        .forEach(settings::kind);
            }
        }
    }

    void show(Scene scene) {
        if (visits.isVisible()) {
            visits.show(Optional.of(scene.job()), scene.simulated());
        }
    }

    /**
     * Opens what was open before everything was made anew, with what was typed.
     *
     * @param typed opens what counts as settled
     */
    void goOn(OverStrip before, boolean demo, Runnable typed) {
        open(before.open(), demo, typed);
        if (settings.isVisible()) {
            settings.goOn(before.settings);
        }
    }

    /** After a change of theme. */
    void restyle() {
        settings.restyle();
    }
}
