package witnessmark.shell.settings;

import java.util.List;
import org.springframework.shell.core.command.completion.CompletionContext;
import org.springframework.shell.core.command.completion.CompletionProposal;
import org.springframework.shell.core.command.completion.CompletionProvider;
import org.springframework.stereotype.Component;

/** Completes the names of settings, then what a setting can be. */
@Component("completeSetting")
class CompleteSetting implements CompletionProvider {
    private static final int COMMAND_WORDS = 2;

    @Override
    public List<CompletionProposal> apply(CompletionContext context) {
        List<String> words = context.getWordIndex() <= COMMAND_WORDS
                ? Setting.words()
                : Setting.parse(context.getWords().get(COMMAND_WORDS))
                        .map(Setting::choices)
                        .orElse(List.of());
        return words.stream().map(CompletionProposal::new).toList();
    }
}
