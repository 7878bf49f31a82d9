package settlemark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

final class RigCommandTest {
    private final FakeProgram program = new FakeProgram();

    @Test
    void adaptersWithoutAnInstrumentServeTheSetAndOthersTheirOwn() {
        Ran ran = Ran.of(
                program,
                "rig",
                "--ble",
                "hci1",
                "--ble",
                "gauge=00:AA:01:01:00:01",
                "--ble",
                "room=hci2",
                "--profile",
                "room=ble-environment");
        assertThat(ran).isEqualTo(new Ran(0, "", ""));
        assertThat(program.asked).singleElement().isInstanceOfSatisfying(Program.Rig.class, asked -> {
            assertThat(asked.ttys()).isEmpty();
            assertThat(asked.onAir().subList(0, 2))
                    .isEqualTo(List.of(
                            new Program.OnAir("set", "hci1", Optional.empty()),
                            new Program.OnAir("gauge", "00:AA:01:01:00:01", Optional.empty())));
            assertThat(asked.onAir().get(2).profile().orElseThrow().id()).isEqualTo("ble-environment");
        });
    }

    @Test
    void aRigThatSpeaksNowhereIsWrongUsage() {
        Ran ran = Ran.of(program, "rig");
        assertThat(ran.code()).isEqualTo(2);
        assertThat(ran.err()).contains("--tty INSTRUMENT=DEVICE or --ble ADAPTER");
    }

    @Test
    void aDemoByRadioNamesItsAdapters() {
        assertThat(Ran.of(program, "demo", "--ble", "hci1,hci0").code()).isZero();
        assertThat(Ran.of(program, "demo", "--ble", "hci1").code()).isZero();
        assertThat(program.asked)
                .extracting(asked -> ((Program.Demo) asked).air().orElseThrow())
                .containsExactly(
                        new Program.Air("hci1", Optional.of("hci0")), new Program.Air("hci1", Optional.empty()));
        assertThat(Ran.of(program, "demo", "--ble", "hci1,hci0,hci2").code()).isEqualTo(2);
    }
}
