package settlemark.link;

import com.fazecast.jSerialComm.SerialPort;
import settlemark.profile.Profile;
import settlemark.profile.SerialLine;
import settlemark.profile.SerialLine.Flow;
import settlemark.profile.SerialLine.Parity;
import settlemark.profile.SerialLine.StopBits;

/** A profile's serial settings, in the library's terms and in a technician's. */
final class LineSettings {
    /** For a profile that has none, and for the far end, where a pseudo terminal takes any. */
    static final SerialLine DEFAULT = new SerialLine(115_200, 8, Parity.NONE, StopBits.ONE, Flow.NONE);

    private LineSettings() {}

    static SerialLine of(Profile profile) {
        return profile.serial().orElse(DEFAULT);
    }

    static void apply(SerialLine line, SerialPort port) {
        port.setComPortParameters(line.baud(), line.dataBits(), stopBits(line), parity(line));
        port.setFlowControl(flow(line));
    }

    /** Such as {@code 115200 baud, 8N1}. */
    static String words(SerialLine line) {
        String stop = switch (line.stopBits()) {
            case ONE -> "1";
            case ONE_AND_A_HALF -> "1.5";
            case TWO -> "2";
        };
        String flow = switch (line.flow()) {
            case NONE -> "";
            case HARDWARE -> ", RTS/CTS";
            case SOFTWARE -> ", XON/XOFF";
        };
        return line.baud() + " baud, " + line.dataBits() + line.parity().name().charAt(0) + stop + flow;
    }

    private static int stopBits(SerialLine line) {
        return switch (line.stopBits()) {
            case ONE -> SerialPort.ONE_STOP_BIT;
            case ONE_AND_A_HALF -> SerialPort.ONE_POINT_FIVE_STOP_BITS;
            case TWO -> SerialPort.TWO_STOP_BITS;
        };
    }

    private static int parity(SerialLine line) {
        return switch (line.parity()) {
            case NONE -> SerialPort.NO_PARITY;
            case ODD -> SerialPort.ODD_PARITY;
            case EVEN -> SerialPort.EVEN_PARITY;
            case MARK -> SerialPort.MARK_PARITY;
            case SPACE -> SerialPort.SPACE_PARITY;
        };
    }

    private static int flow(SerialLine line) {
        return switch (line.flow()) {
            case NONE -> SerialPort.FLOW_CONTROL_DISABLED;
            case HARDWARE -> SerialPort.FLOW_CONTROL_RTS_ENABLED | SerialPort.FLOW_CONTROL_CTS_ENABLED;
            case SOFTWARE -> SerialPort.FLOW_CONTROL_XONXOFF_IN_ENABLED | SerialPort.FLOW_CONTROL_XONXOFF_OUT_ENABLED;
        };
    }
}
