package settlemark.seal;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.AlgorithmParameters;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.PrivateKey;
import java.security.PublicKey;
import java.security.SecureRandom;
import java.security.Signature;
import java.security.spec.PKCS8EncodedKeySpec;
import java.security.spec.X509EncodedKeySpec;
import java.util.Base64;
import java.util.HexFormat;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.crypto.Cipher;
import javax.crypto.EncryptedPrivateKeyInfo;
import javax.crypto.SecretKey;
import javax.crypto.SecretKeyFactory;
import javax.crypto.spec.PBEKeySpec;
import javax.crypto.spec.PBEParameterSpec;

/**
 * A workspace's key pair for seals: Ed25519 (RFC 8032), kept as PEM text (RFC 7468): the public key in the clear, the
 * private one in PKCS #8, encrypted where there is a pass phrase.
 */
public final class SealKey {
    private static final String ALGORITHM = "Ed25519";
    private static final String ENCRYPTION = "PBEWithHmacSHA256AndAES_256";
    private static final int ITERATIONS = 210_000;
    private static final int SALT_BYTES = 16;
    private static final int LINE = 64;
    private static final String PRIVATE = "PRIVATE KEY";
    private static final String ENCRYPTED = "ENCRYPTED PRIVATE KEY";
    private static final String PUBLIC = "PUBLIC KEY";

    private final PrivateKey privateKey;
    private final byte[] publicKey;

    private SealKey(PrivateKey privateKey, byte[] publicKey) {
        this.privateKey = privateKey;
        this.publicKey = publicKey;
    }

    /** A new key. */
    public static SealKey create() {
        try {
            KeyPair pair = KeyPairGenerator.getInstance(ALGORITHM).generateKeyPair();
            return new SealKey(pair.getPrivate(), pair.getPublic().getEncoded());
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("this Java has no " + ALGORITHM, e);
        }
    }

    /**
     * The key of a PEM text.
     *
     * @param passPhrase empty where the text is not encrypted
     * @throws SealException where the text holds no such key, the pass phrase is missing or wrong, or the two halves do
     *     not belong together
     */
    public static SealKey read(String pem, char[] passPhrase) throws SealException {
        byte[] open = block(pem, PUBLIC)
                .orElseThrow(() -> new SealException("the key file has no \"" + PUBLIC + "\"; take it from a backup"));
        try {
            SealKey key = new SealKey(privateKey(pem, passPhrase), open);
            byte[] probe = {1, 2, 3};
            Signature check = Signature.getInstance(ALGORITHM);
            check.initVerify(publicKey(open));
            check.update(probe);
            if (!check.verify(key.sign(probe))) {
                throw new SealException("the key file's private and public key do not belong together; take the file"
                        + " from a backup");
            }
            return key;
        } catch (GeneralSecurityException | IOException e) {
            throw new SealException("the key file cannot be read: wrong pass phrase, or not a key for seals", e);
        }
    }

    private static PrivateKey privateKey(String pem, char[] passPhrase)
            throws SealException, GeneralSecurityException, IOException {
        KeyFactory factory = KeyFactory.getInstance(ALGORITHM);
        Optional<byte[]> plain = block(pem, PRIVATE);
        if (plain.isPresent()) {
            return factory.generatePrivate(new PKCS8EncodedKeySpec(plain.get()));
        }
        byte[] encrypted = block(pem, ENCRYPTED)
                .orElseThrow(() -> new SealException("the key file has no \"" + PRIVATE + "\"; take it from a backup"));
        if (passPhrase.length == 0) {
            throw new SealException("the key for seals is protected; give its pass phrase");
        }
        EncryptedPrivateKeyInfo info = new EncryptedPrivateKeyInfo(encrypted);
        SecretKey secret = SecretKeyFactory.getInstance(ENCRYPTION).generateSecret(new PBEKeySpec(passPhrase));
        Cipher cipher = Cipher.getInstance(ENCRYPTION);
        cipher.init(Cipher.DECRYPT_MODE, secret, info.getAlgParameters());
        return factory.generatePrivate(info.getKeySpec(cipher));
    }

    /**
     * The key as PEM text.
     *
     * @param passPhrase empty for none
     */
    public String pem(char[] passPhrase) {
        String secret = passPhrase.length == 0
                ? text(PRIVATE, privateKey.getEncoded())
                : text(ENCRYPTED, encrypted(passPhrase));
        return secret + publicPem();
    }

