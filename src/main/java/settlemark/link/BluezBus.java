package settlemark.link;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ThreadFactory;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.freedesktop.dbus.DBusMatchRule;
import org.freedesktop.dbus.connections.IDisconnectCallback;
import org.freedesktop.dbus.connections.impl.DBusConnection;
import org.freedesktop.dbus.connections.impl.DBusConnectionBuilder;
import org.freedesktop.dbus.exceptions.DBusException;
import org.freedesktop.dbus.exceptions.DBusExecutionException;
import org.freedesktop.dbus.interfaces.DBusInterface;
import org.freedesktop.dbus.interfaces.DBusSigHandler;
import org.freedesktop.dbus.messages.DBusSignal;
import org.freedesktop.dbus.messages.Error;
import org.freedesktop.dbus.messages.Message;
import org.freedesktop.dbus.messages.MethodCall;
import org.freedesktop.dbus.types.Variant;
import org.jspecify.annotations.Nullable;
import settlemark.session.LinkException;

/**
 * One connection to a message bus: calls with a limit each, and signals in the order of their sending, all on one
 * thread. Calls are plain messages, because the library's proxies share one limit and are remembered for ever.
 */
final class BluezBus implements AutoCloseable {
    /** Hears signals on the bus's own thread: must return at once and call nothing on the bus. */
    interface Ears {
        /** @param arguments as they travelled, variants included */
        void signal(String path, String member, Object[] arguments);

        /** The bus has gone; comes once, from any thread. */
        void lost();
    }

    private static final long LOOK_MILLIS = 50;
    private static final Duration CLOSE_LIMIT = Duration.ofMillis(200);
    /** The library tries again and again for that long. */
    private static final int CONNECT_MILLIS = 1000;

    /** Held, because a logger's level is forgotten with the logger. What goes wrong is told in our own words. */
    private static final Logger LIBRARY = Logger.getLogger("org.freedesktop.dbus");

    static {
        LIBRARY.setLevel(Level.OFF);
    }

    private final DBusConnection connection;
    private final Ears ears;
    private final AtomicBoolean lost;
    private final AtomicLong faults = new AtomicLong();
    private final DBusSigHandler<DBusSignal> handler = this::hear;

    private BluezBus(DBusConnection connection, Ears ears, AtomicBoolean lost) {
        this.connection = connection;
        this.ears = ears;
        this.lost = lost;
    }

    /** @throws LinkException with the remedy where there is no bus or it may not be used */
    static BluezBus open(String address, Ears ears) throws LinkException {
        Path socket = socket(address);
        if (socket != null && !Files.exists(socket)) {
            throw new LinkException(BleWords.noBus(address));
        }
        AtomicBoolean lost = new AtomicBoolean();
        try {
            DBusConnection connection = DBusConnectionBuilder.forAddress(address)
                    .withShared(false)
                    .withDisconnectCallback(new Fall(ears, lost))
                    .transportConfig()
                    .withTimeout(CONNECT_MILLIS)
                    .back()
                    .receivingThreadConfig()
                    .withSignalThreadCount(1)
                    .connectionConfig()
                    .build();
            return new BluezBus(connection, ears, lost);
        } catch (DBusException | DBusExecutionException | IllegalArgumentException e) {
            boolean refused = socket != null && !Files.isWritable(socket);
            throw new LinkException(refused ? BleWords.busRefused(address) : BleWords.noBus(address), e);
        }
    }

    private static @Nullable Path socket(String address) {
        String prefix = "unix:path=";
        int end = address.indexOf(',');
        return address.startsWith(prefix)
                ? Path.of(address.substring(prefix.length(), end < 0 ? address.length() : end))
                : null;
    }

    boolean isLost() {
        return lost.get();
    }

    /** Faults of those who hear signals; none is expected. */
    long faults() {
        return faults.get();
    }

    /**
     * Calls a method and waits.
     *
     * @param giveUp ends the waiting early
     * @param signature of the arguments, empty for none
     * @return what it gave
     */
    Object[] call(
            Target target, String member, Duration limit, BooleanSupplier giveUp, String signature, Object... arguments)
            throws BluezError {
        MethodCall call;
        try {
            call = connection
                    .getMessageFactory()
                    .createMethodCall(
                            target.owner(),
                            target.path(),
                            target.type(),
                            member,
                            (byte) 0,
                            signature.isEmpty() ? null : signature,
                            arguments);
            connection.sendMessage(call);
        } catch (DBusException | DBusExecutionException | java.util.concurrent.RejectedExecutionException e) {
            throw new BluezError(BluezError.BUS_LOST, String.valueOf(e.getMessage()));
        }
        return result(awaited(call, member, limit, giveUp));
    }

