package settlemark.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import settlemark.measure.Chunk;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.profile.Message;
import settlemark.profile.Poll;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;
import settlemark.profile.ProfileReader;
import settlemark.profile.Source;

final class CorrectionTest {
    private static final Profile GAUGE = ProfileLibrary.get("demo-gauge");
    private static final Source UNASKED = new Source.Unasked();

    private static SessionHeader header(Profile profile, Map<String, Role> roles) {
        ProbeSetup gauge = new ProbeSetup("gauge", new ProbeAddress("rig", "gauge"), profile, roles);
        ProbeSetup air = new ProbeSetup(
                "air", new ProbeAddress("rig", "air"), ProfileLibrary.get("demo-air"), Map.of("probe-1", Role.SUPPLY));
        return new SessionHeader(
                "key",
                "title",
                Instant.EPOCH,
                ZoneOffset.UTC,
                Unit.INCH_OF_WATER,
                Unit.FAHRENHEIT,
                List.of(gauge, air),
                Optional.empty(),
                Optional.empty(),
                "test");
    }

    private static SessionHeader gaugeHeader() {
        return header(GAUGE, Map.of("port-1", Role.INLET, "port-2", Role.MANIFOLD));
    }

    private static Profile changed(String what, String with) {
        assertThat(GAUGE.text()).contains(what);
        String text = GAUGE.text().replace(what, with);
        String withoutExamples = text.substring(0, text.indexOf("\nexamples:"));
        return ProfileReader.read("changed.yaml", withoutExamples.getBytes(StandardCharsets.UTF_8))
                .orThrow();
    }

    @Test
    void theOwnProfilesLoseNothingAndChangeNoEvent() {
        Correction same = Correction.of(gaugeHeader(), Map.of());
        assertThat(same.header()).isEqualTo(gaugeHeader());
        assertThat(same.lost()).isEmpty();
        for (int input : new int[] {0, Chunk.STRAY}) {
            SessionEvent event = new SessionEvent.Bytes(0, new Chunk(1, input, new byte[] {1}));
            assertThat(same.event(event)).isSameAs(event);
        }
        SessionEvent link = new SessionEvent.Link(0, 1, LinkChange.LOST, "lost");
        assertThat(same.event(link)).isSameAs(link);
    }

    @Test
    void rolesGoOverByTheNamesOfTheChannels() {
        Profile renamed = changed("id: port-2", "id: port-b");
        Correction correction = Correction.of(gaugeHeader(), Map.of("gauge", renamed));
        ProbeSetup gauge = correction.header().probes().get(0);
        assertThat(gauge.profile()).isEqualTo(renamed);
        assertThat(gauge.roles()).containsOnly(Map.entry("port-1", Role.INLET));
        assertThat(correction.lost())
                .containsExactly(new Correction.Lost(
                        "gauge", "manifold at port-2", "the new profile has no channel \"port-2\""));
        assertThat(correction.header().probes().get(1))
                .isEqualTo(gaugeHeader().probes().get(1));
        assertThat(correction.former()).isEqualTo(gaugeHeader());
    }

    @Test
    void aChannelThatBecameAnotherKindOfQuantityLosesItsRole() {
        Profile other = changed(
                "id: port-1\n    label: P1\n    field: pressure-1\n    unit: \"[in_i'H2O]\"",
                "id: port-1\n    label: P1\n    field: pressure-1\n    unit: \"Cel\"");
        Correction correction = Correction.of(gaugeHeader(), Map.of("gauge", other));
        assertThat(correction.header().probes().get(0).roles()).containsOnlyKeys("port-2");
        assertThat(correction.lost()).hasSize(1);
        assertThat(correction.lost().get(0).why()).contains("\"port-1\"", "\u00b0C");
        // It decodes all the same.
        new LiveSession(correction.header());
    }

