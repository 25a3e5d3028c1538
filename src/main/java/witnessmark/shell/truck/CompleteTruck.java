package witnessmark.shell.truck;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.shell.core.command.completion.CompletionContext;
import org.springframework.shell.core.command.completion.CompletionProposal;
import org.springframework.shell.core.command.completion.CompletionProvider;
import org.springframework.stereotype.Component;
import witnessmark.truck.ReadyTrucks;
import witnessmark.truck.TruckRefused;

/** Completes the names of trucks and the command's options. */
@Component("completeTruck")
class CompleteTruck implements CompletionProvider {
    private static final int MOST = 200;

    private final ObjectProvider<Trucks> trucks;

    CompleteTruck(ObjectProvider<Trucks> trucks) {
        this.trucks = trucks;
    }

    @Override
    public List<CompletionProposal> apply(CompletionContext context) {
        String typed = context.currentWordUpToCursor() == null ? "" : context.currentWordUpToCursor();
        Stream<String> words = typed.startsWith("--")
                ? context.getCommand().getOptions().stream().map(o -> "--" + o.longName())
                : names().stream();
        return words.filter(word -> word.startsWith(typed))
                .limit(MOST)
                .map(CompletionProposal::new)
                .toList();
    }

    private List<String> names() {
        List<String> names = new ArrayList<>(ReadyTrucks.names());
        try {
            names.addAll(trucks.getObject().kept().names());
        } catch (TruckRefused e) {
            // A folder that cannot be read is told of when a command needs it, not while typing.
        }
        return names;
    }
}
