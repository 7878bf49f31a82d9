package settlemark.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import settlemark.codec.Groups;

/** Each statistic that is another one is noticed, and the rounding of a mean's sum is not. */
final class LevelsTest {
    private static Groups groups(int probe, int channel) {
        return new Groups(
                probe,
                channel,
                new long[] {0, 10},
                new long[] {9, 19},
                new long[] {128, 100},
                new double[] {-4, 1},
                new double[] {6, 1},
                new double[] {0.25, 1},
                new double[] {1, 1},
                new double[] {2, 1});
    }

    static Stream<Arguments> changes() {
        return Stream.of(
                change("low", g -> g.lows()[1]++),
                change("high", g -> g.highs()[1]++),
                change("count", g -> g.counts()[1]++),
                change("smallest", g -> g.mins()[0] = -3),
                change("largest", g -> g.maxs()[1] = 2),
                change("mean", g -> g.means()[0] += 1e-7),
                change("mean of nothing", g -> g.means()[0] = Double.NaN),
                change("first", g -> g.firsts()[0] = -1),
                change("last", g -> g.lasts()[1] = Math.nextUp(1.0)));
    }

    private static Arguments change(String name, Consumer<Groups> change) {
        return Arguments.of(name, change);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("changes")
    void aStatisticThatIsAnotherOneIsNoticed(String name, Consumer<Groups> change) {
        Groups changed = groups(0, 3);
        change.accept(changed);
        assertThat(Levels.difference(List.of(groups(0, 2), groups(0, 3)), List.of(groups(0, 2), changed)))
                .as(name)
                .contains(3);
        assertThat(Levels.difference(List.of(groups(0, 2), changed), List.of(groups(0, 2), groups(0, 3))))
                .contains(3);
    }

    @Test
    void theRoundingOfASumIsNoDifference() {
        Groups rounded = groups(0, 0);
        rounded.means()[0] = Math.nextUp(0.25);
        assertThat(Levels.difference(List.of(groups(0, 0)), List.of(rounded))).isEmpty();
    }

    @Test
    void aChannelMoreOrLessAndAnotherProbeAreNoticed() {
        assertThat(Levels.difference(List.of(groups(0, 0), groups(0, 1)), List.of(groups(0, 0))))
                .contains(1);
        assertThat(Levels.difference(List.of(groups(0, 0)), List.of(groups(0, 0), groups(0, 1))))
                .contains(1);
        assertThat(Levels.difference(List.of(groups(0, 0)), List.of(groups(1, 0))))
                .contains(0);
        assertThat(Levels.difference(List.of(groups(0, 0)), List.of(Groups.none(0, 0))))
                .contains(0);
    }

    @Test
    void aRowIsAskedForWhereEightBelowItHaveCome() throws Exception {
        List<String> asked = new ArrayList<>();
        Levels levels = new Levels((level, number, expected) -> {
            asked.add(level + "/" + number
                    + (expected.isEmpty()
                            ? " unknown"
                            : " of " + expected.get(0).size()));
            return expected;
        });
        int rows = Sealing.FAN * Sealing.FAN;
        for (int i = 0; i < rows; i++) {
            levels.add(0, i == rows - 1 ? List.of() : List.of(groups(0, 0)));
        }
        assertThat(asked)
                .hasSize(Sealing.FAN + 1)
                .contains("1/0 of 8", "1/7 unknown")
                .endsWith("2/0 unknown");
        assertThat(Optional.of(asked.get(6))).contains("1/6 of 8");
    }
}
