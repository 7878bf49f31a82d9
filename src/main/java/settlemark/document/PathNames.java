package settlemark.document;

/** How a value is called in a message: by its key, an item of a list by the list's key and its number from 1. */
final class PathNames {
    private PathNames() {}

    static String of(String pointer) {
        if (pointer.isEmpty()) {
            return "the document";
        }
        String last = last(pointer);
        if (!isIndex(last)) {
            return last;
        }
        String list = last(pointer.substring(0, pointer.lastIndexOf('/')));
        return "item " + (Integer.parseInt(last) + 1) + " of " + (list.isEmpty() ? "the document" : list);
    }

    /** The last key or index of a pointer, unescaped. */
    static String last(String pointer) {
        return pointer.substring(pointer.lastIndexOf('/') + 1)
                .replace("~1", "/")
                .replace("~0", "~");
    }

    static String escaped(String key) {
        return key.replace("~", "~0").replace("/", "~1");
    }

    private static boolean isIndex(String name) {
        return !name.isEmpty() && name.length() < 9 && name.chars().allMatch(c -> c >= '0' && c <= '9');
    }
}
