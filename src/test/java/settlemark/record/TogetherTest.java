package settlemark.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Sentences on whether the looks at one thing agree. */
final class TogetherTest {
    @Test
    void theSupplysDropStandsWithItsUncertaintyAndWhatItSpeaksFor() {
        // By hand from the job's figures: 7.80 at lock-up, 6.80 at high fire.
        List<String> supply = new Together(AshLane.job().record().job(), false).supply();
        assertThat(supply)
                .anySatisfy(s -> assertThat(s)
                        .startsWith(
                                "From lock-up to As left, high fire the inlet falls by 1.00 \u00B10.03 inH\u2082O."));
        assertThat(supply.get(supply.size() - 1)).contains("inH\u2082O from low to high stage");
    }

    @Test
    void withoutAClockedMeterThereIsNothingToHoldTogether() {
        assertThat(new Together(AshLane.job().record().job(), false).looks()).isEmpty();
    }
}
