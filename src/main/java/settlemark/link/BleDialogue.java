package settlemark.link;

import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.freedesktop.dbus.types.Variant;
import settlemark.profile.Poll;
import settlemark.profile.Step;

/** Reads, writes and subscribes on a connected device. */
final class BleDialogue {
    private final BlePlace place;
    private final BleCentral central;
    private final BleGatt gatt;
    private final BooleanSupplier closed;

    BleDialogue(BlePlace place, BleGatt gatt, BooleanSupplier closed) {
        this.place = place;
        this.central = place.central();
        this.gatt = gatt;
        this.closed = closed;
    }

    void startNotify(String characteristic) throws BluezError {
        central.call(characteristic, Bluez.CHARACTERISTIC, "StartNotify", "");
    }

    void stopNotify(String characteristic) {
        try {
            central.call(characteristic, Bluez.CHARACTERISTIC, "StopNotify", "");
        } catch (BluezError e) {
            // Nothing was notifying, or nothing is there any more.
            return;
        }
    }

    /** @param type interface of what is read, a characteristic or a descriptor */
    byte[] read(String path, String type, Poll poll) throws BluezError {
        Duration limit = Duration.ofNanos(Math.round(poll.timeOutSeconds() * 1e9));
        for (int tries = 0; ; tries++) {
            try {
                Map<String, Variant<?>> options = new HashMap<>();
                Object[] given = central.call(path, type, "ReadValue", limit, closed, "a{sv}", options);
                Optional<byte[]> bytes = given.length == 0 ? Optional.empty() : BluezValues.bytes(given[0]);
                return bytes.orElseThrow(() -> new BluezError("settlemark.WrongType", "the value read is no bytes"));
            } catch (BluezError e) {
                if (tries >= poll.retries() || isFinal(e)) {
                    throw e;
                }
            }
        }
    }

    /** Writes and waits as the steps say. */
    synchronized void perform(String device, List<Step> steps) throws BluezError {
        for (Step step : steps) {
            if (step.send().orElse(null) instanceof Step.Write write) {
                write(device, step, write);
            }
            long end = System.nanoTime() + Math.round(step.waitSeconds() * 1e9);
            while (!closed.getAsBoolean() && System.nanoTime() < end) {
                LockSupport.parkNanos(Math.min(50_000_000, end - System.nanoTime()));
            }
        }
    }

    private void write(String device, Step step, Step.Write write) throws BluezError {
        String path = path(device, write.uuid());
        Map<String, Variant<?>> options = new HashMap<>();
        options.put("type", new Variant<>(write.withResponse() ? "request" : "command"));
        Duration limit = Duration.ofNanos(Math.round(step.timeOutSeconds() * 1e9));
        for (int tries = 0; ; tries++) {
            try {
                central.call(
                        path,
                        Bluez.CHARACTERISTIC,
                        "WriteValue",
                        limit,
                        closed,
                        "aya{sv}",
                        write.bytes().toBytes(),
                        options);
                return;
            } catch (BluezError e) {
                if (tries >= step.retries() || isFinal(e)) {
                    throw e;
                }
            }
        }
    }

    private String path(String device, UUID characteristic) throws BluezError {
        return gatt.path(device, Optional.empty(), characteristic)
                .orElseThrow(() -> new BluezError(
                        "settlemark.Missing",
                        place.words() + " has no characteristic " + BleWords.uuid(characteristic)));
    }

    /** Whether the same call again would fare no better. */
    private static boolean isFinal(BluezError e) {
        return e.name().equals(BluezError.GIVEN_UP)
                || e.name().equals(BluezError.BUS_LOST)
                || e.is("NotConnected")
                || e.is("NotSupported")
                || demandsPairing(e);
    }

    static boolean demandsPairing(BluezError e) {
        return e.is("NotAuthorized")
                || e.says("Not paired")
                || e.says("Insufficient ")
                || e.says("nsufficient authenti");
    }
}
