package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
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
}
