package settlemark.link;

import java.time.Duration;

/**
 * Limits of Bluetooth links.
 *
 * @param open until an opening that has not succeeded has failed
 * @param hear until a probe that is not heard is said to be missing
 * @param connect for the radio link to come up, to a probe that has just been heard
 * @param resolve for the services to be read, and again for the profile's characteristics to appear among them
 * @param settled services without a wanted characteristic that have not changed for this long will not have it
 * @param call for any other call of the Bluetooth service
 * @param look how long a look around takes
 * @param firstRetry pause after the first failure; it doubles up to {@code lastRetry}
 * @param lastRetry longest pause between two attempts
 * @param leastSilence a probe that stays silent is stale after three periods, but not sooner than this; each further step
 *     towards taking it up again takes as long
 * @param scanSilence a scan that hears nobody is started anew after this
 * @param linksPerAdapter connections at a time
 * @param settle for all that the service says of a loss to come in, before it is put in words
 * @param inboxChunks that may wait to be delivered
 */
record BleSettings(
        Duration open,
        Duration hear,
        Duration connect,
        Duration resolve,
        Duration settled,
        Duration call,
        Duration look,
        Duration firstRetry,
        Duration lastRetry,
        Duration leastSilence,
        Duration scanSilence,
        Duration settle,
        int linksPerAdapter,
        int inboxChunks) {
    static final BleSettings USUAL = new BleSettings(
            Duration.ofSeconds(40),
            Duration.ofSeconds(20),
            Duration.ofSeconds(10),
            Duration.ofSeconds(20),
            Duration.ofSeconds(5),
            Duration.ofSeconds(10),
            Duration.ofSeconds(3),
            Duration.ofMillis(300),
            Duration.ofSeconds(5),
            Duration.ofSeconds(2),
            Duration.ofSeconds(10),
            Duration.ofMillis(400),
            6,
            8192);
}
