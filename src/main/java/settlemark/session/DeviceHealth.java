package settlemark.session;

import java.util.Locale;
import java.util.Optional;
import settlemark.session.ProbeHost.FoundProbe;
import settlemark.session.ProbeView.Health;
import settlemark.session.ProbeView.HealthClass;

/** What is wrong with a device that is not in use, in the four open classes of NAMUR NE 107; the worst only. */
final class DeviceHealth {
    /** A judgement: common receivers hear down to some -95 dBm (from memory), and a hand in the way costs 5 dB. */
    private static final int WEAK_DBM = -90;

    private DeviceHealth() {}

    static Optional<Health> of(FoundProbe probe, Optional<DeviceUse> use, DeviceView.Battery battery) {
        Reception reception = probe.reception().orElse(Reception.NONE);
        if (!probe.inReach()) {
            boolean expected = use.isPresent() || reception.paired();
            return expected ? health(HealthClass.FAILURE, absence(probe)) : Optional.empty();
        }
        if (reception.connected()) {
            return health(
                    HealthClass.FUNCTION_CHECK,
                    "it is connected to this computer already: by another program, which must let it go first");
        }
        if (reception.signalDbm().orElse(0) < WEAK_DBM) {
            return health(
                    HealthClass.OUT_OF_SPECIFICATION,
                    "its signal is weak (" + reception.signalDbm().getAsInt()
                            + " dBm), values may be lost: move nearer, keep metal out of the way");
        }
        if (battery.percent() < ProbeRun.LOW_BATTERY_PERCENT) {
            return health(
                    HealthClass.MAINTENANCE_REQUIRED,
                    String.format(
                            Locale.ROOT,
                            battery.isOfLastUse()
                                    ? "its battery had %.0f %% the last time: charge or change it"
                                    : "its battery has %.0f %%: charge or change it",
                            battery.percent()));
        }
        return Optional.empty();
    }

    private static String absence(FoundProbe probe) {
        return probe.address().scheme().equals(ProbeAddress.BLE)
                ? "it is not heard. In this order: it is asleep or switched off (press its button); it is out of range"
                        + " (move nearer); a telephone or another computer holds it, which makes it silent (disconnect"
                        + " it there)"
                : "it is not plugged in";
    }

    private static Optional<Health> health(HealthClass what, String words) {
        return Optional.of(new Health(what, words));
    }
}
