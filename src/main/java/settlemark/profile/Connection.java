package settlemark.profile;

import java.util.Optional;

/**
 * How the device is connected, for the readers of the parts that need it.
 *
 * @param link empty where the profile does not say or says it wrongly
 * @param wrong whether a link is there that could not be read; nothing can be said about what needs it then
 * @param addressBase what the document calls the first register, 0 or 1
 */
record Connection(Optional<Link> link, boolean wrong, int addressBase) {
    private static final String SERIAL = "serial";
    private static final String MODBUS = "modbus-rtu";
    private static final String BLE = "ble";

    static Connection read(Section root) {
        Optional<Section> section = root.child("link");
        if (section.isEmpty()) {
            return new Connection(Optional.empty(), false, 0);
        }
        if (!section.get().isClean()) {
            return new Connection(Optional.empty(), true, 0);
        }
        int base = section.get()
                .child(MODBUS)
                .map(modbus -> modbus.integer("address-base", 0))
                .orElse(0);
        return new Connection(Optional.of(link(section.get())), false, base);
    }

    private static Link link(Section link) {
        if (link.has(SERIAL)) {
            return new Link.Serial(SerialLineReader.read(link.child(SERIAL).orElseThrow(), "none"));
        }
        if (link.has(MODBUS)) {
            Section modbus = link.child(MODBUS).orElseThrow();
            // Modbus over Serial Line 1.02, 2.5.1: the usual parity is even.
            return new Link.ModbusRtu(SerialLineReader.read(modbus, "even"), modbus.integer("unit", 1));
        }
        return link.text(BLE, "").equals("connected") ? new Link.BleConnected() : new Link.BleAdvertising();
    }

    boolean maySerial() {
        return wrong || link.filter(Link.Serial.class::isInstance).isPresent();
    }

    boolean mayModbus() {
        return wrong || link.filter(Link.ModbusRtu.class::isInstance).isPresent();
    }

    boolean mayConnect() {
        return wrong || link.filter(Link.BleConnected.class::isInstance).isPresent();
    }

    boolean mayAdvertise() {
        return mayConnect()
                || link.filter(Link.BleAdvertising.class::isInstance).isPresent();
    }

    /** As the document writes it. */
    String shown() {
        return link.map(Connection::word).orElse("no link");
    }

    private static String word(Link link) {
        if (link instanceof Link.Serial) {
            return SERIAL;
        } else if (link instanceof Link.ModbusRtu) {
            return MODBUS;
        }
        return link instanceof Link.BleConnected ? "ble: connected" : "ble: advertising";
    }
}
