package witnessmark.shell.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.jline.reader.Candidate;
import org.jline.reader.ParsedLine;
import org.jline.reader.Parser.ParseContext;
import org.jline.reader.impl.DefaultParser;
import org.junit.jupiter.api.Test;
import org.springframework.shell.core.command.Command;
import org.springframework.shell.core.command.CommandRegistry;
import org.springframework.shell.core.command.completion.CompletionProposal;

/** Candidates are shown in the order in which they sort, so this order is what TAB shows. */
class CompleteCommandTest {
    private static final Command INTERVIEW = Command.builder()
            .name("interview")
            .completionProvider(context -> Stream.of("--answers", "--as", "zeta", "new", "night")
                    .filter(word -> word.startsWith(context.currentWordUpToCursor()))
                    .map(CompletionProposal::new)
                    .toList())
            .execute(context -> "");

    private static final CompleteCommand COMPLETE = new CompleteCommand(new CommandRegistry(Set.of(INTERVIEW)));

    private static List<Candidate> offered(String line) {
        ParsedLine parsed = new DefaultParser().parse(line, line.length(), ParseContext.COMPLETE);
        List<Candidate> candidates = new ArrayList<>();
        COMPLETE.complete(null, parsed, candidates);
        return candidates.stream().sorted().toList();
    }

    @Test
    void what_is_named_comes_before_the_options() {
        assertThat(offered("interview "))
                .extracting(Candidate::value)
                .containsExactly("new", "night", "zeta", "--answers", "--as");
    }

    @Test
    void what_is_begun_is_completed() {
        assertThat(offered("interview n")).extracting(Candidate::value).containsExactly("new", "night");
        assertThat(offered("int")).extracting(Candidate::value).contains("interview");
    }

    @Test
    void a_finding_that_wants_its_state_is_followed_by_no_blank() {
        Command set = Command.builder()
                .name("set")
                .completionProvider(context -> List.of(new CompletionProposal("oil-level-low=")))
                .execute(context -> "");
        List<Candidate> candidates = new ArrayList<>();
        new CompleteCommand(new CommandRegistry(Set.of(set)))
                .complete(null, new DefaultParser().parse("set ", 4, ParseContext.COMPLETE), candidates);
        assertThat(candidates).singleElement().satisfies(c -> assertThat(c.complete())
                .isFalse());
    }
}
