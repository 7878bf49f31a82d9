package settlemark.link;

import static settlemark.link.BleVmChecks.require;

import java.util.HexFormat;
import java.util.List;
import settlemark.measure.SampleStatus;
import settlemark.profile.ByteText;
import settlemark.profile.Example;
import settlemark.profile.Input;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;
import settlemark.session.LinkException;
import settlemark.session.ProbeLink;

/**
 * A device with three open services, decoded by the shipped profiles. What each must give stands in the profile's own
 * examples, with its source.
 */
final class BleVmShipped {
    private static final String SENSOR = "ble-environment";
    private static final String BATTERY = "ble-battery";
    private static final String INFORMATION = "ble-device-information";

    private static final ByteText NOTHING = ByteText.ofHex("");

    private final BleVmBench bench;

    BleVmShipped(BleVmBench bench) {
        this.bench = bench;
    }

    List<BleVmScenario> all() {
        return List.of(
                new BleVmScenario("one device's shipped profiles: environment, battery, information", this::device));
    }

    private String device() throws LinkException {
        bench.peer("serve v " + SENSOR + " hci1 Settle_env");
        bench.peer("serve b " + BATTERY + " hci1 Settle_env");
        bench.peer("serve i " + INFORMATION + " hci1 Settle_env");
        try {
            return notified() + " values, " + described() + " by descriptors, " + read("b", BATTERY) + " levels, "
                    + facts() + " facts";
        } finally {
            bench.peer("close v");
            bench.peer("close b");
            bench.peer("close i");
        }
    }

    /** Every good example without descriptors, one after the other over one connection. */
    private int notified() throws LinkException {
        Profile profile = ProfileLibrary.get(SENSOR);
        Gathered heard = new Gathered(profile);
        int checked = 0;
        try (ProbeLink link = bench.open("hci1", SENSOR, heard)) {
            require(!link.toString().isEmpty(), "a link");
            listened("v", profile);
            for (Example example : profile.examples()) {
                if (example.circumstances().equals(Example.Circumstances.NONE)) {
                    int rejected = heard.rejected().size();
                    send("v", profile, Input.Kind.FRAMES, example.message(), example.bytes());
                    if (example.isGood()) {
                        checked += given(heard, example);
                    } else {
                        Await.until(
                                "rejected: " + example.name(),
                                5000,
                                () -> heard.rejected().size() > rejected);
                    }
                }
            }
            require(heard.changes().size() == 1, heard.said().toString());
        }
        return checked;
    }

    /** Descriptors are read when a connection begins, so each example has its own. */
    private int described() throws LinkException {
        Profile profile = ProfileLibrary.get(SENSOR);
        int checked = 0;
        for (Example example : profile.examples()) {
            if (example.circumstances().equals(Example.Circumstances.NONE)) {
                continue;
            }
            Example.Circumstances with = example.circumstances();
            send(
                    "v",
                    profile,
                    Input.Kind.PRESENTATION,
                    example.message(),
                    with.presentation().orElse(NOTHING));
            send(
                    "v",
                    profile,
                    Input.Kind.MEASUREMENT,
                    example.message(),
                    with.measurement().orElse(NOTHING));
            Gathered heard = new Gathered(profile);
            try (ProbeLink link = bench.open("hci1", SENSOR, heard)) {
                require(!link.toString().isEmpty(), "a link");
                listened("v", profile);
                send("v", profile, Input.Kind.FRAMES, example.message(), example.bytes());
                checked += given(heard, example);
            }
        }
        return checked;
    }

    /** Values that are read when a connection begins. */
    private int read(String key, String id) throws LinkException {
        Profile profile = ProfileLibrary.get(id);
        int checked = 0;
        for (Example example : profile.examples()) {
            if (example.isGood() && example.circumstances().equals(Example.Circumstances.NONE)) {
                send(key, profile, Input.Kind.FRAMES, example.message(), example.bytes());
                Gathered heard = new Gathered(profile);
                try (ProbeLink link = bench.open("hci1", id, heard)) {
                    require(!link.toString().isEmpty(), "a link");
                    checked += given(heard, example);
                }
            }
        }
        return checked;
    }

    /** The first good example of each text, all over one connection. */
    private int facts() throws LinkException {
        Profile profile = ProfileLibrary.get(INFORMATION);
        List<Example> firsts = profile.messages().stream()
                .map(m -> profile.messages().indexOf(m))
                .flatMap(m -> profile.examples().stream()
                        .filter(e -> e.message() == m && e.isGood())
                        .limit(1))
                .toList();
        firsts.forEach(e -> send("i", profile, Input.Kind.FRAMES, e.message(), e.bytes()));
        Gathered heard = new Gathered(profile);
        int checked = 0;
        try (ProbeLink link = bench.open("hci1", INFORMATION, heard)) {
            require(!link.toString().isEmpty(), "a link");
            for (Example example : firsts) {
                checked += given(heard, example);
            }
        }
        require(checked >= firsts.size() && checked > 0, "a fact each");
        return checked;
    }

    private void listened(String key, Profile profile) {
        for (int i = 0; i < profile.inputs().size(); i++) {
            int input = i;
            if (profile.inputs().get(i).kind() == Input.Kind.FRAMES) {
                Await.until(
                        "subscribed to " + i,
                        10_000,
                        () -> bench.peer("listened " + key + " " + input).equals("true"));
            }
        }
    }

    private void send(String key, Profile profile, Input.Kind kind, int message, ByteText bytes) {
        int input = profile.inputs().indexOf(new Input(kind, message));
        require(input >= 0, "message " + message + " of " + profile.id() + " has " + kind);
        bench.peer("send " + key + " " + input + " " + HexFormat.of().formatHex(bytes.toBytes()));
    }

    private static int given(Gathered heard, Example example) {
        example.gives()
                .forEach((channel, expected) -> Await.until(
                        example.name() + " gives " + expected + " on " + channel,
                        5000,
                        () -> heard.of(channel).stream().anyMatch(v -> is(v, expected))));
        example.facts()
                .forEach((fact, words) -> Await.until(
                        example.name() + " says " + words,
                        5000,
                        () -> heard.of(fact).contains(words)));
        return example.gives().size() + example.facts().size();
    }

    private static boolean is(String value, Example.Expected expected) {
        return expected.status() == SampleStatus.OK
                ? value.matches("[-0-9].*") && Math.abs(Double.parseDouble(value) - expected.value()) < 1e-6
                : value.equals(expected.status().toString());
    }
}
