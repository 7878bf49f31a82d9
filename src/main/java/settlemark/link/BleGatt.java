package settlemark.link;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import settlemark.profile.Input;
import settlemark.profile.Profile;
import settlemark.profile.Source;
import settlemark.profile.Step;

/** A profile's characteristics, and where a connected device has them. */
final class BleGatt {
    private static final UUID PRESENTATION = UUID.fromString("00002904-0000-1000-8000-00805f9b34fb");
    private static final UUID MEASUREMENT = UUID.fromString("0000290c-0000-1000-8000-00805f9b34fb");

    private final BluezObjects objects;
    private final List<Wanted> wanted = new ArrayList<>();
    private final List<Described> described = new ArrayList<>();
    private final Set<UUID> written = new LinkedHashSet<>();

    /** @param input index of the profile's input that its values belong to */
    record Wanted(int input, Source.Characteristic source) {}

    /**
     * A descriptor that is honoured.
     *
     * @param of the characteristic that has it
     */
    private record Described(int input, Source.Characteristic of, UUID descriptor) {}

    BleGatt(BluezObjects objects, Profile profile) {
        this.objects = objects;
        List<Input> inputs = profile.inputs();
        for (int i = 0; i < inputs.size(); i++) {
            Input input = inputs.get(i);
            if (profile.messages().get(input.message()).source() instanceof Source.Characteristic source) {
                switch (input.kind()) {
                    case FRAMES -> wanted.add(new Wanted(i, source));
                    case PRESENTATION -> described.add(new Described(i, source, PRESENTATION));
                    case MEASUREMENT -> described.add(new Described(i, source, MEASUREMENT));
                }
            }
        }
        profile.startUp().forEach(this::written);
        profile.actions().forEach(a -> a.steps().forEach(this::written));
    }

    private void written(Step step) {
        if (step.send().orElse(null) instanceof Step.Write write) {
            written.add(write.uuid());
        }
    }

    List<Wanted> wanted() {
        return wanted;
    }

    /** What the profile needs and the device does not show, in words. */
    List<String> missing(String device) {
        List<String> missing = new ArrayList<>();
        for (Wanted one : wanted) {
            if (path(device, one.source()).isEmpty()) {
                missing.add(words(one.source()));
            }
        }
        for (UUID uuid : written) {
            if (path(device, Optional.empty(), uuid).isEmpty()) {
                missing.add("characteristic " + BleWords.uuid(uuid));
            }
        }
        return missing;
    }

    List<String> services(String device) {
        List<UUID> uuids = new ArrayList<>();
        objects.paths(Bluez.GATT_SERVICE, device)
                .forEach(p -> uuid(p, Bluez.GATT_SERVICE).ifPresent(uuids::add));
        return BleWords.uuids(uuids);
    }

    Optional<String> path(String device, Source.Characteristic source) {
        return path(device, source.service(), source.uuid());
    }

    Optional<String> path(String device, Optional<UUID> service, UUID characteristic) {
        for (String path : objects.paths(Bluez.CHARACTERISTIC, device)) {
            if (uuid(path, Bluez.CHARACTERISTIC).filter(characteristic::equals).isPresent()
                    && (service.isEmpty() || serviceOf(path).equals(service))) {
                return Optional.of(path);
            }
        }
        return Optional.empty();
    }

    private Optional<UUID> serviceOf(String characteristic) {
        return BluezValues.text(objects.property(characteristic, Bluez.CHARACTERISTIC, "Service"))
                .flatMap(p -> uuid(p, Bluez.GATT_SERVICE));
    }

    /** Descriptors that the device has and the profile honours: their paths, and the inputs of their values. */
    List<Found> descriptors(String device) {
        List<Found> found = new ArrayList<>();
        for (Described one : described) {
            String of = path(device, one.of()).orElse("");
            for (String path : of.isEmpty() ? List.<String>of() : objects.paths(Bluez.DESCRIPTOR, of)) {
                if (uuid(path, Bluez.DESCRIPTOR)
                        .filter(one.descriptor()::equals)
                        .isPresent()) {
                    found.add(new Found(one.input(), path));
                }
            }
        }
        return found;
    }

    record Found(int input, String path) {}

    private Optional<UUID> uuid(String path, String type) {
        return BluezValues.text(objects.property(path, type, "UUID")).flatMap(BleGatt::parsed);
    }

    static Optional<UUID> parsed(String text) {
        try {
            return Optional.of(UUID.fromString(text));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    private static String words(Source.Characteristic source) {
        return "characteristic " + BleWords.uuid(source.uuid())
                + source.service().map(s -> " in service " + BleWords.uuid(s)).orElse("");
    }
}
