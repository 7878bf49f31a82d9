package settlemark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.job.InstrumentCard;
import settlemark.measure.Unit;

final class InstrumentsCommandTest {
    private final FakeProgram program = new FakeProgram();

    @TempDir
    private Path folder = Path.of("");

    private Path file(String text) throws Exception {
        return Files.writeString(folder.resolve("certificate.csv"), text);
    }

    private InstrumentCard card(String serial) {
        InstrumentCard card = program.instruments.cards.get(serial);
        assertThat(card).as(serial).isNotNull();
        return card;
    }

    private Ran run(Object... arguments) {
        Object[] all = new Object[arguments.length + 1];
        all[0] = "instruments";
        System.arraycopy(arguments, 0, all, 1, arguments.length);
        return Ran.of(program, all);
    }

    @Test
    void anInstrumentIsTakenInShownAndRemoved() {
        Ran added = run(
                "add",
                "--serial",
                "0042",
                "--name",
                "blue",
                "--calibrated",
                "2025-03-01",
                "--due",
                "2026-03-13",
                "--unit",
                "Pa",
                "--point",
                "p1=0:1:2",
                "--point",
                "p1=1000:1010:4");
        assertThat(added.code()).as(added.err()).isZero();
        assertThat(card("0042").points())
                .hasSize(2)
                .allSatisfy(p -> assertThat(p.unit()).isEqualTo(Unit.PASCAL))
                .allSatisfy(p -> assertThat(p.channel()).isEqualTo("p1"));
        Ran shown = run("show", "0042", "--at", "505.5", "--unit", "Pa", "--channel", "p1");
        // By hand: half way between 1 and 1010, so half way between -1 and -10, and between 2 and 4.
        assertThat(shown.out())
                .contains("2026-03-13 OVERDUE")
                .contains("correction -5.5 \u00b13 (k = 2), corrected 500");
        assertThat(run("show", "0042", "--at", "5", "--channel", "p1").out()).contains("outside the correction points");
        assertThat(run("list", "--json").out()).contains("\"overdue\":true").contains("\"indicated\":1010");
        assertThat(run("due").code()).isEqualTo(Program.CHECK_FAILED);
        assertThat(run("add", "--serial", "0042").code()).isEqualTo(Program.USAGE);
        assertThat(run("add", "--serial", "0042", "--replace", "--due", "2026-03-14")
                        .code())
                .isZero();
        assertThat(run("due").code()).isZero();
        assertThat(run("due").out()).contains("0042").contains("2026-03-14, 0 days");
        assertThat(run("remove", "0042").code()).isZero();
        assertThat(run("remove", "0042").code()).isEqualTo(Program.USAGE);
        assertThat(run("show", "0042").err()).contains("no instrument \"0042\"");
    }

    @Test
    void aFileGivesInstrumentsWithTheirPointsAndADayOnce() throws Exception {
        Path file = file("\uFEFFserial,name,due,channel,true,indicated,uncertainty,unit\n"
                + "0043,\"air, set\",2027-01-01,,0,0.2,0.2,degC\n0043,,,,100,100.4,0.2,degC\n44,=1+1,,,,,,\n");
        Ran taken = run("import", file);
        assertThat(taken.code()).as(taken.err()).isZero();
        assertThat(taken.out()).isEqualTo("2 instruments: 0043, 44" + System.lineSeparator());
        assertThat(card("0043").name()).isEqualTo("air, set");
        assertThat(card("0043").due()).contains(LocalDate.of(2027, 1, 1));
        assertThat(card("0043").points()).hasSize(2);
        assertThat(run("import", file).err())
                .contains("there already: 0043, 44")
                .contains("--replace");
        assertThat(run("import", file, "--replace").code()).isZero();
    }

    @Test
    void eachBadLineIsRefusedWithItsPlaceAndNothingIsTakenIn() throws Exception {
        String head = "serial,name,due,channel,true,indicated,uncertainty,unit\n";
        refused(head + "7,a,,,0,\"0,2\",0.1,Cel\n", "certificate.csv:2", "indicated: \"0,2\" must be a number");
        refused(head + "7,a,2026-02-30,,,,,\n", "certificate.csv:2", "a day of the calendar");
        refused(head + "7,a,,,0,0,0.1,furlongs\n", "certificate.csv:2", "must be a unit such as inH2O");
        refused(head + "7,a,,,0,0,0.1,Pa\n", "certificate.csv:2", "one correction point alone");
        refused(
                head + "7,a,,,0,0,0.1,Pa\n7,b,,,1,1,0.1,Pa\n",
                "certificate.csv:3",
                "name of 7 is \"b\", and was \"a\"");
        refused(head + ",a,,,0,0,0.1,Pa\n", "certificate.csv:2", "names no serial number");
        refused("serial,colour\n7,blue\n", "certificate.csv:2", "unknown column \"colour\"");
        refused(head + "\u001b[2J7,a,,,,,,\n", "certificate.csv:2", "printable");
        refused("", "certificate.csv:1", "no instrument");
        Files.write(folder.resolve("certificate.csv"), new byte[] {'s', (byte) 0xe4, '\n'});
        Ran latin = run("import", folder.resolve("certificate.csv"));
        assertThat(latin.code()).isEqualTo(Program.DAMAGED);
        assertThat(latin.err()).contains("UTF-8");
        assertThat(run("import", folder.resolve("none.csv")).code()).isEqualTo(Program.USAGE);
    }

    private void refused(String text, String... words) throws Exception {
        Ran ran = run("import", file(text));
        assertThat(ran.code()).as(ran.err()).isEqualTo(Program.DAMAGED);
        assertThat(ran.err()).contains(words).doesNotContain("\u001b");
        assertThat(program.instruments.cards).isEmpty();
    }

    @Test
    void wrongOptionsAreRefusedWithTheRemedy() {
        assertThat(run("add", "--serial", "7", "--point", "1:2").err())
                .contains("TRUE:INDICATED:U such as 5:5.06:0.02");
        assertThat(run("add", "--serial", "7", "--point", "x:2:1").err()).contains("must be a number");
        assertThat(run("add", "--serial", "7", "--due", "soon").err()).contains("such as 2026-03-01");
        assertThat(run("add", "--serial", " ").err()).contains("copy it from the instrument");
        assertThat(run("due", "--within", "-1").code()).isEqualTo(Program.USAGE);
        assertThat(run().err()).contains("instruments list");
        assertThat(program.instruments.cards).isEmpty();
    }
}
