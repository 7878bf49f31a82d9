package settlemark.ui;

import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What a restart puts back: how the window looked and where it stood, and a plate that was not finished.
 *
 * @param dark dark or light
 * @param units index of the units that a job is shown in, -1 for the job's own
 * @param sound whether it is on
 * @param pixelsPerMm of the screen by a ruler, 0 where nobody has measured
 * @param place of the window, empty where it never stood
 * @param language that the window speaks
 * @param plate what was typed of a plate, by the names of its fields
 * @param workshop what was begun in the workshop and not saved, by name
 * @param page what was open before a job: {@code first}, {@code plate}, {@code probes}, {@code review} or {@code workshop}
 * @param job where the person stood in the last job, empty before there was one
 */
public record ScreenState(
        boolean dark,
        int units,
        boolean sound,
        double pixelsPerMm,
        Optional<Place> place,
        Language language,
        Map<String, String> plate,
        Map<String, String> workshop,
        String page,
        Optional<JobPlace> job) {
    static final String FIRST = "first";

    /** Light, the job's own units, silent, English, nothing typed. */
    public static final ScreenState NONE = new ScreenState(
            false, -1, false, 0, Optional.empty(), Language.ENGLISH, Map.of(), Map.of(), FIRST, Optional.empty());

    public ScreenState {
        if (units < -1 || units >= Units.SHOWN.size()) {
            throw new IllegalArgumentException("there are units -1 to " + (Units.SHOWN.size() - 1) + ", got " + units);
        }
        if (!(pixelsPerMm >= 0 && pixelsPerMm < 1000)) {
            throw new IllegalArgumentException("pixels per millimetre must be 0 to 1000, got " + pixelsPerMm);
        }
        plate = Map.copyOf(plate);
        workshop = Map.copyOf(workshop);
    }

    /** Where the window stood, in pixels of the screen. */
    public record Place(int x, int y, int width, int height) {}

    ScreenState seen(boolean newDark, double newPixelsPerMm, @Nullable Place newPlace, Language newLanguage) {
        return new ScreenState(
                newDark,
                units,
                sound,
                newPixelsPerMm,
                Optional.ofNullable(newPlace),
                newLanguage,
                plate,
                workshop,
                page,
                job);
    }

    ScreenState heard(int newUnits, boolean newSound) {
        return new ScreenState(dark, newUnits, newSound, pixelsPerMm, place, language, plate, workshop, page, job);
    }

    ScreenState typed(Map<String, String> newPlate) {
        return new ScreenState(dark, units, sound, pixelsPerMm, place, language, newPlate, workshop, page, job);
    }

    ScreenState begun(Map<String, String> newWorkshop) {
        return new ScreenState(dark, units, sound, pixelsPerMm, place, language, plate, newWorkshop, page, job);
    }

    ScreenState at(String newPage) {
        return new ScreenState(dark, units, sound, pixelsPerMm, place, language, plate, workshop, newPage, job);
    }

    ScreenState in(JobPlace newJob) {
        return new ScreenState(
                dark, units, sound, pixelsPerMm, place, language, plate, workshop, page, Optional.of(newJob));
    }
}
