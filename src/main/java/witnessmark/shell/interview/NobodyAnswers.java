package witnessmark.shell.interview;

import java.util.List;
import java.util.Optional;
import witnessmark.shell.print.Refused;

/** Stands where nobody can be asked. */
final class NobodyAnswers implements Asker {
    @Override
    public Optional<String> ask(String key, String prompt, List<String> words) {
        return Optional.empty();
    }

    @Override
    public void refused(String why) {
        throw new Refused(why);
    }

    @Override
    public void close() {}
}
