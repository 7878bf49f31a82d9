package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import settlemark.job.Act;
import settlemark.job.Progress;

/** What a press at a step does, and what the demo's hands do with it, without a window. */
class StepPressesTest {
    private final FakeHands hands = new FakeHands();

    private static DeskPaneTest.Bench bench(Showroom room) {
        return DeskPaneTest.onEdt(() -> new DeskPaneTest.Bench(room, 1280, 720, 1));
    }

    private static Scene scene(Showroom room) {
        return bench(room).scene();
    }

    /** Waits until the event thread has done what was put there. */
    private static void settle() {
        DeskPaneTest.onEdt(() -> 0);
    }

    @Test
    void theItemOfANumberIsTickedAndANumberThatTheStepHasNotDoesNothing() {
        Scene now = scene(new Showroom().at("close", Progress.OPEN, 20));
        FakeDesk desk = new FakeDesk(now.snapshot());
        StepPresses presses = new StepPresses(desk, new DemoFollower(Optional.empty()));
        List<String> items = now.open().step().ticks();
        presses.tick(now, 0);
        presses.tick(now, items.size());
        assertThat(desk.acts()).containsExactly(new Act.Tick("close", items.get(0), true));
    }

    @Test
    void withoutADemoAPressIsOnlyTheAct() {
        Scene now = scene(new Showroom().at("lock-up", Progress.OPEN, 20));
        FakeDesk desk = new FakeDesk(now.snapshot());
        DemoFollower nobody = new DemoFollower(Optional.empty());
        new StepPresses(desk, nobody).press(now);
        assertThat(desk.acts()).containsExactly(new Act.Confirm("lock-up"));
        assertThat(nobody.isDemo()).isFalse();
        assertThat(nobody.state()).isEmpty();
        assertThat(nobody.analysis(now.open())).isEmpty();
    }

    @Test
    void thePressThatBeginsARiseSaysTheStateOfTheSiteAndTheStepTellsItBeforehand() {
        DeskPaneTest.Bench bench = bench(new Showroom().at("found-low", Progress.OPEN, 20));
        assertThat(bench.pane().step().sentence())
                .contains("The press says too: Blower doors on, filter in; Bypass and dampers as in use; "
                        + "Room doors and windows closed.");
        bench.perform(Deed.TICK_1);
        assertThat(bench.desk.acts())
                .as("nothing is said yet that could be taken back")
                .isEmpty();
        bench.perform(Deed.PRIMARY);
        assertThat(bench.desk.acts())
                .containsExactly(
                        new Act.Tick("found-low", "Blower doors on, filter in", true),
                        new Act.Tick("found-low", "Bypass and dampers as in use", true),
                        new Act.Tick("found-low", "Room doors and windows closed", true),
                        new Act.Confirm("found-low"));
    }

    @Test
    void theHandsCallForAStageOnceForEachTimeThatItIsComeTo() {
        Scene left = scene(new Showroom().at("left-low", Progress.OPEN, 20).adjusting());
        Scene close = scene(new Showroom().at("close", Progress.OPEN, 20));
        DemoFollower demo = new DemoFollower(Optional.of(hands));
        demo.follow(left);
        demo.follow(left);
        assertThat(hands.done()).containsExactly("ports false", "call LOW", "cap false");
        demo.follow(close);
        demo.follow(left);
        assertThat(hands.done()).hasSize(6);
    }

    @Test
    void whoLooksBackLeavesTheHandsWhereTheyAre() {
        DemoFollower demo = new DemoFollower(Optional.of(hands));
        DeskPaneTest.Bench bench =
                bench(new Showroom().at("left-low", Progress.OPEN, 20).adjusting());
        bench.perform(Deed.FIRST);
        demo.follow(bench.scene());
        assertThat(hands.done()).isEmpty();
    }

    @Test
    void theRecordIsBeingMadeUntilItIsWrittenOrHasFailed() {
        FakeHost host = new FakeHost();
        int[] changes = {0};
        RecordMaking record = new RecordMaking(host, () -> changes[0]++);
        assertThat(record.state()).isEqualTo(RecordState.NONE);
        record.begin();
        assertThat(record.state()).isEqualTo(RecordState.MAKING);
        host.failed("the disk is full");
        settle();
        assertThat(record.state().failure()).isEqualTo("the disk is full");
        record.begin();
        host.written(Path.of("record.pdf"));
        settle();
        assertThat(record.state().files()).containsExactly(Path.of("record.pdf"));
        assertThat(changes[0]).isEqualTo(2);
    }
}
