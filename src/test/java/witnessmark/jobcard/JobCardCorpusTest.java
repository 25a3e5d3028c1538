package witnessmark.jobcard;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.casefile.FindingState;
import witnessmark.gearbox.Layout;
import witnessmark.gearbox.Unit;
import witnessmark.knowledge.KnowledgeFile;
import witnessmark.knowledge.KnowledgeFolder;
import witnessmark.knowledge.KnowledgeLoader;
import witnessmark.knowledge.Measure;
import witnessmark.yaml.FaultyInput;

/** The sentences are our own, common practice of job cards, no source. */
class JobCardCorpusTest {
    private static final Path CORPUS = Path.of("src/test/resources/jobcard");
    private static List<KnowledgeFile> files;
    private static ReadJobCard reader;

    @BeforeAll
    static void read() throws Exception {
        files = KnowledgeFolder.files(Path.of("knowledge-base"));
        reader = new ReadJobCard(new KnowledgeLoader().load(List.of(files)));
    }

    /** Words as a hurried hand writes them, and what denies a part that only another clause names; of no source. */
    @ParameterizedTest
    @CsvSource({
        "clutch slps, clutch-slips, PRESENT",
        "grnds goin into lo range, range-grinds-into-low, PRESENT",
        "range buzzes to high side, range-grinds-into-high, PRESENT",
        "'Checked the mounts, none broken', mount-movement-over, ABSENT",
        "'soportes revisados, ninguno roto', mount-movement-over, ABSENT",
        "Level was two quarts down, oil-level-low, PRESENT",
        "bell housing bolts backed off, bell-housing-bolts-loose, PRESENT"
    })
    void hurried_words_are_read(String card, String finding, FindingState state) {
        List<Proposal.OfFinding> said = reader.read(card, Layout.unknown()).proposals().stream()
                .filter(Proposal.OfFinding.class::isInstance)
                .map(Proposal.OfFinding.class::cast)
                .toList();

        assertThat(said).extracting(Proposal.OfFinding::id).containsExactly(finding);
        assertThat(said.get(0).state()).isEqualTo(state);
    }

    @ParameterizedTest
    @CsvSource({
        "tuning.txt, 0.9, 0.85",
        "tuning-later.txt, 0.9, 0.85",
        "tuning-shop.txt, 0.95, 0.9",
        "tuning-yard.txt, 0.95, 0.85",
        "tuning-words.txt, 0.95, 0.8",
        "held-apart.txt, 0.9, 0.75",
        "held-apart-later.txt, 0.9, 0.7",
        "held-apart-fresh.txt, 0.9, 0.75",
        "held-apart-terse.txt, 0.9, 0.85",
        "held-apart-last.txt, 0.9, 0.8",
        "held-apart-fifth.txt, 0.9, 0.85",
        "held-apart-sixth.txt, 0.9, 0.85",
        "tuning-qualified.txt, 0.95, 0.85",
        "tuning-qualified-later.txt, 0.9, 0.7",
        "held-apart-qualified.txt, 0.9, 0.6"
    })
    void proposals_are_right_and_hardly_ever_say_present_for_absent(String file, double right, double found)
            throws Exception {
        CardFigures figures = CardFigures.of(reader, CORPUS.resolve(file));

        assertThat(figures.rightShare()).as(figures.figures()).isGreaterThanOrEqualTo(right);
        assertThat(figures.foundShare()).as(figures.figures()).isGreaterThanOrEqualTo(found);
        assertThat(figures.wrongState()).as(figures.figures()).isLessThanOrEqualTo(figures.proposed() / 100);
    }

    /** Over all files together: of what is taken without asking, at most one in a hundred may be wrong. */
    @Test
    void what_is_sure_is_right() throws Exception {
        int sure = 0;
        List<String> wrong = new ArrayList<>();
        try (Stream<Path> files = Files.list(CORPUS)) {
            for (Path file : files.toList()) {
                CardFigures figures = CardFigures.of(reader, file);
                sure += figures.sure();
                wrong.addAll(figures.sureWrong());
            }
        }

        assertThat(sure).isGreaterThan(350);
        assertThat(wrong.size()).as(wrong.toString()).isLessThanOrEqualTo(sure / 100);
    }

