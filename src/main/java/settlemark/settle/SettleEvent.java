package settlemark.settle;

/**
 * The detector changed its mind.
 *
 * @param timeSeconds when, on the time scale of the samples
 * @param settled true: settled with the value; false: no longer
 * @param value the reading, NaN where unsettled
 * @param uncertainty expanded uncertainty (about 95 %), NaN where unsettled
 * @param windowStartSeconds start of the window that the value stands for, NaN where unsettled
 * @param reason one line
 */
public record SettleEvent(
        double timeSeconds,
        boolean settled,
        double value,
        double uncertainty,
        double windowStartSeconds,
        String reason) {}
