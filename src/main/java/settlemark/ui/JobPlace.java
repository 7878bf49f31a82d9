package settlemark.ui;

import java.util.Map;

/**
 * Where a person stands in a job, and what they have typed and not yet said: what a restart puts back beside the job itself.
 *
 * @param session key of the job's session; in another job it means nothing
 * @param step key of the column that was open, empty where it was the present one
 * @param far whether the far view was shown
 * @param over what lay over the strip: {@code keys}, {@code visits}, the kind of channel whose settings did, or nothing
 * @param asked name of the deed whose words were asked for, empty where none was
 * @param texts what was typed, by field
 * @param speed times real time, 1 where it is no demo
 */
public record JobPlace(
        String session, String step, boolean far, String over, String asked, Map<String, String> texts, int speed) {
    public JobPlace {
        texts = Map.copyOf(texts);
    }
}
