package settlemark.link;

import static settlemark.link.BleVmChecks.inOrder;
import static settlemark.link.BleVmChecks.require;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Function;
import settlemark.session.LinkException;
import settlemark.session.PairingPerson;
import settlemark.session.ProbeLink;

/** A probe whose values demand a paired computer: never paired by itself, only by a person's answer. */
final class BleVmPairing {
    /** Gives up opening sooner than usual. */
    private static final BleSettings IMPATIENT = new BleSettings(
            Duration.ofSeconds(20),
            Duration.ofSeconds(15),
            Duration.ofSeconds(10),
            Duration.ofSeconds(20),
            Duration.ofSeconds(5),
            Duration.ofSeconds(10),
            Duration.ofSeconds(3),
            Duration.ofMillis(300),
            Duration.ofSeconds(1),
            Duration.ofSeconds(2),
            Duration.ofSeconds(10),
            Duration.ofMillis(400),
            6,
            8192);

    private final BleVmBench bench;

    BleVmPairing(BleVmBench bench) {
        this.bench = bench;
    }

    List<BleVmScenario> all() {
        return List.of(
                new BleVmScenario("nothing is paired by itself", this::unasked),
                new BleVmScenario("a probe that refuses strangers, and why", this::strangers),
                new BleVmScenario("paired by comparing numbers, listed, forgotten", this::compared),
                new BleVmScenario("paired by the passkey that the probe shows", this::passkey),
                new BleVmScenario("paired by a passkey that is entered on the probe", this::enteredThere),
                new BleVmScenario("a person who says no is obeyed", this::refused));
    }

    private String compared() throws LinkException {
        return paired("encrypt-", "DisplayYesNo", new Person(true), person -> {
            String seen = bench.peer("asked a");
            require(person.asked.equals(List.of("confirm " + number(seen))), person.asked + " beside " + seen);
            return "both saw one number";
        });
    }

    private String passkey() throws LinkException {
        Person person = new Person(true);
        person.passkey = () -> {
            Await.until(
                    "a number on the probe", 10_000, () -> bench.peer("asked a").startsWith("show "));
            return OptionalInt.of(Integer.parseInt(number(bench.peer("asked a"))));
        };
        return paired("encrypt-authenticated-", "DisplayOnly", person, p -> {
            require(p.asked.equals(List.of("passkey")), p.asked.toString());
            return "the probe's number was asked for";
        });
    }

    private String enteredThere() throws LinkException {
        Person person = new Person(true);
        person.onShow = number -> bench.peer("enter a " + number);
        return paired("encrypt-authenticated-", "KeyboardOnly", person, p -> {
            require(p.asked.size() == 1 && p.asked.get(0).startsWith("show "), p.asked.toString());
            return "the number was shown here";
        });
    }

    private String refused() throws LinkException {
        bench.peer("agent a DisplayYesNo");
        bench.peer("serve p secret hci1 Settle_secret encrypt-");
        try {
            Person person = new Person(false);
            bench.host.pair(bench.addressOf("hci1"), person);
            throw new AssertionError("it was paired");
        } catch (LinkException e) {
            String words = String.valueOf(e.getMessage());
            require(words.contains("as you chose"), words);
            require(bench.host.bonded().isEmpty(), "no bond " + bench.host.bonded());
            return words;
        } finally {
            tidy();
        }
    }

    /** Pairing, its bond in the list, its values, the forgetting, and that no values come after it. */
    private String paired(String demand, String capability, Person person, Function<Person, String> check)
            throws LinkException {
        bench.peer("serve p secret hci1 Settle_secret " + demand);
        String address = bench.addressOf("hci1");
        try {
            bench.peer("agent a " + capability);
            bench.host.pair(address, person);
            String seen = check.apply(person);
            require(
                    bench.host.bonded().stream().map(BleSeen::address).toList().equals(List.of(address)),
                    "listed as bonded: " + bench.host.bonded());
            values();
            bench.host.forget(address);
            bench.forgetOn("hci1");
            Await.until("forgotten", 5000, () -> bench.bondedOn("hci0").isEmpty());
            require(bench.host.bonded().isEmpty(), "no longer listed");
            return seen + ", 20 values came, it was forgotten";
        } finally {
            tidy();
        }
    }

    /** A probe without display or keys agrees to any computer; the service would pair with it when a value is asked for. */
    private String unasked() throws LinkException {
        bench.peer("agent a NoInputNoOutput");
        bench.peer("serve p secret hci1 Settle_secret encrypt-");
        try {
            String refusal = unpaired(bench.host);
            Await.until("no bond", 5000, () -> bench.bondedOn("hci0").isEmpty());
            return refusal;
        } finally {
            tidy();
        }
    }

    /** A probe that refuses strangers: the service ends the connection, each time anew. */
    private String strangers() throws LinkException {
        bench.peer("serve p secret hci1 Settle_secret encrypt-");
        try (BleHost impatient = new BleHost(Fixtures.THREADS, Optional.of("hci0"), bench.bus, IMPATIENT)) {
            return unpaired(impatient);
        } finally {
            tidy();
        }
    }

    private String unpaired(BleHost host) {
        BleHeard heard = new BleHeard();
        try (ProbeLink link = bench.open(host, "hci1", "secret", heard)) {
            throw new AssertionError("it was opened unpaired: " + link + ", bonds " + bench.bondedOn("hci0") + ", said "
                    + heard.words());
        } catch (LinkException e) {
            String words = String.valueOf(e.getMessage());
            require(words.contains("pair it first"), words);
            return words;
        }
    }

    private void values() throws LinkException {
        BleHeard heard = new BleHeard();
        try (ProbeLink link = bench.open("hci1", "secret", heard)) {
            require(!link.toString().isEmpty(), "a link");
            Await.until("subscribed", 10_000, () -> bench.peer("listened p 0").equals("true"));
            bench.peer("stream p 0 20 20");
            BleVmChecks.waitFor("values", 20_000, heard, () -> heard.count() >= 20);
            inOrder(heard, 20);
        }
    }

    private void tidy() {
        bench.peer("close p");
        bench.peer("disagree a");
        bench.forgetOn("hci0");
        bench.forgetOn("hci1");
    }

    private static String number(String asked) {
        return asked.replaceAll("[^0-9]", "");
    }

    private static final class Person implements PairingPerson {
        private final boolean says;
        private final List<String> asked = new CopyOnWriteArrayList<>();
        private java.util.function.Supplier<OptionalInt> passkey = OptionalInt::empty;
        private java.util.function.IntConsumer onShow = number -> {};

        Person(boolean says) {
            this.says = says;
        }

        @Override
        public boolean confirm(String probe, int number) {
            asked.add("confirm " + number);
            return says;
        }

        @Override
        public boolean allow(String probe) {
            asked.add("allow");
            return says;
        }

        @Override
        public OptionalInt passkey(String probe) {
            asked.add("passkey");
            return passkey.get();
        }

        @Override
        public void show(String probe, int number) {
            asked.add("show " + number);
            onShow.accept(number);
        }

        @Override
        public void brokenOff() {}
    }
}
