package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import settlemark.measure.Chunk;

/** Frames of six bytes, A5 01 and four that count, without a window. */
class DraftingTest {
    private static Chunk frame(int number) {
        byte[] bytes = {(byte) 0xA5, 1, 0, 0, (byte) (number >> 8), (byte) number};
        return new Chunk(number * 100_000_000L, 0, bytes);
    }

    private static Drafting heard(int frames) {
        List<Chunk> chunks = new ArrayList<>();
        for (int i = 0; i < frames; i++) {
            chunks.add(frame(i));
        }
        Drafting drafting = new Drafting();
        drafting.replace(chunks);
        return drafting;
    }

    private static WorkshopDraft.Picked field(String name, int from) {
        return new WorkshopDraft.Picked(name, from, 2, "int", true, 1, "Pa");
    }

    @Test
    void framesAreCutAtOnceAndTheTextWaitsForAField() {
        Drafting drafting = heard(20);
        assertThat(drafting.draft().lengthBytes()).isEqualTo(6);
        assertThat(drafting.text()).isEmpty();
        drafting.change(drafting.draft().with(field("inlet", 4)));
        assertThat(drafting.text()).contains("inlet");
    }

    @Test
    void theFirstBytesBeginEachFrameAndThatCanBeTakenBack() {
        Drafting drafting = heard(20);
        assertThat(drafting.start(2)).isTrue();
        assertThat(drafting.draft().startBytes()).isEqualTo(2);
        assertThat(drafting.takeBack()).isTrue();
        assertThat(drafting.draft().startBytes()).isZero();
        assertThat(drafting.takeBack()).isFalse();
        assertThat(new Drafting().start(2)).as("there is no frame to begin").isFalse();
    }

    @Test
    void changesAreTakenBackOneByOneLastFirst() {
        Drafting drafting = heard(20);
        drafting.change(drafting.draft().with(field("inlet", 2)));
        drafting.change(drafting.draft().with(field("manifold", 4)));
        drafting.takeBack();
        assertThat(drafting.draft().fields())
                .extracting(WorkshopDraft.Picked::name)
                .containsExactly("inlet");
        drafting.takeBack();
        assertThat(drafting.draft().fields()).isEmpty();
    }

    @Test
    void ofALiveStreamOnlyTheLastBytesAreKept() {
        Drafting drafting = heard(1);
        for (int i = 1; i <= 1000; i++) {
            drafting.follow(frame(i));
        }
        List<byte[]> frames = drafting.frames();
        assertThat(frames.size()).isLessThanOrEqualTo(400);
        assertThat(frames.get(frames.size() - 1)).containsExactly(0xA5, 1, 0, 0, 1000 >> 8, 1000 & 0xFF);
    }

    @Test
    void aDraftIsPutBackAsItWas() {
        Drafting before = heard(60);
        before.start(2);
        before.change(before.draft().with(field("inlet", 2)));
        before.change(before.draft().with(new WorkshopDraft.Picked("flow", 4, 2, "uint", false, -0.25, "[in_i'H2O]")));
        Drafting after = new Drafting();
        after.putBack(before.kept());
        assertThat(after.draft()).isEqualTo(before.draft());
        assertThat(after.frames()).as("the newest").hasSize(40);
        assertThat(after.frames().get(39)).isEqualTo(before.frames().get(59));
        assertThat(after.kept()).isEqualTo(before.kept());
        assertThat(after.takeBack()).as("what was done before is done").isFalse();
    }

    @Test
    void withoutFramesNothingIsKeptAndWhatIsNoDraftIsRefused() {
        assertThat(new Drafting().kept()).isEmpty();
        Map<String, String> kept = new HashMap<>(heard(3).kept());
        kept.put("fields", "inlet 2 2 int true");
        assertThatThrownBy(() -> new Drafting().putBack(kept)).hasMessageContaining("7 parts");
        kept.put("fields", "");
        kept.put("frames", "a5z1");
        assertThatThrownBy(() -> new Drafting().putBack(kept)).isInstanceOf(IllegalArgumentException.class);
    }
}
