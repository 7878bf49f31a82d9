package settlemark.session;

import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import settlemark.measure.SampleStatus;
import settlemark.measure.Unit;

/**
 * What a workspace remembers of a device: how it was used the last time.
 *
 * @param setup name, address, profile and identity of the last time, with the roles that it last had
 * @param session number of that session
 * @param probe its index in that session
 * @param lastUsed when that session began
 */
public record DeviceUse(ProbeSetup setup, long session, int probe, Instant lastUsed) {
    private static final long TAIL_NANOS = 120_000_000_000L;

    public DeviceUse {
        Objects.requireNonNull(setup);
        Objects.requireNonNull(lastUsed);
    }

    /**
     * Whether this is of the device with an identity at an address; on a Modbus line, where several share one identity,
     * also of the same unit.
     */
    public boolean isOf(String identity, ProbeAddress address) {
        return !identity.isEmpty()
                && setup.identity().equals(identity)
                && unit(setup.address()).equals(unit(address));
    }

    /** Several devices on a line have one adapter, and so one identity: what tells them apart, empty for the first. */
    public static String unit(ProbeAddress address) {
        int at = address.path().lastIndexOf('@');
        return address.scheme().equals(ProbeAddress.SERIAL) && at >= 0
                ? address.path().substring(at)
                : "";
    }

    /** The charge that it told last, in percent; NaN where it told none. */
    public double lastBatteryPercent(SessionStore store) throws StoreException {
        Optional<Integer> channel = setup.profile().channelIndex(ProbeRun.BATTERY);
        Optional<SessionStore.Summary> summary = store.find(Long.toString(session));
        if (channel.isEmpty() || summary.isEmpty()) {
            return Double.NaN;
        }
        long end = summary.get().durationNanos();
        SampleBlock block = store.samples(session, probe, channel.get(), end - TAIL_NANOS, Long.MAX_VALUE);
        Unit unit = setup.channels().get(channel.get()).unit();
        for (int i = block.size() - 1; i >= 0; i--) {
            if (block.status(i) == SampleStatus.OK) {
                return unit.to(Unit.PERCENT).apply(block.values()[i]);
            }
        }
        return Double.NaN;
    }
}
