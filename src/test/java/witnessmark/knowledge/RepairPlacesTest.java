package witnessmark.knowledge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import witnessmark.diagnosis.ShippedKnowledge;
import witnessmark.yaml.FaultyInput;

/** A repair says where it has hands, and with it go the cautions of the whole way there. */
class RepairPlacesTest {
    private static final KnowledgeBase KNOWLEDGE = ShippedKnowledge.load();

    static Set<String> causes() {
        return KNOWLEDGE.causes().keySet();
    }

    @ParameterizedTest
    @MethodSource("causes")
    void every_shipped_cause_names_its_places_and_only_the_deepest(String id) {
        List<String> places = KNOWLEDGE.causes().get(id).repairAt();
        List<String> passed = places.stream()
                .flatMap(place ->
                        KNOWLEDGE.wayTo(place).stream().map(AccessStep::id).filter(step -> !step.equals(place)))
                .toList();

        assertThat(places).isNotEmpty().doesNotHaveDuplicates();
        assertThat(passed).doesNotContainAnyElementsOf(places);
    }

    /** Written by hand from what such a repair takes on any truck: common practice, no source. */
    @ParameterizedTest
    @CsvSource({
        "weak-detent, chock-wheels air-stored springs-loaded rolls-when-freed crank-isolated fingers-out-of-mesh, gearbox-lowered",
        "lever-fouls-cab, springs-loaded rolls-when-freed air-stored fingers-out-of-mesh, gearbox-lowered pressing",
        "clutch-worn-out, gearbox-lowered truck-held heavy-parts oil-hot friction-dust springs-loaded crank-isolated, chock-wheels",
        "synchro-wear, truck-held heavy-parts air-stored oil-hot springs-loaded pressing fingers-out-of-mesh, gearbox-lowered",
        "driveline-angles, truck-held shaft-may-drop heavy-torque heavy-parts air-stored fingers-out-of-mesh, gearbox-lowered",
        "case-porous, gearbox-lowered truck-held heavy-parts oil-hot air-stored pressing penetrant, chock-wheels",
        "exhaust-blocked, chock-wheels air-stored air-moving-parts plug-loaded, heavy-parts oil-hot",
        "slow-engine-decay, engine-in-the-cab running-checks springs-loaded rolls-when-freed fingers-out-of-mesh, pressing",
        "output-seal-worn, truck-held heavy-torque oil-hot pressing, gearbox-lowered friction-dust",
        "pto-worn, take-off-drives oil-hot oil-under-pressure crank-isolated fingers-out-of-mesh, truck-held",
        "cooler-restricted, chock-wheels oil-hot oil-under-pressure coolant-hot, heavy-parts",
        "towed-in-gear, do-not-drive gearbox-lowered truck-held friction-dust penetrant fingers-out-of-mesh, chock-wheels",
        "no-fault, road-test-licensed, heavy-parts air-stored oil-hot"
    })
    void a_repair_carries_what_a_foreman_would_say(String cause, String said, String notSaid) {
        assertThat(KNOWLEDGE.causes().get(cause).cautions())
                .contains(said.split(" "))
                .doesNotContain(notSaid.split(" "))
                .doesNotHaveDuplicates();
    }

    @Test
    void what_is_its_own_stands_first_and_the_way_follows_from_outside_in() {
        assertThat(KNOWLEDGE.causes().get("range-cover-leak").cautions())
                .containsSubsequence("penetrant", "chock-wheels", "air-stored");
    }

    @Nested
    class As_it_is_loaded {
        private static final String OURS =
                """
                system: oil
                causes:
                  - id: leaking-yard-tap
                    title: Oil topped up from the leaking yard tap
                    class: maintenance
                    prior: rare
                    mechanism: Rain got into the tank.
                    links:
                      - { finding: oil-water-proved, strength: usually }
                    repair: [Drain and flush.]
                    cautions: [solvent]
                    sources: [common-practice]
                """;

        @Test
        void a_shipped_repair_without_places_is_refused() {
            assertThatThrownBy(() -> new KnowledgeLoader().load(List.of(with(OURS))))
                    .isInstanceOf(FaultyInput.class)
                    .hasMessageContaining("causes/ours.yaml:10:")
                    .hasMessageContaining("lacks the cautions of the way there")
                    .hasMessageContaining("add 'repair-at: [...]'");
        }

        @Test
        void a_place_that_is_not_known_is_refused() {
            String misspelt = OURS + "    repair-at: [oil-sampel]\n";

            assertThatThrownBy(() -> new KnowledgeLoader().load(List.of(shipped(), List.of(ours(misspelt)))))
                    .isInstanceOf(FaultyInput.class)
                    .hasMessageContaining("causes/ours.yaml:13:")
                    .hasMessageContaining("did you mean 'oil-sample'?");
        }

        @Test
        void a_sites_own_cause_without_places_says_its_own_cautions_and_is_named_as_weak() {
            KnowledgeBase loaded = new KnowledgeLoader().load(List.of(shipped(), List.of(ours(OURS))));

            assertThat(loaded.causes().get("leaking-yard-tap").cautions()).containsExactly("solvent");
            assertThat(new CheckKnowledge(loaded).weaknesses())
                    .anyMatch(weak ->
                            weak.id().equals("leaking-yard-tap") && weak.mend().contains("repair-at"));
        }

        @Test
        void a_sites_own_cause_with_places_gains_the_cautions_of_the_way() {
            String placed = OURS + "    repair-at: [oil-sample, driveline-apart]\n";

            KnowledgeBase loaded = new KnowledgeLoader().load(List.of(shipped(), List.of(ours(placed))));

            assertThat(loaded.causes().get("leaking-yard-tap").cautions())
                    .containsExactly("solvent", "oil-hot", "truck-held");
        }

        private List<KnowledgeFile> with(String causes) {
            return Stream.concat(shipped().stream(), Stream.of(ours(causes))).toList();
        }

        private KnowledgeFile ours(String causes) {
            return new KnowledgeFile("causes/ours.yaml", causes.getBytes(StandardCharsets.UTF_8));
        }

        private List<KnowledgeFile> shipped() {
            try {
                return KnowledgeFolder.files(Path.of("knowledge-base"));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }
}
