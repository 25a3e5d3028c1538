package witnessmark.shell.judge;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.yaml.CaseReader;
import witnessmark.diagnosis.AdviceGiven;
import witnessmark.diagnosis.CheckKnown;
import witnessmark.diagnosis.Diagnosis;
import witnessmark.diagnosis.Judgement;
import witnessmark.diagnosis.RuleBase;
import witnessmark.diagnosis.ShippedKnowledge;
import witnessmark.knowledge.Caution;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.language.Language;
import witnessmark.language.Texts;
import witnessmark.shell.print.Page;

/** What {@code diagnose} shows by itself fits a usual terminal of 80 columns and 24 lines, and warns of all that it must. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class JudgementScreenTest {
    private static final int COLUMNS = 80;
    /** Lines of a terminal less one for the prompt. */
    private static final int LINES = 23;
    /** More where a caution or a contradiction must be told. */
    private static final int TOLD_BESIDE = 5;
    /** Spanish runs longer by a line in five; the longest sample has six lines more. */
    private static final int LONGER = 6;

    private final Diagnosis english = new Diagnosis(RuleBase.shipped(), ShippedKnowledge.load());
    private final List<CaseFile> cases = new ArrayList<>();

    @BeforeAll
    void read_the_sample_cases() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("sample-cases"))) {
            for (Path file :
                    files.filter(f -> f.toString().endsWith(".yaml")).sorted().toList()) {
                CaseFile read = new CaseReader()
                        .read(file.toString(), Files.readAllBytes(file))
                        .present();
                cases.add(CheckKnown.toJudge(read, english.knowledge()));
            }
        }
        assertThat(cases).hasSizeGreaterThan(70);
    }

    private record Shown(Judgement judgement, KnowledgeBase knowledge, String text) {
        long lines() {
            return text.lines().count();
        }

        /** As one line, however it was wrapped. */
        String flat() {
            return text.replaceAll("\\s+", " ");
        }
    }

    private Shown shown(CaseFile file, Language language, int columns) {
        Diagnosis diagnosis = english.in(language);
        Judgement judgement = diagnosis.judge(file);
        StringWriter text = new StringWriter();
        new JudgementScreen(diagnosis.knowledge(), Texts.of("interview", language), judgement)
                .print(new Page(new PrintWriter(text), columns, false), file.title(), Optional.empty(), 3);
        return new Shown(judgement, diagnosis.knowledge(), text.toString());
    }

    @ParameterizedTest
    @EnumSource(Language.class)
    void each_sample_case_fits_one_screen(Language language) {
        List<String> tooLong = new ArrayList<>();
        int plain = 0;
        for (CaseFile file : cases) {
            Shown shown = shown(file, language, COLUMNS);
            boolean warns = shown.text().contains("Caution:")
                    || shown.text().contains("Cuidado:")
                    || !shown.judgement().contradictions().isEmpty();
            plain += warns ? 0 : 1;
            long most = LINES + (warns ? TOLD_BESIDE : 0) + (language == Language.SPANISH ? LONGER : 0);
            if (shown.lines() > most) {
                tooLong.add(file.id().text() + ": " + shown.lines() + " lines");
            }
            assertThat(shown.text().lines()).allMatch(line -> line.length() <= COLUMNS);
        }

        assertThat(tooLong).isEmpty();
        assertThat(plain).isPositive();
    }

    /** In full or in few words: what was found calls for it, so it applies whatever is done next. */
    @ParameterizedTest
    @EnumSource(Language.class)
    void each_caution_that_a_finding_calls_for_is_said(Language language) {
        int said = 0;
        for (CaseFile file : cases) {
            Shown shown = shown(file, language, COLUMNS);
            for (Caution caution : called(shown)) {
                assertThat(shown.flat())
                        .as(file.id().text() + ": " + caution.id())
                        .containsAnyOf(caution.in(language), caution.briefly().in(language));
                said++;
            }
        }

        assertThat(said).isGreaterThan(20);
    }

    private static List<Caution> called(Shown shown) {
        KnowledgeBase knowledge = shown.knowledge();
        return shown.judgement().advice().cautions().stream()
                .map(AdviceGiven.Piece::id)
                .filter(id -> knowledge.findings().values().stream()
                        .anyMatch(finding -> finding.whenFound().contains(id)))
                .map(knowledge.cautions()::get)
                .toList();
    }

    /** A line of its own says how many a screen leaves to {@code --full}. */
    @Test
    void of_a_long_way_to_the_next_check_it_is_said_that_more_apply() {
        Shown shown = shown(named("growl-that-follows-the-engine"), Language.ENGLISH, COLUMNS);

        assertThat(shown.flat())
                .containsPattern("wheels chocked .* \\(\\d+ more on the way to the first check: --full\\)");
    }

    @Test
    void a_wider_terminal_shows_the_questions_a_narrow_one_the_titles() {
        CaseFile file = named("slow-range-clogged-filter");
        String question = "Is the air dryer past its service, or are the tanks not drained?";

        assertThat(shown(file, Language.ENGLISH, 160).flat()).contains(question);
        assertThat(shown(file, Language.ENGLISH, 60).flat())
                .doesNotContain(question)
                .contains("Air dryer not serviced, tanks not drained");
    }

    /** A site's own caution may have no few words. */
    @Test
    void each_shipped_caution_has_few_words_in_both_languages() {
        assertThat(english.knowledge().cautions().values()).allSatisfy(caution -> {
            assertThat(caution.briefly().english())
                    .isNotEqualTo(caution.english())
                    .hasSizeLessThan(160);
            assertThat(caution.briefly().spanish())
                    .isNotEqualTo(caution.spanish())
                    .hasSizeLessThan(180);
        });
    }

    private CaseFile named(String id) {
        return cases.stream().filter(c -> c.id().text().equals(id)).findFirst().orElseThrow();
    }
}