    private Message awaited(MethodCall call, String member, Duration limit, BooleanSupplier giveUp) throws BluezError {
        long start = System.nanoTime();
        while (true) {
            long leftMillis = limit.toMillis() - (System.nanoTime() - start) / 1_000_000;
            Message reply = call.getReply(Math.max(1, Math.min(LOOK_MILLIS, leftMillis)));
            if (reply != null) {
                return reply;
            }
            if (lost.get()) {
                throw new BluezError(BluezError.BUS_LOST, "the message bus has gone");
            }
            if (giveUp.getAsBoolean() || Thread.currentThread().isInterrupted()) {
                throw new BluezError(BluezError.GIVEN_UP, member);
            }
            if (leftMillis <= 0) {
                throw new BluezError(
                        BluezError.TIME_OUT, member + " gave no answer within " + limit.toMillis() + " ms");
            }
        }
    }

    private static Object[] result(Message reply) throws BluezError {
        try {
            Object[] given = reply.getParameters();
            if (reply instanceof Error error) {
                Object text = given == null || given.length == 0 ? "" : given[0];
                throw new BluezError(String.valueOf(error.getName()), String.valueOf(text));
            }
            return given == null ? new Object[0] : given;
        } catch (DBusException e) {
            throw new BluezError("settlemark.Unreadable", String.valueOf(e.getMessage()));
        }
    }

    /** Hears one kind of signal of one sender. */
    void listen(Class<? extends DBusSignal> signal, String sender) throws BluezError {
        try {
            connection.addGenericSigHandler(new DBusMatchRule(signal, sender, null), handler);
        } catch (DBusException | DBusExecutionException e) {
            throw new BluezError(BluezError.BUS_LOST, String.valueOf(e.getMessage()));
        }
    }

    /** Hears one kind of signal, whoever sends it. */
    void listen(String type, String member) throws BluezError {
        try {
            connection.addGenericSigHandler(new DBusMatchRule("signal", type, member), handler);
        } catch (DBusException | DBusExecutionException e) {
            throw new BluezError(BluezError.BUS_LOST, String.valueOf(e.getMessage()));
        }
    }

    void unlisten(Class<? extends DBusSignal> signal, String sender) {
        try {
            connection.removeGenericSigHandler(new DBusMatchRule(signal, sender, null), handler);
        } catch (DBusException | DBusExecutionException e) {
            // The sender is gone, and with it what it would send.
            return;
        }
    }

    void export(String path, DBusInterface object) throws LinkException {
        try {
            connection.exportObject(path, object);
        } catch (DBusException e) {
            throw new LinkException("the message bus took no object at " + path + ": " + e.getMessage(), e);
        }
    }

    void unexport(String path) {
        connection.unExportObject(path);
    }

    /** Tells the bus that properties of an exported object changed. */
    void changed(String path, String type, Map<String, Variant<?>> properties) throws BluezError {
        try {
            connection.sendMessage(connection
                    .getMessageFactory()
                    .createSignal(
                            null,
                            path,
                            "org.freedesktop.DBus.Properties",
                            "PropertiesChanged",
                            "sa{sv}as",
                            type,
                            properties,
                            List.of()));
        } catch (DBusException | DBusExecutionException | java.util.concurrent.RejectedExecutionException e) {
            throw new BluezError(BluezError.BUS_LOST, String.valueOf(e.getMessage()));
        }
    }

    private void hear(DBusSignal signal) {
        try {
            ears.signal(signal.getPath(), signal.getName(), signal.getParameters());
        } catch (DBusException | RuntimeException e) {
            // The library would lose the signal without a word.
            faults.incrementAndGet();
            Logger.getLogger("settlemark.link").log(Level.WARNING, "a Bluetooth signal could not be taken", e);
        }
    }

    /** Closes; the library waits for its threads, so it is left to it after a while. */
    void close(ThreadFactory threads) {
        Aside.run(this::close, CLOSE_LIMIT, threads);
    }

    @Override
    public void close() {
        connection.disconnect();
    }

    /** @param type of the object, an interface's name */
    record Target(String owner, String path, String type) {}

    private record Fall(Ears ears, AtomicBoolean lost) implements IDisconnectCallback {
        @Override
        public void disconnectOnError(java.io.@Nullable IOException fault) {
            fallen();
        }

        @Override
        public void requestedDisconnect(@Nullable Integer connection) {
            lost.set(true);
        }

        @Override
        public void clientDisconnect() {
            fallen();
        }

        private void fallen() {
            if (lost.compareAndSet(false, true)) {
                ears.lost();
            }
        }
    }
}
