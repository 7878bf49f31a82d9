package settlemark.profile;

import java.util.Optional;

/**
 * What the fields of a message need to know of it.
 *
 * @param registers where the message is a Modbus answer
 * @param registersWrong whether it is one whose request could not be read
 * @param addressBase what the document calls the first register
 */
record FrameScope(Optional<Source.Registers> registers, boolean registersWrong, int addressBase) {
    boolean isModbus() {
        return registersWrong || registers.isPresent();
    }
}
