package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class ToldTest {
    @Test
    void anAnswerGoesWithItsLastLookAndSaysSoOnce() {
        Told told = new Told();
        assertThat(told.look()).isFalse();
        told.say("not yet", 2);
        assertThat(told.look()).isFalse();
        assertThat(told.words()).isEqualTo("not yet");
        assertThat(told.look()).isTrue();
        assertThat(told.isEmpty()).isTrue();
        assertThat(told.look()).isFalse();
    }

    @Test
    void aFailureStaysUntilItIsForgottenOrSomethingElseIsSaid() {
        Told told = new Told();
        told.stay("no probe answers");
        for (int i = 0; i < 1000; i++) {
            assertThat(told.look()).isFalse();
        }
        assertThat(told.words()).isEqualTo("no probe answers");
        told.say("looking", 1);
        assertThat(told.look()).isTrue();
        told.stay("again");
        told.forget();
        assertThat(told.words()).isEmpty();
    }
}
