package witnessmark.shell.interview;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.CharacterCodingException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import witnessmark.interview.NotAnAnswer;
import witnessmark.shell.print.Refused;
import witnessmark.shell.print.Terminal;

/**
 * Answers from a file or a pipe, one a line, read as they are needed. A line {@code key: answer} answers the question
 * of that name when it comes (the id of the finding, for a check); {@code otherwise: answer} every check that no other
 * line answers, and then nothing is said to other questions. Any other line answers the next question that no key answers; an empty one answers with nothing. Lines
 * that begin with # are passed over.
 */
final class PreparedAnswers implements Asker {
    private static final String OTHERWISE = "otherwise";
    private static final String KEY = "[a-z][a-z0-9.-]*";
    private static final int LONGEST = 20_000;

    private final BufferedReader lines;
    private final PrintWriter out;
    private final Map<String, String> byKey = new HashMap<>();
    private Optional<String> ahead = Optional.empty();
    private int line;

    PreparedAnswers(BufferedReader lines, PrintWriter out) {
        this.lines = lines;
        this.out = out;
    }

    /** Whether there is nothing at all to answer with. */
    boolean isEmpty() {
        if (ahead.isEmpty()) {
            ahead = Optional.ofNullable(read());
        }
        return ahead.isEmpty();
    }

    @Override
    public Optional<String> ask(String key, String prompt, List<String> words) {
        Optional<String> answer = Optional.ofNullable(byKey.remove(key)).or(() -> next(key));
        if (answer.isEmpty()) {
            answer = Optional.ofNullable(byKey.get(OTHERWISE)).map(a -> key.contains(SUB) ? "" : a);
        }
        out.println(prompt + Terminal.harmless(answer.orElse("")));
        return answer;
    }

    @Override
    public void refused(String why) {
        throw new Refused(why + " (line " + line + " of the answers)", "the answers given before it are kept");
    }

    @Override
    public void close() {}

    /** The next line that is not for another question. */
    private Optional<String> next(String key) {
        for (Optional<String> text = take(); text.isPresent(); text = take()) {
            String said = text.get();
            int colon = said.indexOf(':');
            if (colon < 1 || !said.substring(0, colon).matches(KEY)) {
                return Optional.of(said.strip());
            }
            String name = said.substring(0, colon);
            String answer = said.substring(colon + 1).strip();
            if (name.equals(key)) {
                return Optional.of(answer);
            }
            refuseCommand(name, answer);
            byKey.put(name, answer);
        }
        return Optional.empty();
    }

    /** What is said again and again must not be a request that is followed by the same question. */
    private void refuseCommand(String name, String answer) {
        if (name.equals(OTHERWISE) && !leadsOn(answer)) {
            throw new Refused("line " + line + " of the answers: otherwise: '" + Terminal.harmless(answer)
                    + "' is none of yes, no, unsure, pass, stop");
        }
    }

    private static boolean leadsOn(String answer) {
        try {
            return switch (AnswerLine.of(answer, Optional.empty()).request()) {
                case SAID, STOP -> true;
                case VALUE, WHY, BACK, SKIP, WHERE, HELP -> false;
            };
        } catch (NotAnAnswer e) {
            return false;
        }
    }

    private Optional<String> take() {
        Optional<String> text = ahead.or(() -> Optional.ofNullable(read()));
        ahead = Optional.empty();
        return text;
    }

    private @Nullable String read() {
        try {
            String text = lines.readLine();
            while (text != null && text.startsWith("#")) {
                line++;
                text = lines.readLine();
            }
            line++;
            if (text != null && text.length() > LONGEST) {
                throw new Refused(
                        "line " + line + " of the answers is longer than " + LONGEST + " characters", "shorten it");
            }
            return text;
        } catch (CharacterCodingException e) {
            throw new Refused("the answers are not UTF-8 from line " + (line + 1) + " on; write them as UTF-8 text");
        } catch (IOException e) {
            throw new Refused(
                    "the answers cannot be read from line " + (line + 1) + " on: " + e.getMessage(),
                    "give the path of a text file with one answer a line");
        }
    }
}
