package witnessmark.shell.interview;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import witnessmark.shell.print.Refused;

/** Somebody, or a file, that answers questions. */
interface Asker extends AutoCloseable {
    /** Stands in the keys of questions that are no checks. */
    String SUB = ".";

    /**
     * The answer to a question.
     *
     * @param key names the question, so that a prepared answer can be found: the id of the finding, or for another question a
     *     word with {@link #SUB} in it
     * @param prompt what stands before the cursor
     * @param words what can be completed
     * @return empty if the one who answers has gone
     */
    Optional<String> ask(String key, String prompt, List<String> words);

    /**
     * The same, answered in several lines, as a pasted job card is: at a terminal an empty line ends it; a prepared answer is
     * one line.
     *
     * @param whole whether a line ends it, as a word that asks for something else does
     */
    default Optional<String> askLines(String key, String prompt, List<String> words, Predicate<String> whole) {
        return ask(key, prompt, words);
    }

    /** The same, answered by one of {@code keys}: a single key where somebody sits at a terminal. */
    default Optional<String> press(String key, String prompt, List<String> keys) {
        return ask(key, prompt, keys).map(answer -> answer.strip().toLowerCase(Locale.ROOT));
    }

    /** Tells that an answer was refused; throws {@link Refused} where nobody is there to give a better one. */
    void refused(String why);

    @Override
    void close();
}
