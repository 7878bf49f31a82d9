package settlemark.link;

import com.google.re2j.Pattern;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import settlemark.measure.Accuracy;
import settlemark.measure.Channel;
import settlemark.measure.Dimension;
import settlemark.measure.Unit;
import settlemark.profile.Action;
import settlemark.profile.ByteText;
import settlemark.profile.ChannelSource;
import settlemark.profile.FieldRef;
import settlemark.profile.Framing;
import settlemark.profile.Link;
import settlemark.profile.Message;
import settlemark.profile.Poll;
import settlemark.profile.Profile;
import settlemark.profile.Recognition;
import settlemark.profile.Source;
import settlemark.profile.Step;

/** Builds Bluetooth profiles of invented devices, as far as a link looks at them. */
final class BleProfiles {
    /** Environmental Sensing and its pressure, Battery and its level: Bluetooth SIG, Assigned Numbers, 3.4 and 3.8. */
    static final String ESS = uuid("181A");

    static final String PRESSURE = uuid("2A6D");
    static final String BATTERY_SERVICE = uuid("180F");
    static final String BATTERY = uuid("2A19");
    /** Invented: a service of a demo device and its characteristics. */
    static final String DEMO_SERVICE = "5e771e00-ba5e-4d3a-9c11-000000000001";

    static final String DEMO_VALUE = "5e771e00-ba5e-4d3a-9c11-000000000002";
    static final String DEMO_COMMAND = "5e771e00-ba5e-4d3a-9c11-000000000003";

    private final List<Message> messages = new ArrayList<>();
    private final List<ChannelSource> sources = new ArrayList<>();
    private final List<Step> startUp = new ArrayList<>();
    private final List<Action> actions = new ArrayList<>();
    private Optional<Recognition> recognition = Optional.empty();
    private Link link = new Link.BleConnected();

    static String uuid(String digits) {
        return "0000" + digits.toLowerCase(java.util.Locale.ROOT) + "-0000-1000-8000-00805f9b34fb";
    }

    BleProfiles notifies(String service, String uuid, double periodSeconds) {
        return message(
                new Source.Characteristic(
                        Optional.of(UUID.fromString(service)),
                        UUID.fromString(uuid),
                        Source.By.NOTIFY,
                        once(),
                        false,
                        false),
                periodSeconds);
    }

    BleProfiles notifiesAnywhere(String uuid) {
        return message(
                new Source.Characteristic(
                        Optional.empty(), UUID.fromString(uuid), Source.By.NOTIFY, once(), false, false),
                Double.NaN);
    }

    BleProfiles described(String service, String uuid, double periodSeconds) {
        return message(
                new Source.Characteristic(
                        Optional.of(UUID.fromString(service)),
                        UUID.fromString(uuid),
                        Source.By.NOTIFY,
                        once(),
                        true,
                        true),
                periodSeconds);
    }

    BleProfiles reads(String service, String uuid, double periodSeconds) {
        return message(
                new Source.Characteristic(
                        Optional.of(UUID.fromString(service)),
                        UUID.fromString(uuid),
                        Source.By.READ,
                        new Poll(periodSeconds, 1, 0),
                        false,
                        false),
                Double.NaN);
    }

    BleProfiles serviceData(String service, double periodSeconds) {
        link = new Link.BleAdvertising();
        return message(new Source.ServiceData(UUID.fromString(service)), periodSeconds);
    }

    BleProfiles companyData(int company, double periodSeconds) {
        link = new Link.BleAdvertising();
        return message(new Source.CompanyData(company), periodSeconds);
    }

    BleProfiles startsBy(String uuid, String hex) {
        startUp.add(step(uuid, hex, true));
        return this;
    }

    BleProfiles acts(String id, String uuid, String hex, boolean acknowledged) {
        actions.add(new Action(id, id, "", List.of(step(uuid, hex, acknowledged)), 1));
        return this;
    }

    BleProfiles recognised(String name, String... services) {
        List<UUID> uuids = new ArrayList<>();
        for (String service : services) {
            uuids.add(UUID.fromString(service));
        }
        recognition = Optional.of(new Recognition.Ble(Optional.of(Pattern.compile(name)), uuids, Optional.empty()));
        return this;
    }

    private static Step step(String uuid, String hex, boolean acknowledged) {
        return new Step(
                Optional.of(new Step.Write(UUID.fromString(uuid), ByteText.ofHex(hex), acknowledged)),
                Optional.empty(),
                1,
                0,
                0,
                1);
    }

    private static Poll once() {
        return new Poll(Double.NaN, 1, 0);
    }

    private BleProfiles message(Source source, double periodSeconds) {
        int index = messages.size();
        messages.add(new Message(
                "m" + index,
                source,
                new Framing.Packet(512),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                1));
        sources.add(new ChannelSource(
                new Channel(
                        "c" + index,
                        "C" + index,
                        Dimension.PRESSURE,
                        Unit.PASCAL,
                        Double.NaN,
                        Accuracy.UNKNOWN,
                        periodSeconds,
                        Double.NaN,
                        0),
                List.of(new FieldRef(index, 0)),
                1,
                1));
        return this;
    }

    Profile profile() {
        return new Profile(
                "invented",
                "Invented",
                "",
                true,
                "0".repeat(64),
                "",
                recognition.stream().toList(),
                Optional.of(link),
                startUp,
                actions,
                messages,
                sources,
                List.of(),
                List.of());
    }
}
