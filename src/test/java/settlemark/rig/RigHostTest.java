package settlemark.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import settlemark.measure.Chunk;
import settlemark.session.LinkChange;
import settlemark.session.LinkException;
import settlemark.session.LinkListener;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeLink;
import settlemark.session.Ticker;

class RigHostTest {
    private final DemoRig rig = new DemoRig(new DemoRig.Settings(3, false));
    private final RigHost host = new RigHost(rig);
    private final List<Chunk> chunks = new ArrayList<>();
    private final List<LinkChange> changes = new ArrayList<>();
    private final LinkListener listener = new LinkListener() {
        @Override
        public void arrived(Chunk chunk) {
            chunks.add(chunk);
        }

        @Override
        public void changed(long timeNanos, LinkChange change, String words) {
            assertThat(timeNanos).isEqualTo(5_000_000_000L);
            changes.add(change);
        }
    };
    private final Ticker ticker = new Ticker() {
        @Override
        public long nanos() {
            return 5_000_000_000L;
        }

        @Override
        public Instant wall() {
            return Instant.EPOCH;
        }
    };

    @Test
    void offersBothInstrumentsAsSimulated() {
        assertThat(host.found())
                .hasSize(2)
                .allMatch(found -> found.description().contains("SIMULATED"))
                .extracting(found -> found.address().toString())
                .containsExactly("rig:gauge", "rig:air");
        assertThat(DemoInstrument.GAUGE.profile().simulated()).isTrue();
        assertThat(DemoInstrument.AIR.profile().simulated()).isTrue();
    }

    @Test
    void bytesArriveOnlyWhileTheLinkIsOpen() throws LinkException {
        rig.advanceTo(5_000_000_000L);
        ProbeLink link = host.open(RigHost.address(DemoInstrument.AIR), DemoInstrument.AIR.profile(), ticker, listener);
        rig.advanceTo(10_000_000_000L);
        int whileOpen = chunks.size();
        link.close();
        rig.advanceTo(15_000_000_000L);
        assertThat(changes).containsExactly(LinkChange.UP);
        assertThat(whileOpen).isBetween(50, 200);
        assertThat(chunks).hasSize(whileOpen);
        assertThat(chunks.get(0).timeNanos()).isGreaterThan(5_000_000_000L);
    }

    @Test
    void namesWhatThereIsWhenAskedForSomethingElse() {
        assertThatThrownBy(() ->
                        host.open(new ProbeAddress("rig", "draft"), DemoInstrument.AIR.profile(), ticker, listener))
                .isInstanceOf(LinkException.class)
                .hasMessageContaining("\"draft\"")
                .hasMessageContaining("gauge and air");
    }
}
