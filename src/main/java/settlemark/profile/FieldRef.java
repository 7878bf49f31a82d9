package settlemark.profile;

/**
 * A field of a message.
 *
 * @param message index in the profile's messages
 * @param field index in the message's fields
 */
public record FieldRef(int message, int field) {}
