package witnessmark.shell.interview;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.BufferedReader;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.TextField;
import witnessmark.casefile.history.FindingCleared;
import witnessmark.diagnosis.Diagnosis;
import witnessmark.diagnosis.RuleBase;
import witnessmark.diagnosis.ShippedKnowledge;
import witnessmark.gearbox.Unit;
import witnessmark.interview.InMemory;
import witnessmark.interview.Interview;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.language.Language;
import witnessmark.language.Texts;
import witnessmark.shell.judge.StatusText;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.Refused;

/** Whole interviews from prepared answers, on the shipped knowledge. */
class InterviewDialogTest {
    private static final Diagnosis DIAGNOSIS = new Diagnosis(RuleBase.shipped(), ShippedKnowledge.load());
    private static final UnderstandSpeech WORDS = new UnderstandSpeech();
    private static final String LOW_AIR =
            """
            # truck, odometer, ratios, range, splitter, countershafts, linkage
            Tractor 7
            384000
            13
            air
            2
            twin


            grinds going into low range
            1
            He says it has been like that since spring.
            regulator-outlet-low: 44 psi; low 57; high 62; from service manual of this unit
            range-slow-into-low: y; two seconds
            range-slow-into-high: yes
            range-grinds-into-high: yes
            range-noisy-both-ways-cold-and-hot: yes
            otherwise: no
            """;

    private final InMemory notebook = new InMemory();
    /** What the run printed so far, also of one that is refused. */
    private CharSequence printed = "";

    private String run(String answers) {
        return run(answers, Language.ENGLISH, false);
    }

    private String run(String answers, Language language, boolean plainLines) {
        StringWriter text = new StringWriter();
        printed = text.getBuffer();
        PrintWriter out = new PrintWriter(text);
        Texts wording = Texts.of("interview", language);
        Page page = new Page(out, 80, false);
        KnowledgeBase knowledge = DIAGNOSIS.knowledge();
        try (Asker asker = new AtATerminal(new PreparedAnswers(new BufferedReader(new StringReader(answers)), out));
                Interview interview = new Interview(DIAGNOSIS, notebook)) {
            IntakeDialog intake = new IntakeDialog(interview, knowledge, WORDS, asker, page, wording);
            new InterviewDialog(
                            interview,
                            knowledge,
                            intake,
                            asker,
                            page,
                            new StatusText(knowledge, page, wording, plainLines))
                    .run();
        }
        return text.toString();
    }

    /** A slash in a prepared answer stands for the end of a line typed at a terminal. */
    private record AtATerminal(Asker file) implements Asker {
        @Override
        public Optional<String> ask(String key, String prompt, List<String> words) {
            return file.ask(key, prompt, words);
        }

        @Override
        public Optional<String> askLines(String key, String prompt, List<String> words, Predicate<String> whole) {
            return ask(key, prompt, words).map(lines -> lines.replace('/', '\n'));
        }

        @Override
        public void refused(String why) {
            file.refused(why);
        }

        @Override
        public void close() {
            file.close();
        }
    }

    private CaseFile kept() {
        return notebook.history().present();
    }

    @Test
    void from_the_truck_to_the_verdict_by_prepared_answers() {
        String text = run(LOW_AIR);

        assertThat(text)
                .contains("What does the fleet call the truck?")
                .contains("The interview ends here")
                .contains("could change of this verdict by itself")
                .contains("Maintenance")
                .contains("Done.");
        assertThat(kept().vehicle().unit()).isEqualTo("Tractor 7");
        assertThat(kept().complaint()).isEqualTo("grinds going into low range");
        assertThat(kept().findings().get("range-grinds-into-low").state()).isEqualTo(FindingState.PRESENT);
        assertThat(kept().measurements().get("range-regulator-pressure").limits())
                .isPresent();
        assertThat(DIAGNOSIS.judge(kept()).verdict().carriedBy()).contains("low-air");
    }

    @Test
    void back_at_the_list_of_what_was_meant_asks_for_the_complaint_in_other_words() {
        run(
                """
                Tractor 7
                384000
                13
                air
                2
                twin


                whines pulling
                b
                range grinds going into low

                q
                """);

        assertThat(kept().complaint()).isEqualTo("range grinds going into low");
        assertThat(kept().findings()).containsOnlyKeys("range-grinds-into-low");
    }

