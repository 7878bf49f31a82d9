package settlemark.record;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** What the record says of the supply's pressure under load. */
final class SupplyDropsTest {
    @Test
    void theSupplysDropStandsWithItsUncertainty() {
        // By hand from the job's figures: 7.80 at lock-up, 6.80 at high fire.
        assertThat(new SupplyDrops(AshLane.job().record().job()).lines())
                .anySatisfy(s -> assertThat(s)
                        .startsWith(
                                "From lock-up to As left, high fire the inlet falls by 1.00 \u00B10.03 inH\u2082O."));
    }
}