    @Test
    void theMarkOfASimulationCannotBeTakenAwayOrPutOn() {
        Profile real = changed("simulated: true", "simulated: false");
        assertThat(Correction.problems(gaugeHeader(), Map.of("gauge", real)))
                .singleElement()
                .asString()
                .contains("probe gauge is simulated");
        SessionHeader realHeader = header(real, Map.of("port-1", Role.INLET));
        assertThat(Correction.problems(realHeader, Map.of("gauge", GAUGE)))
                .singleElement()
                .asString()
                .contains("probe gauge is not simulated");
        assertThatThrownBy(() -> Correction.of(realHeader, Map.of("gauge", GAUGE)))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void aProbeThatIsNotThereIsAProblemThatNamesThoseThatAre() {
        assertThat(Correction.problems(gaugeHeader(), Map.of("gauga", GAUGE)))
                .containsExactly("the session has no probe \"gauga\"; it has [gauge, air]");
    }

    private static Source answer(String request) {
        return new Source.Characteristic(
                Optional.empty(),
                UUID.nameUUIDFromBytes(request.getBytes(StandardCharsets.UTF_8)),
                Source.By.NOTIFY,
                new Poll(1, 1, 0),
                false,
                false);
    }

    /** The gauge's profile with other messages, given as name and source by turns. */
    private static Profile messages(Object... namesAndSources) {
        List<Message> messages = new ArrayList<>();
        Message like = GAUGE.messages().get(0);
        for (int i = 0; i < namesAndSources.length; i += 2) {
            messages.add(new Message(
                    (String) namesAndSources[i],
                    (Source) namesAndSources[i + 1],
                    like.framing(),
                    like.columns(),
                    like.tagged(),
                    like.checksum(),
                    like.cipher(),
                    like.fields(),
                    1));
        }
        return new Profile(
                GAUGE.id(),
                GAUGE.name(),
                GAUGE.description(),
                GAUGE.simulated(),
                GAUGE.digest(),
                GAUGE.text(),
                GAUGE.recognitions(),
                GAUGE.link(),
                GAUGE.startUp(),
                GAUGE.actions(),
                messages,
                GAUGE.sources(),
                GAUGE.facts(),
                GAUGE.examples());
    }

    private static List<Integer> map(Profile before, Profile after) {
        InputMap map = InputMap.of(before, after);
        List<Integer> inputs = new ArrayList<>();
        for (int i = 0; i < before.inputs().size(); i++) {
            inputs.add(map.after(i));
        }
        return inputs;
    }

    @Test
    void bytesGoToTheMessageOfTheSameName() {
        Profile before = messages("a", UNASKED, "b", answer("b"), "c", answer("c"));
        Profile after = messages("c", answer("z"), "a", answer("y"), "b", UNASKED);
        assertThat(map(before, after)).containsExactly(1, 2, 0);
        assertThat(map(before, before)).containsExactly(0, 1, 2);
    }

    @Test
    void bytesOfARenamedMessageGoToTheOneWithTheSameSource() {
        Profile before = messages("a", answer("a"), "b", answer("b"));
        Profile after = messages("x", answer("b"), "y", answer("a"));
        assertThat(map(before, after)).containsExactly(1, 0);
    }

    @Test
    void theOnlyMessageTakesTheBytesOfTheOnlyOneBefore() {
        assertThat(map(messages("a", UNASKED), messages("b", answer("b")))).containsExactly(0);
    }

    @Test
    void bytesWithoutACounterpartAreStrayAndNamed() {
        Profile before = messages("a", answer("a"), "b", answer("b"));
        Profile after = messages("a", answer("a"));
        InputMap map = InputMap.of(before, after);
        assertThat(map.after(1)).isEqualTo(Chunk.STRAY);
        assertThat(map.after(Chunk.STRAY)).isEqualTo(Chunk.STRAY);
        assertThat(map.after(9)).isEqualTo(Chunk.STRAY);
        assertThat(map.lostMessages()).containsExactly("b");
        Correction correction = Correction.of(header(before, Map.of()), Map.of("gauge", after));
        assertThat(correction.lost()).hasSize(1);
        assertThat(correction.lost().get(0).what()).isEqualTo("the bytes of message b");
        SessionEvent event = new SessionEvent.Bytes(0, new Chunk(7, 1, new byte[] {1, 2}));
        assertThat(correction.event(event)).isEqualTo(new SessionEvent.Bytes(0, new Chunk(7, Chunk.STRAY, new byte[] {
            1, 2
        })));
    }
}
