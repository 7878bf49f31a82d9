package settlemark.session;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import settlemark.decode.DecodeSink;
import settlemark.decode.ProbeDecoder;
import settlemark.decode.Rejected;
import settlemark.measure.Chunk;
import settlemark.measure.SampleStatus;
import settlemark.measure.Unit;
import settlemark.profile.ByteText;
import settlemark.profile.Match;
import settlemark.profile.Message;
import settlemark.profile.Profile;
import settlemark.profile.Recogniser;
import settlemark.profile.Source;
import settlemark.session.ProbeHost.FoundProbe;

/**
 * The devices that are in reach or that a workspace remembers.
 *
 * @param devices in the order in which they were found, those that are remembered only behind them
 * @param remarks why some kind of device cannot be looked for, or not be remembered; a sentence each
 */
public record DeviceList(List<DeviceView> devices, List<String> remarks) {
    /** A device that was not used for longer is not missed. */
    private static final Duration MISSED = Duration.ofDays(30);

    public DeviceList {
        devices = List.copyOf(devices);
        remarks = List.copyOf(remarks);
    }

    /**
     * What is remembered of a device.
     *
     * @param use how it was used the last time
     * @param batteryPercent that it told then, NaN where it told none
     */
    public record Remembered(DeviceUse use, double batteryPercent) {}

    /**
     * Puts together what is in reach and what is remembered.
     *
     * @param remembered the last used first
     * @param profiles that may fit a device
     * @param now wall clock
     */
    public static DeviceList of(
            List<FoundProbe> found,
            List<Remembered> remembered,
            List<Profile> profiles,
            Instant now,
            List<String> remarks) {
        List<DeviceView> devices = new ArrayList<>();
        for (FoundProbe probe : found) {
            Optional<Remembered> use = remembered.stream()
                    .filter(r -> r.use().setup().identity().equals(probe.identity())
                            && !probe.identity().isEmpty())
                    .findFirst();
            List<Profile> fitting = fitting(probe, profiles);
            devices.add(DeviceView.of(probe, fitting, use.map(Remembered::use), battery(probe, use, fitting)));
        }
        for (Remembered one : remembered) {
            ProbeSetup setup = one.use().setup();
            if (found.stream().noneMatch(f -> f.identity().equals(setup.identity()))
                    && one.use().lastUsed().isAfter(now.minus(MISSED))) {
                devices.add(missing(one));
            }
        }
        return new DeviceList(devices, remarks);
    }

    private static DeviceView missing(Remembered one) {
        ProbeSetup setup = one.use().setup();
        FoundProbe absent = new FoundProbe(
                setup.address(),
                setup.profile().name(),
                Optional.empty(),
                setup.identity(),
                Optional.of(Reception.NONE));
        return DeviceView.of(absent, List.of(), Optional.of(one.use()), ofLastUse(Optional.of(one)));
    }

    private static List<Profile> fitting(FoundProbe probe, List<Profile> profiles) {
        return probe.seen()
                .map(seen -> profiles.stream()
                        .filter(p -> Recogniser.match(p, seen) instanceof Match.Fits)
                        .toList())
                .orElse(List.of());
    }

    private static DeviceView.Battery battery(FoundProbe probe, Optional<Remembered> use, List<Profile> fitting) {
        Reception reception = probe.reception().orElse(Reception.NONE);
        if (!Double.isNaN(reception.batteryPercent())) {
            return new DeviceView.Battery(reception.batteryPercent(), false);
        }
        return Stream.concat(use.map(r -> r.use().setup().profile()).stream(), fitting.stream())
                .map(profile -> advertisedBattery(profile, reception))
                .filter(percent -> !Double.isNaN(percent))
                .findFirst()
                .map(percent -> new DeviceView.Battery(percent, false))
                .orElseGet(() -> ofLastUse(use));
    }

    private static DeviceView.Battery ofLastUse(Optional<Remembered> use) {
        return use.filter(r -> !Double.isNaN(r.batteryPercent()))
                .map(r -> new DeviceView.Battery(r.batteryPercent(), true))
                .orElse(DeviceView.Battery.UNKNOWN);
    }

    /** What the advertisement says by a profile; NaN where it says nothing, and where it is protected. */
    private static double advertisedBattery(Profile profile, Reception reception) {
        Optional<Integer> battery = profile.channelIndex(ProbeRun.BATTERY);
        double[] percent = {Double.NaN};
        if (battery.isEmpty()) {
            return percent[0];
        }
        Unit unit = profile.channels().get(battery.get()).unit();
        ProbeDecoder decoder = new ProbeDecoder(profile);
        List<Message> messages = profile.messages();
        for (int i = 0; i < messages.size(); i++) {
            ByteText said = said(messages.get(i).source(), reception);
            if (!said.isEmpty()) {
                decoder.accept(new Chunk(0, i, said.toBytes()), new DecodeSink() {
                    @Override
                    public void sample(int channel, long timeNanos, double value, SampleStatus status) {
                        if (channel == battery.get() && status == SampleStatus.OK) {
                            percent[0] = unit.to(Unit.PERCENT).apply(value);
                        }
                    }

                    @Override
                    public void rejected(Rejected rejected) {
                        // It says nothing by this profile.
                    }
                });
            }
        }
        return percent[0];
    }

    private static ByteText said(Source source, Reception reception) {
        if (source instanceof Source.ServiceData data) {
            return reception.serviceData().getOrDefault(data.service(), ByteText.EMPTY);
        }
        return source instanceof Source.CompanyData data
                ? reception.companyData().getOrDefault(data.company(), ByteText.EMPTY)
                : ByteText.EMPTY;
    }
}