    /** What tells findings apart must be said; else each is offered. */
    @ParameterizedTest
    @CsvSource({
        "Breather puffs in low range and not in high, breather-blows-one-range",
        "Regulator sags to 2.1 bar in a shift, regulator-pressure-in-shift",
        "Regulator 4.1 bar at rest, range-regulator-pressure",
        "Third and fourth slip out, slips-out-several-gears",
        "Third slips out pulling uphill, slips-out-under-pull",
        "Crate dropped from the tail lift, dropped-in-shipping",
        "'End play 0.2 mm at the output, nut torqued', output-shaft-endplay"
    })
    void a_qualifier_decides(String card, String id) {
        assertThat(reader.read(card, Layout.unknown()).proposals())
                .filteredOn(p -> p.sureness() == Sureness.SURE)
                .extracting(Proposal::id)
                .containsExactly(id);
    }

    @ParameterizedTest
    @CsvSource({
        "jumps out of 5th, 'slips-out-under-pull slips-out-on-coast slips-out-rough-road slips-out-one-gear'",
        "End play 0.6 mm at the output with nut loose, output-shaft-endplay",
        "'output end play 0.6 mm, yoke nut was loose', output-shaft-endplay",
        "regulador marca 4 bar y baja a 3 en el cambio, regulator-pressure-in-shift"
    })
    void without_its_qualifier_it_is_only_offered(String card, String ids) {
        assertThat(reader.read(card, Layout.unknown()).proposals())
                .filteredOn(p -> List.of(ids.split(" ")).contains(p.id()))
                .hasSize(ids.split(" ").length)
                .allMatch(p -> p.sureness() == Sureness.DOUBTFUL);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "air filter never changed",
                "Air filter: never changed",
                "engine oil changed yesterday",
                "fuel filter changed",
                "brake pedal stiff"
            })
    void what_is_said_of_another_thing_is_not_taken(String card) {
        assertThat(reader.read(card, Layout.unknown()).proposals()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "'magnet fuzzy but no chips', magnet-slivers, ABSENT",
        "'tornillos de la campana: dos flojos', bell-housing-bolts-loose, PRESENT"
    })
    void a_clause_without_a_subject_is_said_of_the_one_before(String card, String finding, FindingState state) {
        assertThat(reader.read(card, Layout.unknown()).proposals())
                .filteredOn(p -> p.id().equals(finding) && p.sureness() != Sureness.DOUBTFUL)
                .map(p -> ((Proposal.OfFinding) p).state())
                .containsExactly(state);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Jumps out of 5th pulling since the gearbox was rebuilt in spring",
                "rebuilt last month, jumps out of 4th pulling ever since"
            })
    void since_when_takes_nothing_from_the_complaint(String card) {
        assertThat(reader.read(card, Layout.unknown()).proposals())
                .filteredOn(p -> p.sureness() == Sureness.SURE)
                .extracting(Proposal::id)
                .containsExactlyInAnyOrder("slips-out-under-pull", "repaired-lately");
    }

    @ParameterizedTest
    @ValueSource(strings = {"rear seal leaking, can't tell", "soporte trasero bien, el delantero roto"})
    void what_the_rest_of_the_sentence_takes_back_is_not_sure(String card) {
        assertThat(reader.read(card, Layout.unknown()).proposals())
                .isNotEmpty()
                .allMatch(p -> p.sureness() == Sureness.DOUBTFUL);
    }

    @Test
    void nothing_of_a_card_is_dropped() {
        CardReading reading = reader.read("mounts ok, customer waits in the lobby", Layout.unknown());

        assertThat(reading.proposals()).extracting(Proposal::id).contains("mount-movement-over");
        assertThat(reading.notUnderstood()).containsExactly("customer waits in the lobby");
    }

    /** Of two readings of one thing none is taken by itself and none left out; of air alone the figure must tell. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Regulator 58 psi. Regulator 44 psi. | 58 44",
                "Air checked 60 psi ok | 60",
                "Tanks 118 psi. Air checked 60 psi ok | 118 60"
            })
    void a_value_that_may_be_of_two_things_or_is_read_twice_is_only_offered(String card, String values) {
        CardReading reading = reader.read(card, Layout.unknown());

        assertThat(reading.proposals())
                .extracting(p -> String.valueOf((long) ((Proposal.OfMeasure) p).value()))
                .containsExactly(values.split(" "));
        assertThat(reading.proposals())
                .filteredOn(p -> ((Proposal.OfMeasure) p).value() < 100)
                .allMatch(p -> p.sureness() == Sureness.DOUBTFUL);
    }

    @Test
    void what_is_said_twice_keeps_all_its_words() {
        CardReading reading = reader.read("oil milky. water in oil", Layout.unknown());

        assertThat(reading.proposals()).extracting(Proposal::words).containsExactly("oil milky / water in oil");
    }

    @Test
    void a_sign_behind_a_value_is_read_as_well() {
        assertThat(reader.read("Regulator 58 psi and jumps out of 3rd pulling", Layout.unknown())
                        .proposals())
                .extracting(Proposal::id)
                .containsExactly("range-regulator-pressure", "slips-out-under-pull");
    }

    /** What cannot be done without it comes every time; "not" before another sign says nothing of it. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "cant get 1st or reverse at a stand without grinding | PRESENT",
                "never goes in first at rest without grinding | PRESENT",
                "nunca rechina la reversa parado | ABSENT",
                "goes in first at rest without grinding | ABSENT"
            })
    void what_is_never_missing_is_there(String card, FindingState state) {
        assertThat(reader.read(card, Layout.unknown()).proposals())
                .filteredOn(p -> p.id().equals("first-reverse-grinds-at-rest"))
                .extracting(p -> ((Proposal.OfFinding) p).state())
                .containsExactly(state);
    }

    /** 412,000 miles and 655 000 km as they are written on cards; half an inch is 0.5 in. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "odometer 412,000 miles | MILE | 663050",
                "odo 655 000 | KILOMETRE | 655000",
                "mileage 388k mi | MILE | 624425",
                "kilometraje 512.000 km | KILOMETRE | 512000"
            })
    void an_odometer_is_read_in_its_own_unit(String card, Unit unit, double km) {
        Proposal.OfOdometer odometer = (Proposal.OfOdometer)
                reader.read(card, Layout.unknown()).proposals().get(0);

        assertThat(odometer.unit()).isEqualTo(unit);
        assertThat(odometer.km()).isEqualTo(km);
    }

    @Test
    void an_odometer_without_a_unit_is_in_that_of_the_shop() {
        Proposal.OfOdometer odometer = (Proposal.OfOdometer) reader.read("odometer 412000", Layout.unknown(), Unit.MILE)
                .proposals()
                .get(0);

        assertThat(odometer.km()).isEqualTo(663050);
    }

    @ParameterizedTest
    @ValueSource(strings = {"oil changed 40,000 miles ago", "every 250000 km", "rebuilt 90000 km since"})
    void a_distance_since_something_is_no_odometer(String card) {
        assertThat(reader.read(card, Layout.unknown()).proposals()).noneMatch(Proposal.OfOdometer.class::isInstance);
    }

    @ParameterizedTest
    @CsvSource({
        "replaced air filter and regulator, regulator-renewed-before-look",
        "clutch adjusted, clutch-set-before-look",
        "se cambiaron los soportes, linkage-set-before-look"
    })
    void work_done_is_a_part_renewed_before_the_look(String card, String finding) {
        Proposal.OfFinding done = (Proposal.OfFinding)
                reader.read(card, Layout.unknown()).proposals().get(0);

        assertThat(done.id()).isEqualTo(finding);
        assertThat(done.state()).isEqualTo(FindingState.PRESENT);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "need to replace mounts",
                "mounts not replaced",
                "recommend mounts replaced",
                "falta cambiar soportes"
            })
    void work_to_be_done_is_none(String card) {
        assertThat(reader.read(card, Layout.unknown()).proposals())
                .extracting(Proposal::id)
                .doesNotContain("linkage-set-before-look");
    }

    @Test
    void work_told_of_behind_the_reading_did_not_spoil_it() {
        CardReading reading = reader.read("regulator 44 psi. replaced regulator", Layout.unknown());

        assertThat(reading.proposals()).anySatisfy(p -> {
            assertThat(p.id()).isEqualTo("regulator-renewed-before-look");
            assertThat(p.sureness()).isEqualTo(Sureness.DOUBTFUL);
        });
    }

    @ParameterizedTest
    @CsvSource({"clutch free play 1/2 in, 0.5", "clutch free play 1 1/2 in, 1.5"})
    void a_fraction_is_read_as_one_number(String card, double inches) {
        Proposal.OfMeasure read = (Proposal.OfMeasure)
                reader.read(card, Layout.unknown()).proposals().get(0);

        assertThat(read.value()).isEqualTo(inches);
    }

    @ParameterizedTest
    @CsvSource({
        "oil full to the hole, oil-level-low, ABSENT",
        "magnet not clean, magnet-flakes, ",
        "magnet clean, magnet-flakes, ABSENT",
        "lever is tight in all gears, hard-shift-all-gears, PRESENT",
        "mounts and bell housing bolts, mount-movement-over, ",
        "'mounts and bell housing bolts, all tight', mount-movement-over, ABSENT",
        "no pasa a la alta en las mananas de frio, range-will-not-shift, PRESENT"
    })
    void a_good_word_says_only_what_it_is_said_of(String card, String finding, FindingState state) {
        assertThat(reader.read(card, Layout.unknown()).proposals())
                .filteredOn(p -> p.id().equals(finding) && p.sureness() != Sureness.DOUBTFUL)
                .map(p -> ((Proposal.OfFinding) p).state())
                .isEqualTo(state == null ? List.of() : List.of(state));
    }

    @ParameterizedTest
    @CsvSource({"regulator 42 lbs, range-regulator-pressure", "clutch free play 1.5 in, clutch-pedal-free-travel"})
    void a_value_goes_to_the_measure_that_it_can_be_of(String card, String measure) {
        assertThat(reader.read(card, Layout.unknown()).proposals())
                .extracting(Proposal::id)
                .containsExactly(measure);
    }

    @Test
    void who_said_it_goes_with_it() {
        CardReading reading = reader.read("Driver denies coasting in neutral", Layout.unknown());

        Proposal.OfFinding finding = (Proposal.OfFinding) reading.proposals().get(0);
        assertThat(finding.state()).isEqualTo(FindingState.ABSENT);
        assertThat(finding.saidBy()).contains(Sayer.DRIVER);
    }

    @ParameterizedTest
    @CsvSource({"-4 bar, IMPOSSIBLE", "400 bar, IMPOSSIBLE", "112 psi, DOUBTFUL", "60 psi, PLAUSIBLE"})
    void a_value_that_cannot_be_is_never_sure(String value, Measure.Belief belief) {
        CardReading reading = reader.read("regulator pressure " + value, Layout.unknown());

        Proposal.OfMeasure measure = (Proposal.OfMeasure) reading.proposals().get(0);
        assertThat(measure.belief()).isEqualTo(belief);
        assertThat(measure.sureness() == Sureness.SURE).isEqualTo(belief == Measure.Belief.PLAUSIBLE);
    }

    @Test
    void a_row_for_an_unknown_finding_is_a_fault_with_the_nearest_id() {
        List<KnowledgeFile> more = new ArrayList<>(files);
        String row = "words:\n  - finding: mount-movement-ovr\n    en: [mount broken]\n";
        more.add(new KnowledgeFile("words/own.yaml", row.getBytes(StandardCharsets.UTF_8)));

        assertThatThrownBy(() -> new KnowledgeLoader().load(List.of(more)))
                .isInstanceOf(FaultyInput.class)
                .hasMessageContaining("did you mean 'mount-movement-over'?");
    }
}
