package settlemark.decode;

import org.bouncycastle.crypto.InvalidCipherTextException;
import org.bouncycastle.crypto.engines.AESEngine;
import org.bouncycastle.crypto.modes.CCMBlockCipher;
import org.bouncycastle.crypto.modes.CCMModeCipher;
import org.bouncycastle.crypto.params.AEADParameters;
import org.bouncycastle.crypto.params.KeyParameter;
import settlemark.profile.Secrets;
import settlemark.profile.Wire;

/**
 * The encryption of the open BTHome format, version 2: AES-CCM (RFC 3610) with a key of 16 bytes and a tag of 4 bytes.
 * A frame is the device information byte, the encrypted values, a counter of 4 bytes and the tag; the nonce is the
 * device's address, the service's UUID with its low byte first, the information byte and the counter. Source: the
 * format's page on encryption.
 */
final class BthomeCipher implements FrameCipher {
    private static final int ENCRYPTED = 1;
    private static final int COUNTER_BYTES = 4;
    private static final int TAG_BYTES = 4;
    private static final int AROUND_BYTES = 1 + COUNTER_BYTES + TAG_BYTES;
    private static final byte[] UUID = {(byte) 0xD2, (byte) 0xFC};

    private final Secrets secrets;

    BthomeCipher(Secrets secrets) {
        this.secrets = secrets;
    }

    @Override
    public boolean isClosed(byte[] bytes, int from, int to) {
        return to > from && (bytes[from] & ENCRYPTED) != 0;
    }

    @Override
    public boolean canClose() {
        return !secrets.key().isEmpty() && !secrets.address().isEmpty();
    }

    @Override
    public Opened open(byte[] bytes, int from, int to) {
        if (secrets.key().isEmpty()) {
            return refused("the frame is encrypted and needs a key");
        }
        if (secrets.address().isEmpty()) {
            return refused("the frame is encrypted and needs the device's address beside the key");
        }
        if (to - from < AROUND_BYTES) {
            return refused("an encrypted frame has at least " + AROUND_BYTES + " bytes, got " + (to - from));
        }
        int counterAt = to - TAG_BYTES - COUNTER_BYTES;
        byte[] sealed = new byte[to - from - 1 - COUNTER_BYTES];
        System.arraycopy(bytes, from + 1, sealed, 0, counterAt - from - 1);
        System.arraycopy(bytes, to - TAG_BYTES, sealed, sealed.length - TAG_BYTES, TAG_BYTES);
        byte[] plain = new byte[sealed.length - TAG_BYTES + 1];
        plain[0] = bytes[from];
        try {
            run(false, nonce(bytes[from], bytes, counterAt), sealed, plain, 1);
        } catch (InvalidCipherTextException e) {
            return refused("the frame does not open: its tag is wrong, so that key, address or bytes are not its own");
        }
        return new Opened(plain, null);
    }

    private static Opened refused(String complaint) {
        return new Opened(new byte[0], complaint);
    }

    @Override
    public long counter(byte[] bytes, int from, int to) {
        int at = to - TAG_BYTES - COUNTER_BYTES;
        return at < from ? 0 : RawBits.bits(bytes, at, COUNTER_BYTES, Wire.Order.LITTLE);
    }

    @Override
    public byte[] marked(byte[] plain, boolean closed) {
        byte[] marked = plain.clone();
        if (marked.length > 0) {
            marked[0] = (byte) (closed ? marked[0] | ENCRYPTED : marked[0] & ~ENCRYPTED);
        }
        return marked;
    }

    @Override
    public byte[] close(byte[] plain, long counter) {
        byte[] frame = new byte[plain.length + COUNTER_BYTES + TAG_BYTES];
        byte[] sealed = new byte[plain.length - 1 + TAG_BYTES];
        byte[] values = new byte[plain.length - 1];
        System.arraycopy(plain, 1, values, 0, values.length);
        int counterAt = plain.length;
        frame[0] = plain[0];
        RawBits.writeBits(counter, frame, counterAt, COUNTER_BYTES, Wire.Order.LITTLE);
        try {
            run(true, nonce(plain[0], frame, counterAt), values, sealed, 0);
        } catch (InvalidCipherTextException e) {
            throw new IllegalStateException("encrypting checks no tag", e);
        }
        System.arraycopy(sealed, 0, frame, 1, values.length);
        System.arraycopy(sealed, values.length, frame, frame.length - TAG_BYTES, TAG_BYTES);
        return frame;
    }

    private byte[] nonce(byte information, byte[] bytes, int counterAt) {
        byte[] nonce = new byte[13];
        System.arraycopy(secrets.address().toBytes(), 0, nonce, 0, 6);
        System.arraycopy(UUID, 0, nonce, 6, 2);
        nonce[8] = information;
        System.arraycopy(bytes, counterAt, nonce, 9, COUNTER_BYTES);
        return nonce;
    }

    private void run(boolean encrypt, byte[] nonce, byte[] in, byte[] out, int outAt)
            throws InvalidCipherTextException {
        CCMModeCipher ccm = CCMBlockCipher.newInstance(AESEngine.newInstance());
        KeyParameter key = new KeyParameter(secrets.key().toBytes());
        ccm.init(encrypt, new AEADParameters(key, 8 * TAG_BYTES, nonce));
        int count = ccm.processBytes(in, 0, in.length, out, outAt);
        ccm.doFinal(out, outAt + count);
    }
}
