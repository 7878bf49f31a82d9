package settlemark.profile;

/** How the frames of a message are protected. */
public enum Cipher {
    /**
     * As the open BTHome format version 2 has it: where bit 0 of the first byte is set, AES-CCM with a 16-byte key, a
     * 4-byte tag, and a nonce of device address, the service's UUID, the first byte and a counter (RFC 3610; the format's
     * page on encryption). Frames without that bit are plain.
     */
    BTHOME_V2
}
