package settlemark.link;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.freedesktop.dbus.types.Variant;
import org.jspecify.annotations.Nullable;

/** What travels on the bus, in plain types. A value of another type than expected counts as absent, never as a fault. */
final class BluezValues {
    private BluezValues() {}

    static @Nullable Object plain(@Nullable Object value) {
        return value instanceof Variant<?> variant ? plain(variant.getValue()) : value;
    }

    /** A dictionary of properties; keys that are no text are left out. */
    static Map<String, Object> properties(@Nullable Object value) {
        Map<String, Object> properties = new HashMap<>();
        if (plain(value) instanceof Map<?, ?> map) {
            map.forEach((key, v) -> {
                Object plain = plain(v);
                if (key instanceof String name && plain != null) {
                    properties.put(name, plain);
                }
            });
        }
        return properties;
    }

    /** A byte array comes as an array in answers and as a list within a variant. */
    static Optional<byte[]> bytes(@Nullable Object value) {
        Object plain = plain(value);
        if (plain instanceof byte[] array) {
            return Optional.of(array);
        }
        if (plain instanceof Byte[] array) {
            return bytes(List.of(array));
        }
        return plain instanceof List<?> list ? unboxed(list) : Optional.empty();
    }

    private static Optional<byte[]> unboxed(List<?> list) {
        byte[] bytes = new byte[list.size()];
        for (int i = 0; i < bytes.length; i++) {
            if (!(list.get(i) instanceof Byte b)) {
                return Optional.empty();
            }
            bytes[i] = b;
        }
        return Optional.of(bytes);
    }

    static Optional<String> text(@Nullable Object value) {
        Object plain = plain(value);
        return plain instanceof String || plain instanceof org.freedesktop.dbus.DBusPath
                ? Optional.of(plain.toString())
                : Optional.empty();
    }

    static boolean isTrue(@Nullable Object value) {
        return Boolean.TRUE.equals(plain(value));
    }

    static Optional<Integer> number(@Nullable Object value) {
        return plain(value) instanceof Number number ? Optional.of(number.intValue()) : Optional.empty();
    }

    static List<String> texts(@Nullable Object value) {
        Object plain = plain(value);
        List<String> texts = new ArrayList<>();
        if (plain instanceof List<?> list) {
            list.forEach(v -> text(v).ifPresent(texts::add));
        } else if (plain instanceof Object[] array) {
            for (Object v : array) {
                text(v).ifPresent(texts::add);
            }
        }
        return texts;
    }

    /** Advertised data by the text of its key: a UUID or a company identifier in decimal digits. */
    static Map<String, byte[]> data(@Nullable Object value) {
        Map<String, byte[]> data = new HashMap<>();
        if (plain(value) instanceof Map<?, ?> map) {
            map.forEach((key, v) -> bytes(v).ifPresent(bytes -> data.put(String.valueOf(key), bytes)));
        }
        return data;
    }
}