    @Test
    void where_the_marked_ones_say_only_what_is_right_the_complaint_is_asked_for_again() {
        String text = run(
                """
                Tractor 7
                384000
                13
                air
                2
                twin


                pops out of 6th pulling out of the pit. oil to the plug

                1

                otherwise: no
                """);

        assertThat(text).contains("What is marked does not say what is wrong.");
        assertThat(kept().findings().get("oil-level-low").state()).isEqualTo(FindingState.ABSENT);
        assertThat(kept().findings().values()).anyMatch(f -> f.state() == FindingState.PRESENT);
    }

    @Test
    void what_is_seen_inside_has_the_state_of_the_unit_asked_again_and_no_run_is_asked_of_a_box_that_is_apart() {
        String text = run(
                """
                Tractor 7
                384000
                13
                air
                2
                twin


                thrust washers cracked and blue. hubs scored
                1 2
                front-apart

                otherwise: no
                """);

        assertThat(text.replaceAll("\\s+", " "))
                .contains("is seen with the unit open. How does the unit stand now?")
                .doesNotContain("foam right after running")
                .doesNotContain("Road test: 25 min");
        assertThat(kept().text(TextField.UNIT_STATE)).isEqualTo("front-apart");
    }

    @Test
    void who_says_it_is_said_in_the_readers_language() {
        String text = run(
                """
                Tractor 7
                384000
                13
                air
                2
                twin


                se bota la quinta jalando en subida. el chofer dice que no baja en neutral


                otherwise: no
                """,
                Language.SPANISH,
                false);

        assertThat(text).contains("lo dice el conductor").doesNotContain("lo dice driver");
    }

    @Test
    void no_line_is_wider_than_the_page() {
        assertThat(run(LOW_AIR).lines().filter(line -> !line.startsWith("> ")))
                .allSatisfy(line -> assertThat(line.length()).as(line).isLessThanOrEqualTo(80));
    }

    @Test
    void a_screen_reader_gets_no_bars() {
        String text = run(LOW_AIR, Language.ENGLISH, true);
        assertThat(text).doesNotContain("[#").doesNotContain("..]");
    }

    @Test
    void answers_that_run_out_stop_the_interview_and_say_how_to_go_on() {
        String text = run("Tractor 7\n384000\n");
        assertThat(text).contains("Stopped. 0 checks answered and kept. Go on with: interview asked");
        assertThat(run("13\n")).contains("Case asked goes on");
        assertThat(kept().gearbox().forwardRatios()).hasValue(13);
    }

