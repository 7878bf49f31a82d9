/**
 * What a probe is asked and when, and which bytes answer: a pure state machine without threads, clocks or input and
 * output. Whoever owns the line hands in the time and what arrived, and writes what comes out. Never decodes an answer
 * and never guesses: bytes that are not certainly an answer are stray.
 */
@NullMarked
package settlemark.exchange;

import org.jspecify.annotations.NullMarked;
