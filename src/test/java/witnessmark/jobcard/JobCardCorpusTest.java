package witnessmark.jobcard;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.gearbox.Layout;
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

    @ParameterizedTest
    @CsvSource({"tuning.txt, 0.9, 0.9", "held-apart.txt, 0.9, 0.75"})
    void proposals_are_right_and_hardly_ever_say_present_for_absent(String file, double right, double found)
            throws Exception {
        CardFigures figures = CardFigures.of(reader, CORPUS.resolve(file));

        assertThat(figures.rightShare()).as(figures.figures()).isGreaterThanOrEqualTo(right);
        assertThat(figures.foundShare()).as(figures.figures()).isGreaterThanOrEqualTo(found);
        assertThat(figures.wrongState()).as(figures.figures()).isLessThanOrEqualTo(figures.proposed() / 100);
    }

    @Test
    void nothing_of_a_card_is_dropped() {
        Reading reading = reader.read("mounts ok, customer waits in the lobby", Layout.unknown());

        assertThat(reading.proposals()).extracting(Proposal::id).contains("mount-movement-over");
        assertThat(reading.notUnderstood()).containsExactly("customer waits in the lobby");
    }

    @Test
    void who_said_it_goes_with_it() {
        Reading reading = reader.read("Driver denies coasting in neutral", Layout.unknown());

        Proposal.OfFinding finding = (Proposal.OfFinding) reading.proposals().get(0);
        assertThat(finding.state()).isEqualTo(Proposal.State.ABSENT);
        assertThat(finding.saidBy()).contains(Sayer.DRIVER);
    }

    @ParameterizedTest
    @CsvSource({"-4 bar, IMPOSSIBLE", "400 bar, IMPOSSIBLE", "112 psi, DOUBTFUL", "60 psi, PLAUSIBLE"})
    void a_value_that_cannot_be_is_never_sure(String value, Measure.Belief belief) {
        Reading reading = reader.read("regulator pressure " + value, Layout.unknown());

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
