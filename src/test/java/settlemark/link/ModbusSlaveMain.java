package settlemark.link;

import com.digitalpetri.modbus.exceptions.ModbusResponseException;
import com.digitalpetri.modbus.exceptions.UnknownUnitIdException;
import com.digitalpetri.modbus.pdu.ReadHoldingRegistersRequest;
import com.digitalpetri.modbus.pdu.ReadHoldingRegistersResponse;
import com.digitalpetri.modbus.pdu.ReadInputRegistersRequest;
import com.digitalpetri.modbus.pdu.ReadInputRegistersResponse;
import com.digitalpetri.modbus.serial.server.SerialPortServerTransport;
import com.digitalpetri.modbus.server.ModbusRequestContext;
import com.digitalpetri.modbus.server.ModbusRtuServer;
import com.digitalpetri.modbus.server.ModbusServices;
import java.nio.ByteBuffer;
import java.util.concurrent.CountDownLatch;

/**
 * Two Modbus devices on one line, by a library that has nothing to do with the program. Unit 17: holding registers 107 to
 * 109 are 555, -20, 100; input registers 8 and 9 are 1013.25 in IEEE 754. Unit 18: the same with other numbers.
 */
final class ModbusSlaveMain {
    private ModbusSlaveMain() {}

    public static void main(String[] args) throws Exception {
        SerialPortServerTransport transport = SerialPortServerTransport.create(
                config -> config.setSerialPort(args[0]).setBaudRate(19_200));
        ModbusRtuServer.create(transport, new TwoUnits()).start();
        System.out.println("UP");
        new CountDownLatch(1).await();
    }

    private static final class TwoUnits implements ModbusServices {
        @Override
        public ReadHoldingRegistersResponse readHoldingRegisters(
                ModbusRequestContext context, int unit, ReadHoldingRegistersRequest request)
                throws ModbusResponseException, UnknownUnitIdException {
            ByteBuffer registers = ByteBuffer.allocate(6);
            registers.putShort((short) (unit == 17 ? 555 : 333));
            registers.putShort((short) -20).putShort((short) 100);
            return new ReadHoldingRegistersResponse(
                    part(unit, 3, request.address(), request.quantity(), 107, registers));
        }

        @Override
        public ReadInputRegistersResponse readInputRegisters(
                ModbusRequestContext context, int unit, ReadInputRegistersRequest request)
                throws ModbusResponseException, UnknownUnitIdException {
            ByteBuffer registers = ByteBuffer.allocate(4).putFloat(unit == 17 ? 1013.25f : -40.5f);
            return new ReadInputRegistersResponse(part(unit, 4, request.address(), request.quantity(), 8, registers));
        }

        private static byte[] part(int unit, int function, int address, int quantity, int first, ByteBuffer registers)
                throws ModbusResponseException, UnknownUnitIdException {
            if (unit != 17 && unit != 18) {
                throw new UnknownUnitIdException(unit);
            }
            int from = 2 * (address - first);
            if (from < 0 || from + 2 * quantity > registers.capacity()) {
                throw new ModbusResponseException(function, 2);
            }
            byte[] bytes = new byte[2 * quantity];
            registers.get(from, bytes);
            return bytes;
        }
    }
}
