package settlemark.link;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.BiConsumer;
import org.freedesktop.dbus.DBusPath;
import org.freedesktop.dbus.interfaces.ObjectManager;
import org.freedesktop.dbus.types.Variant;
import settlemark.profile.Input;
import settlemark.profile.Profile;
import settlemark.profile.Recognition;
import settlemark.profile.Source;
import settlemark.profile.Step;
import settlemark.session.LinkException;

/** What a profile describes, as a device has it: services, characteristics and their descriptors, each with its input. */
final class BleServedTree implements ObjectManager {
    private static final UUID PRESENTATION = UUID.fromString("00002904-0000-1000-8000-00805f9b34fb");
    private static final UUID MEASUREMENT = UUID.fromString("0000290c-0000-1000-8000-00805f9b34fb");

    private final String root;
    private final Profile profile;
    private final BiConsumer<UUID, byte[]> written;
    private final String demand;
    private final Map<UUID, BleServedService> services = new LinkedHashMap<>();
    private final List<BleServedValue> values = new ArrayList<>();
    private final List<BleServedNote> notes = new ArrayList<>();
    private final Map<Integer, BleServedValue> valueOf = new HashMap<>();
    private final Map<Integer, BleServedNote> noteOf = new HashMap<>();

    /**
     * @param demand what the Bluetooth service must demand before it gives a value, such as {@code encrypt-}; may be empty
     * @throws LinkException where the profile leaves open in which service a characteristic is
     */
    BleServedTree(String root, Profile profile, BiConsumer<UUID, byte[]> written, String demand) throws LinkException {
        this.demand = demand;
        this.root = root;
        this.profile = profile;
        this.written = written;
        List<Input> inputs = profile.inputs();
        for (int i = 0; i < inputs.size(); i++) {
            if (profile.messages().get(inputs.get(i).message()).source() instanceof Source.Characteristic source) {
                add(i, inputs.get(i), source);
            }
        }
        profile.startUp().forEach(this::writable);
        profile.actions().forEach(a -> a.steps().forEach(this::writable));
    }

    private void add(int index, Input input, Source.Characteristic source) throws LinkException {
        BleServedValue value = value(service(source), source.uuid());
        switch (input.kind()) {
            case FRAMES -> {
                value.allow(demand + "read");
                if (source.by() != Source.By.READ) {
                    value.allow(demand + (source.by() == Source.By.NOTIFY ? "notify" : "indicate"));
                }
                valueOf.put(index, value);
            }
            case PRESENTATION -> note(index, value, PRESENTATION);
            case MEASUREMENT -> note(index, value, MEASUREMENT);
        }
    }

    private void note(int index, BleServedValue value, UUID uuid) {
        BleServedNote note = value.note(uuid);
        notes.add(note);
        noteOf.put(index, note);
    }

    private UUID service(Source.Characteristic source) throws LinkException {
        Optional<UUID> service = source.service().or(() -> recognised().stream().findFirst());
        return service.orElseThrow(() -> new LinkException("profile \"" + profile.id()
                + "\" does not say in which service characteristic " + BleWords.uuid(source.uuid())
                + " is: add \"service\" beside its \"uuid\""));
    }

    private List<UUID> recognised() {
        return profile.recognitions().stream()
                .flatMap(r -> r instanceof Recognition.Ble ble ? ble.services().stream() : null)
                .toList();
    }

    private BleServedValue value(UUID service, UUID uuid) {
        BleServedService in =
                services.computeIfAbsent(service, s -> new BleServedService(root + "/service" + services.size(), s));
        for (BleServedValue value : values) {
            if (value.uuid().equals(uuid) && value.path().startsWith(in.path() + "/")) {
                return value;
            }
        }
        BleServedValue made = new BleServedValue(in.path() + "/value" + values.size(), in.path(), uuid, written);
        values.add(made);
        return made;
    }

    /** What is written to is in the service of a value with that UUID, else in the last one: the device's own, if any. */
    private void writable(Step step) {
        if (step.send().orElse(null) instanceof Step.Write write) {
            BleServedValue value = values.stream()
                    .filter(v -> v.uuid().equals(write.uuid()))
                    .findFirst()
                    .orElseGet(() ->
                            value(services.keySet().stream().reduce((a, b) -> b).orElse(write.uuid()), write.uuid()));
            value.allow(write.withResponse() ? "write" : "write-without-response");
        }
    }

    List<BleServedObject> objects() {
        List<BleServedObject> all = new ArrayList<>(services.values());
        all.addAll(values);
        all.addAll(notes);
        return all;
    }

    Optional<BleServedValue> value(int input) {
        return Optional.ofNullable(valueOf.get(input));
    }

    Optional<BleServedNote> note(int input) {
        return Optional.ofNullable(noteOf.get(input));
    }

    /** What an advertisement should name: what the profile is recognised by, else what it has. */
    List<UUID> advertised() {
        List<UUID> recognised = recognised();
        return recognised.isEmpty()
                ? List.copyOf(services.keySet()).stream().limit(1).toList()
                : recognised;
    }

    void unlistened() {
        values.forEach(BleServedValue::unlistened);
    }

    @Override
    public Map<DBusPath, Map<String, Map<String, Variant<?>>>> GetManagedObjects() {
        Map<DBusPath, Map<String, Map<String, Variant<?>>>> all = new HashMap<>();
        objects().forEach(o -> all.put(new DBusPath(o.path()), Map.of(o.type(), o.properties())));
        return all;
    }

    @Override
    public String getObjectPath() {
        return root;
    }
}