    @Test
    void a_refused_answer_stops_prepared_answers_with_its_line_and_keeps_what_was_given() {
        assertThatThrownBy(() -> run("Tractor 7\nfar\n"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("'far' is not a distance")
                .hasMessageContaining("line 2 of the answers");
        assertThat(kept().vehicle().unit()).isEqualTo("Tractor 7");
    }

    @Test
    void why_and_where_answer_without_leaving_the_question() {
        String text = run("\n\n\nair\n\n\n\n\ngrinds into low\n1\n\nwhy\nwhere\ny\nstop\n");
        assertThat(text)
                .containsPattern("min\\s+of work\\.")
                .contains("Where it stands: asked")
                .contains("Stopped. 1 check answered");
    }

    @Test
    void answers_that_do_not_go_together_are_named_at_once_and_one_can_be_corrected() {
        String text = run(LOW_AIR.replace("otherwise: no", "within-all-limits: yes\nconflict.which: 1\notherwise: no"));
        assertThat(text)
                .contains("These do not go together. Low air is not within limits.")
                .contains("Corrected.");
        assertThat(DIAGNOSIS.judge(kept()).contradictions()).isEmpty();
    }

    @Test
    void nothing_more_is_asked_while_what_leads_leans_on_answers_that_do_not_go_together() {
        String text = run(LOW_AIR.replace("otherwise: no", "within-all-limits: yes\notherwise: no"));
        assertThat(text)
                .contains("Both stay on record. No verdict is built on them")
                .contains("What leads leans on answers that do not go together.");
        assertThat(DIAGNOSIS.judge(kept()).verdict().isDetermined()).isFalse();
    }

    @Test
    void whoever_knows_nothing_is_soon_left_alone_and_told_what_look_would_help() {
        String text = run("\n\n\nair\n\n\n\n\ngrinds into low\n1\n\n" + "d\n".repeat(30));
        assertThat(text)
                .contains("Nobody has looked here so far")
                .contains("These would tell most:")
                .contains("\"unknown\" to be asked those again.");
        assertThat(kept().findings()).hasSizeLessThan(20);
    }

    @Test
    void what_nobody_had_looked_at_is_asked_again_when_wished() {
        String once = run("\n\n\nair\n\n\n\n\ngrinds into low\n1\n\n" + "d\n".repeat(30));
        String again = run("end.more: unknown\notherwise: d\n");
        assertThat(questions(again)).isNotEmpty().containsAnyElementsOf(questions(once));
    }

    /** The questions as they stand in the text, without their numbers. */
    private static List<String> questions(String text) {
        return text.lines()
                .filter(line -> line.matches("\\d+\\. .*"))
                .map(line -> line.replaceFirst("\\d+\\. ", ""))
                .toList();
    }

    @Test
    void before_the_checks_too_one_can_ask_why_ask_for_help_and_not_know() {
        String text = run("?\nTractor 9\nwhy\ndunno\nwhy\npass\nair\nstop\n");
        assertThat(text)
                .contains("Enter or \"pass\" if it is not known")
                .contains("It goes into the record")
                .contains("It says which parts this gearbox has");
        assertThat(kept().vehicle().unit()).isEqualTo("Tractor 9");
        assertThat(kept().vehicle().odometerKm()).isEmpty();
        assertThat(kept().gearbox().forwardRatios()).isEmpty();
        assertThat(kept().gearbox().range()).isPresent();
    }

    @Test
    void the_common_complaints_are_offered_to_whoever_says_nothing() {
        String text = run("\n\n\nair\n\n\n\n\nlist\n1 2\n\nstop\n");
        assertThat(text).contains("Common complaints with this gearbox");
        assertThat(kept().findings()).hasSize(2);
        assertThat(kept().complaint()).isNotEmpty();
    }

    @Test
    void a_value_is_asked_for_this_units_limit_in_one_line_that_can_be_passed() {
        String start = "\n\n\nair\n\n\n\n\ngrinds into low\n1\n\nregulator-outlet-low: 44 psi\n";
        String passed = run(start + "limit.line:\nend.more: \notherwise: no\n");
        assertThat(passed)
                .contains("Between which values is it good, in psi, by the manual of this unit?")
                .contains("44 psi, but without a limit nothing follows from it");
        assertThat(kept().measurements().get("range-regulator-pressure").limits())
                .isEmpty();
    }

    @Test
    void the_limit_given_in_one_line_lets_the_value_speak() {
        run(
                "\n\n\nair\n\n\n\n\ngrinds into low\n1\n\nregulator-outlet-low: 44 psi\nlimit.line: 57 to 62\notherwise: no\n");
        assertThat(kept().measurements().get("range-regulator-pressure").limits())
                .hasValueSatisfying(l -> assertThat(l.source()).isEqualTo("service manual of this unit"));
        assertThat(DIAGNOSIS.judge(kept()).verdict().carriedBy()).contains("low-air");
    }

    @Test
    void the_list_can_be_asked_for_below_the_words_which_stay_the_complaint() {
        String text = run("\n\n\nair\n\n\n\n\nruns funny since monday/list\n1 2\n\nstop\n");

        assertThat(text).contains("Common complaints with this gearbox");
        assertThat(kept().complaint()).isEqualTo("runs funny since monday");
        assertThat(kept().findings()).hasSize(2);
    }

    @Test
    void back_below_the_words_of_a_complaint_goes_back_and_keeps_none_of_them() {
        run("\n\n\nair\n\n\n\n\nruns funny/b\n\nlist\n1\n\nstop\n");

        assertThat(kept().complaint()).doesNotContain("funny", "\n");
    }

    @Test
    void back_at_the_limits_of_a_value_asks_for_the_value_again() {
        String text = run(
                "\n\n\nair\n\n\n\n\ngrinds into low\n1\n\nregulator-outlet-low: 44 psi\nlimit.line: b\notherwise: no\n");

        assertThat(text).contains("Not kept");
        assertThat(kept().measurements()).doesNotContainKey("range-regulator-pressure");
        assertThat(kept().findings().get("regulator-outlet-low").state()).isEqualTo(FindingState.ABSENT);
    }

    @Test
    void stop_at_the_limits_of_a_value_keeps_the_value() {
        run("\n\n\nair\n\n\n\n\ngrinds into low\n1\n\nregulator-outlet-low: 44 psi\nlimit.line: q\notherwise: no\n");

        assertThat(kept().measurements()).containsKey("range-regulator-pressure");
        assertThat(kept().findings()).doesNotContainKey("regulator-sags-in-shift");
    }

    @Test
    void back_at_the_limits_of_a_value_in_the_complaint_asks_for_the_complaint_again() {
        run(
                "\n\n\nair\n\n\n\n\ngrinds into low range. regulator 44 psi at rest\nall\nb\ngrinds into low range\n1\n\nstop\n");

        assertThat(kept().complaint()).isEqualTo("grinds into low range");
        assertThat(kept().measurements()).isEmpty();
    }

    /** Common practice, no source: of air the trade says pounds. */
    @Test
    void pounds_of_air_are_pounds_per_square_inch() {
        run(
                "\n\n\nair\n\n\n\n\ngrinds into low\n1\n\nregulator-outlet-low: 44 lb\nlimit.line: 57 to 62 pounds\notherwise: no\n");

        assertThat(kept().measurements().get("range-regulator-pressure"))
                .satisfies(read -> assertThat(read.unit()).isEqualTo(Unit.PSI))
                .satisfies(read -> assertThat(read.value()).isEqualTo(44))
                .satisfies(read -> assertThat(read.limits().orElseThrow().low()).hasValue(57));
    }

    @Test
    void what_the_driver_is_understood_to_say_is_confirmed_and_kept_as_told() {
        String text = run("\n\n\nair\n\n\n\n\ngrinds into low\n1\nthe range jumps out pulling\nall\nstop\n");
        assertThat(text).contains("It is kept as told by the driver.");
        assertThat(kept().findings().get("range-slips-out").toldBy()).isPresent();
    }

    @Test
    void a_card_in_the_complaint_is_read_with_its_values_and_their_limits_asked() {
        String text =
                run("\n\n\nair\n\n\n\n\ngrinds into low range. regulator 44 psi at rest\nall\n57 to 62\n\nstop\n");
        assertThat(text).contains("Air pressure at the regulator outlet, at rest: 44 psi");
        assertThat(kept().measurements().get("range-regulator-pressure").limits())
                .isPresent();
    }

    @Test
    void what_is_said_for_every_other_check_must_be_an_answer() {
        assertThatThrownBy(() -> run("otherwise: why\n"))
                .isInstanceOf(Refused.class)
                .hasMessage("line 1 of the answers: otherwise: 'why' is none of yes, no, unsure, pass, stop");
    }

    @Test
    void the_driver_is_told_in_spanish_what_the_technician_reads_in_english() {
        StringWriter text = new StringWriter();
        Page page = new Page(new PrintWriter(text), 80, false);
        CaseFile tow = ShippedKnowledge.samples().stream()
                .map(d -> d.present())
                .filter(f -> f.id().text().equals("scored-hubs-after-a-tow"))
                .findFirst()
                .orElseThrow();
        new StatusText(DIAGNOSIS.knowledge(), page, Texts.of("interview", Language.SPANISH), false)
                .driver(DIAGNOSIS.judge(tow).advice());
        page.flush();
        assertThat(text.toString()).contains("Antes del próximo remolque").contains("camión");
    }

    /** Every fourth finding answered to be there: far more than can be weighed exactly. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "ENGLISH | too many things have been found at once | interview asked | Look again at the last things",
                "SPANISH | demasiadas cosas a la vez | interview asked --language es | Revise otra vez lo último"
            })
    void more_than_can_be_weighed_is_told_in_plain_words_and_answers_can_be_taken_back(
            Language language, String what, String mend, String look) {
        List<String> found = answeredTooMuch();
        String last = found.get(found.size() - 1);

        assertThatThrownBy(() -> run("b\n\n", language, false))
                .isInstanceOf(Refused.class)
                .hasMessageContaining(what)
                .hasMessageContaining((found.size() - 1) + " ")
                .hasMessageContaining(mend);

        assertThat(printed).contains(look).contains("> b");
        assertThat(kept().findings())
                .containsKeys(found.get(0), found.get(found.size() - 2))
                .doesNotContainKey(last);

        notebook.write(found.subList(12, found.size() - 1).stream()
                .map(FindingCleared::new)
                .toList());
        assertThat(run("stop\n", language, false)).doesNotContain(look);
        assertThat(kept().findings()).containsKeys(found.get(0), found.get(11));
    }

    private List<String> answeredTooMuch() {
        List<String> all = DIAGNOSIS.knowledge().findings().values().stream()
                .filter(f -> f.kind() != Finding.Kind.COMPUTED && f.kind() != Finding.Kind.LOG)
                .filter(f -> !DIAGNOSIS.knowledge().retired().containsKey(f.id()))
                .map(Finding::id)
                .toList();
        List<String> some = IntStream.range(0, all.size())
                .filter(i -> i % 4 == 0)
                .mapToObj(all::get)
                .toList();
        run("\n\n\nair\n\n\n\n\ngrinds into low\n1\n\nstop\n");
        try (Interview interview = new Interview(DIAGNOSIS, notebook)) {
            some.forEach(id -> interview.answer(new FindingEntry(id, FindingState.PRESENT)));
        }
        return some;
    }
}
