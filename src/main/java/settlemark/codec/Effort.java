package settlemark.codec;

/** How hard to look for the shortest form. What is read back is the same. */
enum Effort {
    /** For what is soon packed again. */
    QUICK,
    /** For what stays. */
    THOROUGH
}
