package settlemark.profile;

import java.util.Optional;

/** What is known beside an example's bytes. No message ever shows the key. */
final class CircumstancesReader {
    private static final int PRESENTATION_BYTES = 7;
    private static final int MEASUREMENT_BYTES = 11;

    private final Section example;
    private final MessageDraft message;

    CircumstancesReader(Section example, MessageDraft message) {
        this.example = example;
        this.message = message;
    }

    /** Empty where something is wrong. */
    Optional<Example.Circumstances> read() {
        boolean secret = secretsFit();
        boolean presentation = descriptorFits("presentation", "presentation-format", PRESENTATION_BYTES);
        boolean measurement = descriptorFits("measurement", "measurement", MEASUREMENT_BYTES);
        if (!secret || !presentation || !measurement) {
            return Optional.empty();
        }
        ByteText address = ByteText.ofHex(example.text("address", "").replaceAll("[:-]", ""));
        ByteText key = ByteText.ofHex(example.text("key", ""));
        return Optional.of(
                new Example.Circumstances(new Secrets(address, key), bytes("presentation"), bytes("measurement")));
    }

    private boolean secretsFit() {
        boolean plain = !message.section().has("cipher");
        for (String key : example.present(java.util.List.of("key", "address"))) {
            if (plain) {
                example.error(key, key + " needs a cipher in its message; remove it");
                return false;
            }
        }
        if (example.has("key") && !example.has("address")) {
            example.error("key", "key needs address beside it: the address of the device is part of the cipher");
            return false;
        }
        return true;
    }

    private boolean descriptorFits(String key, String flag, int length) {
        if (!example.has(key)) {
            return true;
        }
        boolean honoured = message.section()
                .child("characteristic")
                .filter(characteristic -> characteristic.flag(flag))
                .isPresent();
        if (!honoured) {
            example.error(key, key + " needs characteristic: {" + flag + ": true} in its message; remove it");
            return false;
        }
        Optional<ByteText> bytes = Words.hex(example, key);
        if (bytes.isPresent() && bytes.get().length() != length) {
            example.error(
                    key,
                    key + " must have " + length + " bytes, got " + bytes.get().length());
            return false;
        }
        return bytes.isPresent();
    }

    private Optional<ByteText> bytes(String key) {
        return example.has(key) ? Optional.of(ByteText.ofHex(example.text(key, ""))) : Optional.empty();
    }
}
