package settlemark.ui;

import java.util.List;
import settlemark.measure.Unit;
import settlemark.session.SnapshotUnits;

/** The units that a job is done in. */
record Units(String title, Unit pressure, Unit temperature) {
    static final List<Units> ALL = List.of(
            new Units(Words.key("inches of water, \u00b0F"), Unit.INCH_OF_WATER, Unit.FAHRENHEIT),
            new Units(Words.key("millibar, \u00b0C"), Unit.ucum("mbar"), Unit.CELSIUS),
            new Units(Words.key("kilopascal, \u00b0C"), Unit.ucum("kPa"), Unit.CELSIUS));

    /** What a screen can show, in the order of the key that goes through them. */
    static final List<SnapshotUnits> SHOWN = List.of(
            new SnapshotUnits(Unit.INCH_OF_WATER, Unit.FAHRENHEIT),
            new SnapshotUnits(Unit.ucum("mbar"), Unit.CELSIUS),
            new SnapshotUnits(Unit.PASCAL, Unit.CELSIUS));

    Unit rise() {
        return temperature.difference();
    }
}
