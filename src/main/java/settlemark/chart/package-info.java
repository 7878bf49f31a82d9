/**
 * Draws traces, settled spans and readings into any Graphics2D with JFreeChart. Never a Swing component.
 */
@NullMarked
package settlemark.chart;

import org.jspecify.annotations.NullMarked;
