package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import settlemark.job.Progress;
import settlemark.measure.Role;
import settlemark.session.ChannelView;
import settlemark.session.Snapshot;
import settlemark.settle.SettlePhase;

class GapBarTest {
    private static final int WIDTH = 280;
    private static final int HEIGHT = 20;

    private static Showroom room() {
        return new Showroom().at("lock-up", Progress.ARMED, 60);
    }

    private static Map<SettlePhase, Gap> states() {
        Map<SettlePhase, Gap> states = new EnumMap<>(SettlePhase.class);
        states.put(SettlePhase.NO_DATA, gap(room().stale(Role.INLET)));
        states.put(SettlePhase.FILLING, gap(room().filling(Role.INLET, 14)));
        states.put(SettlePhase.MOVING, gap(room().moving(Role.INLET, 1.4)));
        states.put(SettlePhase.TOO_NOISY, gap(room().noisy(Role.INLET)));
        states.put(SettlePhase.HOLDING, gap(room().holding(Role.INLET)));
        states.put(SettlePhase.SETTLED, gap(room().settled(Role.INLET)));
        return states;
    }

    private static Gap state(SettlePhase phase) {
        return Objects.requireNonNull(states().get(phase));
    }

    private static Gap gap(Showroom room) {
        Snapshot snapshot = room.snapshot();
        ChannelView inlet = snapshot.channel(Role.INLET).orElseThrow();
        return Gap.of(inlet, snapshot.timeNanos());
    }

    private static BufferedImage painted(Gap gap) {
        GapBar bar = new GapBar(Painting.look());
        bar.setSize(WIDTH, HEIGHT);
        bar.show(gap);
        return Painting.paint(bar);
    }

    @Test
    void everyStateIsNamedAndSaysItsNumbers() {
        assertThat(state(SettlePhase.NO_DATA).word()).isEqualTo("no data 12 s");
        assertThat(state(SettlePhase.FILLING).word()).isEqualTo("gathering, 14 s to go");
        assertThat(state(SettlePhase.MOVING).word()).isEqualTo("moving");
        assertThat(state(SettlePhase.TOO_NOISY).word()).isEqualTo("too noisy to prove");
        assertThat(state(SettlePhase.HOLDING).word()).isEqualTo("proving, 2 s");
        assertThat(state(SettlePhase.SETTLED).word()).isEqualTo("settled, \u00b10.02");
        assertThat(state(SettlePhase.SETTLED).sentence()).isEqualTo("could still move 0.009, limit 0.02");
        assertThat(state(SettlePhase.MOVING).sentence()).isEqualTo("could still move 0.028, limit 0.02");
        assertThat(gap(room().swinging(Role.INLET, 1.6)).word()).isEqualTo("swings \u00b10.08");
        assertThat(gap(room().swinging(Role.INLET, 1.6)).sentence())
                .isEqualTo("could still move 0.010, limit 0.02, band \u00b10.05");
    }

    @Test
    void everyTwoStatesCanBeToldApartInGrey() {
        List<Map.Entry<SettlePhase, Gap>> states = List.copyOf(states().entrySet());
        for (int i = 0; i < states.size(); i++) {
            for (int j = i + 1; j < states.size(); j++) {
                int different = Painting.different(
                        painted(states.get(i).getValue()), painted(states.get(j).getValue()));
                assertThat(different)
                        .as(
                                "%s against %s",
                                states.get(i).getKey(), states.get(j).getKey())
                        .isGreaterThan(120);
            }
        }
    }

    @Test
    void aDriftIsCalledMovingThoughItAlsoSwings() {
        Showroom room = room().moving(Role.SUPPLY, 4).alsoSwinging(Role.SUPPLY, 7);
        Snapshot snapshot = room.snapshot();
        Gap gap = Gap.of(snapshot.channel(Role.SUPPLY).orElseThrow(), snapshot.timeNanos());
        assertThat(gap.word()).isEqualTo("moving");
        assertThat(gap.sentence()).isEqualTo("could still move 2.0, limit 0.5");
    }

    @Test
    void evenBarsOfTheSameLengthCanBeToldApart() {
        List<SettlePhase> withBars =
                List.of(SettlePhase.MOVING, SettlePhase.TOO_NOISY, SettlePhase.HOLDING, SettlePhase.SETTLED);
        for (SettlePhase one : withBars) {
            for (SettlePhase other : withBars) {
                if (one.compareTo(other) < 0) {
                    int different = Painting.different(
                            painted(new Gap(one, 1.3, 1, "", "", "")), painted(new Gap(other, 1.3, 1, "", "", "")));
                    assertThat(different).as("%s against %s", one, other).isGreaterThan(120);
                }
            }
        }
    }

    @Test
    void thePostsStayWhereTheyAre() {
        for (Map.Entry<SettlePhase, Gap> state : states().entrySet()) {
            if (state.getKey() != SettlePhase.NO_DATA) {
                BufferedImage image = painted(state.getValue());
                for (int x : new int[] {WIDTH / 4, WIDTH * 3 / 4}) {
                    assertThat(Painting.grey(image, x, 1))
                            .as("%s", state.getKey())
                            .isLessThan(80);
                    assertThat(Painting.grey(image, x, HEIGHT - 2)).isLessThan(80);
                    assertThat(Painting.grey(image, x + 5, 1)).isGreaterThan(200);
                }
            }
        }
    }

    @Test
    void theBarFitsBetweenThePostsWhenAndOnlyWhenItMovesLessThanItsLimit() {
        assertThat(reach(gap(room().settled(Role.INLET)))).isLessThan(WIDTH / 4);
        assertThat(reach(gap(room().holding(Role.INLET)))).isLessThan(WIDTH / 4);
        assertThat(reach(gap(room().moving(Role.INLET, 1.4)))).isGreaterThan(WIDTH / 4);
        assertThat(reach(gap(room().moving(Role.INLET, 30)))).isBetween(WIDTH / 2 - 2, WIDTH / 2);
    }

    /** How far dark pixels of the bar reach from the middle to the right, posts left out. */
    private static int reach(Gap gap) {
        BufferedImage image = painted(gap);
        int reach = 0;
        for (int x = WIDTH / 2; x < WIDTH; x++) {
            boolean post = Math.abs(x - WIDTH * 3 / 4) < 4;
            boolean dark = Painting.grey(image, x, HEIGHT / 2 - 4) < 128 || Painting.grey(image, x, HEIGHT / 2) < 128;
            if (dark
                    && !post
                    && (x - WIDTH / 2 == reach
                            || Painting.grey(image, x, HEIGHT / 2 - 4) < 128
                            || Painting.grey(image, x, HEIGHT / 2) < 60)) {
                reach = x - WIDTH / 2 + 1;
            }
        }
        return reach;
    }

    @Test
    void itIsSpokenInOneSentence() {
        GapBar bar = new GapBar(Painting.look());
        bar.show(gap(room().holding(Role.INLET)));
        assertThat(bar.getAccessibleContext().getAccessibleName())
                .isEqualTo("proving, 2 s; could still move 0.014, limit 0.02");
    }
}
