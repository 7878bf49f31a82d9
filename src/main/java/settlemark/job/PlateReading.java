package settlemark.job;

import java.util.List;
import java.util.Optional;
import settlemark.document.Problem;

/**
 * What came of reading a rating plate.
 *
 * @param plate empty where one of the problems is an error
 * @param problems all of them in the order of the text; warnings are doubts
 */
public record PlateReading(Optional<RatingPlate> plate, List<Problem> problems) {
    public PlateReading {
        problems = List.copyOf(problems);
    }
}
