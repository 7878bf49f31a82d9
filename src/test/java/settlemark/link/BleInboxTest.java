package settlemark.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import org.junit.jupiter.api.Test;
import settlemark.session.Ticker;

final class BleInboxTest {
    private long now = 100;
    private final BleInbox inbox = new BleInbox(
            new Ticker() {
                @Override
                public long nanos() {
                    return now;
                }

                @Override
                public Instant wall() {
                    return Instant.EPOCH;
                }
            },
            2);

    @Test
    void aLinkIsUpBeforeTheFirstValueThatWaits() {
        assertThat(inbox.sinceNanos()).isEqualTo(100);
        now = 200;
        inbox.add(0, new byte[] {1});
        now = 300;
        inbox.add(0, new byte[] {2});
        assertThat(inbox.sinceNanos()).isEqualTo(200);
        assertThat(inbox.take(0)).hasSize(2);
        assertThat(inbox.sinceNanos()).isEqualTo(300);
    }

    @Test
    void whatDoesNotFitIsCountedOnce() {
        for (int i = 0; i < 5; i++) {
            inbox.add(0, new byte[] {1});
        }
        assertThat(inbox.takeDropped()).isEqualTo(3);
        assertThat(inbox.takeDropped()).isZero();
        assertThat(inbox.take(0)).hasSize(2);
    }
}
