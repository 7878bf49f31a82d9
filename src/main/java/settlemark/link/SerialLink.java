package settlemark.link;

import settlemark.exchange.ExchangeListener;
import settlemark.measure.Chunk;
import settlemark.session.LinkChange;
import settlemark.session.LinkException;
import settlemark.session.LinkListener;
import settlemark.session.ProbeLink;

/** One probe on a serial port; what it hears comes from the port's threads, one at a time. */
final class SerialLink implements ProbeLink, ExchangeListener {
    private final Bus bus;
    private final LinkListener listener;
    private int number;
    private volatile boolean closed;

    SerialLink(Bus bus, LinkListener listener) {
        this.bus = bus;
        this.listener = listener;
    }

    /** Its number in the exchange. */
    int number() {
        return number;
    }

    void number(int given) {
        number = given;
    }

    @Override
    public void send(byte[] bytes) throws LinkException {
        requireOpen();
        bus.send(bytes);
    }

    @Override
    public void act(String actionId) throws LinkException {
        requireOpen();
        try {
            bus.act(number, actionId);
        } catch (IllegalArgumentException e) {
            throw new LinkException(String.valueOf(e.getMessage()), e);
        }
    }

    @Override
    public String identity() {
        return bus.place().identity();
    }

    private void requireOpen() throws LinkException {
        if (closed) {
            throw new LinkException(bus.place().path() + " is not connected: this link was closed");
        }
    }

    @Override
    public void close() {
        if (!closed) {
            bus.leave(this);
        }
    }

    /** From here on nothing is delivered. */
    void silence() {
        closed = true;
    }

    void changed(long timeNanos, LinkChange change, String words) {
        if (!closed) {
            listener.changed(timeNanos, change, words);
        }
    }

    @Override
    public void arrived(Chunk chunk) {
        if (!closed) {
            listener.arrived(chunk);
        }
    }

    @Override
    public void lost(long timeNanos, String words) {
        changed(timeNanos, LinkChange.LOST, words);
    }

    @Override
    public void back(long timeNanos, String words) {
        changed(timeNanos, LinkChange.BACK, words);
    }

    @Override
    public void noted(long timeNanos, String words) {
        changed(timeNanos, LinkChange.NOTED, words);
    }
}
