package settlemark.ui;

import java.util.List;
import settlemark.measure.Unit;

/** The units that a job is done in. */
record Units(String title, Unit pressure, Unit temperature) {
    static final List<Units> ALL = List.of(
            new Units("inches of water, \u00b0F", Unit.INCH_OF_WATER, Unit.FAHRENHEIT),
            new Units("millibar, \u00b0C", Unit.ucum("mbar"), Unit.CELSIUS),
            new Units("kilopascal, \u00b0C", Unit.ucum("kPa"), Unit.CELSIUS));

    Unit rise() {
        return temperature.difference();
    }
}
