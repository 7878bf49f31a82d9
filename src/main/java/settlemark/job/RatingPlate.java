package settlemark.job;

import java.util.List;
import java.util.Objects;
import settlemark.measure.Unit;

/**
 * The rating plate, which overrides every customary number.
 *
 * @param appliance what it is, in the technician's words
 * @param fuel what it burns
 * @param stages firing stages, lowest first
 * @param inlet least and most inlet pressure
 * @param rise least and most air temperature rise, a difference; open where the job reads no rise
 * @param statics most total external static pressure; open where the plate does not say or the job does not read it
 * @param control the most inlet that the gas control itself may see, as it is printed on it; open where nobody has said
 * @param site how high it stands and what is left of its rated input there
 */
public record RatingPlate(
        String appliance,
        Fuel fuel,
        List<StagePlate> stages,
        Limit inlet,
        Limit rise,
        Limit statics,
        Limit control,
        Site site) {
    private static final Limit NOT_ASKED = Limit.open(Unit.INCH_OF_WATER, "not asked");

    /** Without what is said of the control and of the place. */
    public RatingPlate(String appliance, Fuel fuel, List<StagePlate> stages, Limit inlet, Limit rise, Limit statics) {
        this(appliance, fuel, stages, inlet, rise, statics, NOT_ASKED, Site.UNKNOWN);
    }

    /** Without a total external static. */
    public RatingPlate(String appliance, Fuel fuel, List<StagePlate> stages, Limit inlet, Limit rise) {
        this(appliance, fuel, stages, inlet, rise, NOT_ASKED);
    }

    public RatingPlate {
        Objects.requireNonNull(statics);
        Objects.requireNonNull(control);
        Objects.requireNonNull(site);
        Objects.requireNonNull(fuel);
        Objects.requireNonNull(inlet);
        Objects.requireNonNull(rise);
        stages = List.copyOf(stages);
        if (stages.isEmpty()) {
            throw new IllegalArgumentException("a plate has at least one firing stage");
        }
    }

    /** The input to aim at: the rated one with what the altitude takes off; NaN where the plate gives none. */
    public double aimBtuPerHour(String stage) {
        return stage(stage).inputBtuPerHour() * site.share();
    }

    /** The lower of the plate's and the control's most inlet, in the plate's unit; its source says whose it is. */
    public Limit mostInlet() {
        Limit own = control.to(inlet.unit());
        return own.upper() < inlet.upper() ? own : inlet;
    }

    /** What looks wrong in it, in words; it may be right all the same. */
    public List<String> doubts() {
        return PlateDoubts.of(this);
    }

    /** @throws IllegalArgumentException where the plate has no such stage */
    public StagePlate stage(String key) {
        // Asked at every sample.
        for (StagePlate stage : stages) {
            if (stage.key().equals(key)) {
                return stage;
            }
        }
        throw new IllegalArgumentException("the plate has no stage \"" + key + "\"");
    }
}
