package settlemark.settle;

/**
 * A trace of our own generator.
 *
 * @param seed that makes it again
 * @param resolution in which the values are rounded
 * @param samples as the probe would send them
 * @param truth what was true
 */
record SimulatedTrace(long seed, double resolution, Traces.Trace samples, Truth truth) {}
