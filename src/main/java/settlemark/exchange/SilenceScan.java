package settlemark.exchange;

/** All that came, once the line is silent: it is searched only then. */
record SilenceScan(int maximumBytes) implements FrameScan {
    @Override
    public Look find(byte[] bytes, int from, int to) {
        return to > from && to - from <= maximumBytes ? Look.good(from, to) : Look.MORE;
    }
}
