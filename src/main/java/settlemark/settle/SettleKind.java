package settlemark.settle;

/** What kind of channel a detector watches; each has its own default {@link SettleSettings}. */
public enum SettleKind {
    GAS,
    AIR,
    STACK
}
