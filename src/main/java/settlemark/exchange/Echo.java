package settlemark.exchange;

/**
 * Whether the line gives back what is written to it, as a two-wire adapter does that listens while it talks. Not known
 * until the first answer shows it.
 */
final class Echo {
    private enum State {
        UNKNOWN,
        YES,
        NO
    }

    private State state = State.UNKNOWN;

    void forget() {
        state = State.UNKNOWN;
    }

    boolean isUnknown() {
        return state == State.UNKNOWN;
    }

    /** Bytes at the beginning that may be the request itself; -1 where they are a part of it so far. */
    int mayBe(byte[] request, Inbox inbox) {
        if (state == State.NO || request.length == 0) {
            return 0;
        }
        int compared = Math.min(request.length, inbox.size());
        if (!Search.matches(inbox.bytes(), 0, request, compared)) {
            return 0;
        }
        return compared < request.length ? -1 : request.length;
    }

    /** Takes note of an answer; true where it shows for the first time that the line echoes. */
    boolean shown(int echoBytes) {
        boolean first = state == State.UNKNOWN && echoBytes > 0;
        if (state == State.UNKNOWN) {
            state = first ? State.YES : State.NO;
        }
        return first;
    }
}
