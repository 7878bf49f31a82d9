package settlemark.session;

/** Takes what a capture holds, in its order. */
public interface CaptureSink {
    /** Once, before the first event, also where there is none; never for a file that is no capture at all. */
    void begun(CaptureHeader header);

    /**
     * Bytes or a change of a link. Where a line is damaged, the probes that it may have belonged to are heard to be lost, so
     * that no frame is put together across the hole.
     */
    void heard(SessionEvent event);

    /** Something is wrong with the capture itself. */
    void problem(CaptureProblem problem);
}
