package settlemark.session;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import settlemark.measure.Role;
import settlemark.measure.Unit;

/**
 * What other settings of the detectors make of a stored session; nothing of it is stored.
 *
 * @param session number within the workspace
 * @param job whether the lines are stage readings, else stretches in which a channel of a log was settled
 * @param lines in the order of the day; what only the other settings give comes last
 * @param otherThanStored stage readings that this version gives otherwise than the day stored them, with the day's own settings
 */
public record WhatIfReport(long session, boolean job, List<Line> lines, int otherThanStored) {
    public WhatIfReport {
        lines = List.copyOf(lines);
    }

    /** How many lines the other settings change. */
    public long changed() {
        return lines.stream().filter(Line::changed).count();
    }

    /**
     * A channel's part of a stage reading, or a settled stretch of a log.
     *
     * @param step key of the step, empty of a log
     * @param purpose such as {@code found}, {@code settled} of a log
     * @param role of the channel
     * @param before with the day's settings, empty where they give none
     * @param after with the other settings, empty where they give none
     */
    public record Line(String step, String purpose, Role role, Optional<Value> before, Optional<Value> after) {
        public Line {
            Objects.requireNonNull(role);
            if (before.isEmpty() && after.isEmpty()) {
                throw new IllegalArgumentException("a line has a value before or after");
            }
        }

        /** Whether the other settings make a difference to it. */
        public boolean changed() {
            return !before.equals(after);
        }

        /** Unit of its values. */
        public Unit unit() {
            return before.or(() -> after).orElseThrow().unit();
        }
    }

    /**
     * What was read.
     *
     * @param timeNanos when, session time
     * @param value zero taken off where it is a stage reading
     * @param expandedUncertainty at k = 2
     * @param unit of both
     * @param settled whether it was proved, or satisfied the rule that was asked
     * @param byHand whether a person took it
     * @param reason the line that goes with it
     */
    public record Value(
            long timeNanos,
            double value,
            double expandedUncertainty,
            Unit unit,
            boolean settled,
            boolean byHand,
            String reason) {}
}
