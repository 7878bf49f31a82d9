package settlemark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import settlemark.measure.Role;
import settlemark.session.LinkException;
import settlemark.settle.SettleAdjustment;
import settlemark.settle.SettleKind;

final class LogCommandTest {
    private final FakeProgram program = new FakeProgram();

    @Test
    void asksForTheProbesWithTheirRolesAndThoseThatMayBeAnotherDevice() {
        Ran ran = Ran.of(
                program,
                "log",
                "--probe",
                "meter=/dev/ttyUSB0",
                "--profile",
                "meter=text-columns",
                "--probe",
                "demo-air=/dev/ttyUSB1",
                "--role",
                "meter.pressure=manifold",
                "--role",
                "meter.return=return",
                "--another-device",
                "meter");
        assertThat(ran).isEqualTo(new Ran(0, "", ""));
        assertThat(program.asked).singleElement().isInstanceOfSatisfying(Program.Log.class, asked -> {
            assertThat(asked.anotherDevice()).containsExactly("meter");
            assertThat(asked.probes().get(0).roles())
                    .containsExactly(
                            new Program.RoleOf("pressure", Role.MANIFOLD), new Program.RoleOf("return", Role.RETURN));
            assertThat(asked.probes().get(1).roles()).isEmpty();
        });
    }

    @Test
    void settingsOfSettledDetectionGoWithIt() {
        Ran ran = Ran.of(
                program,
                "log",
                "--probe",
                "plain-line=/dev/ttyUSB0",
                "--set",
                "gas.drift=0.01",
                "--set",
                "air.dwell=9");
        assertThat(ran).isEqualTo(new Ran(0, "", ""));
        assertThat(program.asked).singleElement().isInstanceOfSatisfying(Program.Log.class, asked -> {
            assertThat(asked.settings().settings(SettleKind.GAS).driftLimit()).isEqualTo(0.01);
            assertThat(asked.settings().settings(SettleKind.AIR).dwellSeconds()).isEqualTo(9);
            assertThat(asked.settings().of(SettleKind.STACK)).isEqualTo(SettleAdjustment.NONE);
        });
        assertUsage("nothing is called \"drfit\"", "--probe", "plain-line=/dev/ttyUSB0", "--set", "gas.drfit=1");
    }

    @Test
    void aRoleThatMeasuresSomethingElseIsRefusedWithWhatFits() {
        assertUsage(
                "channel \"supply\" of profile text-columns is in \u00b0C, and manifold is a pressure: as a role it can"
                        + " be one of [supply, return, stack], and manifold can be one of [pressure]",
                "--probe",
                "text-columns=/dev/ttyUSB0",
                "--role",
                "text-columns.supply=manifold");
        assertUsage(
                "channel \"pressure\" of profile plain-line is in Pa, and supply is a temperature: as a role it can be"
                        + " one of [inlet, manifold, supply-static, return-static]\n",
                "--probe",
                "plain-line=/dev/ttyUSB0",
                "--role",
                "plain-line.pressure=supply");
        assertThat(program.asked).isEmpty();
    }

    @Test
    void aProbeThatIsNotThereCannotBeAnotherDevice() {
        assertUsage(
                "--another-device names \"gauge\", but no --probe does; the probes are [plain-line]",
                "--probe",
                "plain-line=/dev/ttyUSB0",
                "--another-device",
                "gauge");
        assertThat(program.asked).isEmpty();
    }

    @Test
    void whatIsWrongWithAPortEndsWithItsOwnCode() {
        program.linkFault = new LinkException("probe plain-line was another the last time");
        assertThat(Ran.of(program, "log", "--probe", "plain-line=/dev/ttyUSB0"))
                .isEqualTo(new Ran(4, "", "settlemark: probe plain-line was another the last time\n"));
    }

    @Test
    void theHelpSaysWhatAnotherDeviceMeans() {
        String help = Ran.of(program, "log", "--help").out().replaceAll("\\s+", " ");
        assertThat(help)
                .startsWith("Examples:")
                .contains("--another-device=NAME", "meant to be another device than the last time")
                .contains("4 no such probe or port, or another device than the last time");
    }

    private void assertUsage(String message, Object... arguments) {
        Object[] line = new Object[arguments.length + 1];
        line[0] = "log";
        System.arraycopy(arguments, 0, line, 1, arguments.length);
        Ran ran = Ran.of(program, line);
        assertThat(ran.err()).contains(message);
        assertThat(ran.code()).as(message).isEqualTo(2);
    }
}
