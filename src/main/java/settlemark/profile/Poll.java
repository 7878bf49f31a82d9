package settlemark.profile;

/**
 * When something is asked for and how long an answer is waited for.
 *
 * @param periodSeconds between two requests, NaN for once after each start
 * @param timeOutSeconds until a request counts as unanswered, more than 0
 * @param retries further requests before the answer counts as missing, 0 or more
 */
public record Poll(double periodSeconds, double timeOutSeconds, int retries) {
    public static final double DEFAULT_TIME_OUT_SECONDS = 1;

    public Poll {
        if (periodSeconds <= 0 || !(timeOutSeconds > 0) || retries < 0) {
            throw new IllegalArgumentException("a poll needs a period and a time-out above 0 s, got " + periodSeconds
                    + " s and " + timeOutSeconds + " s, " + retries + " retries");
        }
    }

    public boolean isOnce() {
        return Double.isNaN(periodSeconds);
    }
}
