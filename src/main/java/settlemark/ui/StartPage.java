package settlemark.ui;

/** What is open before there is a session. */
enum StartPage {
    FIRST,
    PLATE,
    PROBES
}