    /** The public half as PEM text, for those who check. */
    public String publicPem() {
        return text(PUBLIC, publicKey);
    }

    private byte[] encrypted(char[] passPhrase) {
        try {
            byte[] salt = new byte[SALT_BYTES];
            new SecureRandom().nextBytes(salt);
            SecretKey secret = SecretKeyFactory.getInstance(ENCRYPTION).generateSecret(new PBEKeySpec(passPhrase));
            Cipher cipher = Cipher.getInstance(ENCRYPTION);
            cipher.init(Cipher.ENCRYPT_MODE, secret, new PBEParameterSpec(salt, ITERATIONS));
            // The scheme's own name is not one that the JDK can write into the key's head.
            AlgorithmParameters parameters = AlgorithmParameters.getInstance("PBES2");
            parameters.init(cipher.getParameters().getEncoded());
            byte[] bytes = cipher.doFinal(privateKey.getEncoded());
            return new EncryptedPrivateKeyInfo(parameters, bytes).getEncoded();
        } catch (GeneralSecurityException | IOException e) {
            throw new IllegalStateException("this Java cannot encrypt a key with " + ENCRYPTION, e);
        }
    }

    byte[] sign(byte[] message) {
        try {
            Signature signature = Signature.getInstance(ALGORITHM);
            signature.initSign(privateKey);
            signature.update(message);
            return signature.sign();
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("the key for seals cannot sign", e);
        }
    }

    static boolean holds(byte[] publicKey, byte[] message, byte[] signature) {
        try {
            Signature check = Signature.getInstance(ALGORITHM);
            check.initVerify(publicKey(publicKey));
            check.update(message);
            return check.verify(signature);
        } catch (GeneralSecurityException e) {
            return false;
        }
    }

    /** Whether a key's text needs a pass phrase. */
    public static boolean isProtected(String pem) {
        return pem.contains("-----BEGIN " + ENCRYPTED + "-----");
    }

    /**
     * The fingerprint of the public half in a PEM text, for which no pass phrase is needed.
     *
     * @throws SealException where there is none in it, or it is no Ed25519 key
     */
    public static String fingerprintIn(String pem) throws SealException {
        return fingerprint(publicIn(pem));
    }

    /** The public half in a PEM text as PEM text. */
    public static String publicPemIn(String pem) throws SealException {
        return text(PUBLIC, publicIn(pem));
    }

    private static byte[] publicIn(String pem) throws SealException {
        byte[] open = block(pem, PUBLIC).orElseThrow(() -> new SealException("there is no \"" + PUBLIC + "\" in it"));
        try {
            publicKey(open);
            return open;
        } catch (GeneralSecurityException e) {
            throw new SealException("its public key is none for seals (" + ALGORITHM + ")", e);
        }
    }

    /** In X.509 form (RFC 8410). */
    byte[] publicKey() {
        return publicKey.clone();
    }

    /** The key as people compare it. */
    public String fingerprint() {
        return fingerprint(publicKey);
    }

    static PublicKey publicKey(byte[] encoded) throws GeneralSecurityException {
        return KeyFactory.getInstance(ALGORITHM).generatePublic(new X509EncodedKeySpec(encoded));
    }

    /** First half of the SHA-256 of the X.509 form, in groups of four hex digits. */
    static String fingerprint(byte[] encoded) {
        byte[] digest = HashTree.sha256().digest(encoded);
        return HexFormat.of().formatHex(digest, 0, 16).replaceAll("(.{4})(?!$)", "$1 ");
    }

    private static String text(String kind, byte[] bytes) {
        String body = Base64.getMimeEncoder(LINE, "\n".getBytes(StandardCharsets.US_ASCII))
                .encodeToString(bytes);
        return "-----BEGIN " + kind + "-----\n" + body + "\n-----END " + kind + "-----\n";
    }

    private static Optional<byte[]> block(String pem, String kind) throws SealException {
        Matcher found = Pattern.compile("-----BEGIN " + kind + "-----([A-Za-z0-9+/=\\s]*)-----END " + kind + "-----")
                .matcher(pem);
        if (!found.find()) {
            return Optional.empty();
        }
        try {
            return Optional.of(Base64.getMimeDecoder().decode(found.group(1)));
        } catch (IllegalArgumentException e) {
            throw new SealException("the key file's \"" + kind + "\" is damaged; take it from a backup", e);
        }
    }
}
