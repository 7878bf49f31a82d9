package settlemark.benchmark;

import java.nio.file.Path;

/** A store that can be measured. Everything is of all channels at once; times run from 0. */
interface Contender {
    String name();

    /** Makes a new one in an empty folder. */
    void create(Path folder) throws Exception;

    /** Durable when it returns. */
    void commit(Scans scans) throws Exception;

    /** Nothing more will come; closes it. */
    void finish() throws Exception;

    void open(Path folder) throws Exception;

    /** Smallest and largest value, by channel and then by column; a column is a part of the time from 0 to the end. */
    double[][][] overview(long endNanos, int columns) throws Exception;

    /** How many samples lie between two times, both read out with their values. */
    long window(long fromNanos, long toNanos) throws Exception;

    void close() throws Exception;
}
