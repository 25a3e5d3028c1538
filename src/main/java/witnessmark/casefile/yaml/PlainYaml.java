package witnessmark.casefile.yaml;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.composer.Composer;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.ReaderException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.parser.ParserImpl;
import org.snakeyaml.engine.v2.scanner.StreamReader;
import witnessmark.casefile.CheckedText;

/** YAML 1.2 from outside, without tags, anchors and aliases, as nodes that know where they stand. */
final class PlainYaml {
    private PlainYaml() {}

    /** The one document in the bytes. Throws {@link CaseFileFaults} if there is none, or it cannot be read. */
    static Node read(byte[] bytes, Bounds bounds, FaultList faults) {
        return compose(decoded(bytes, faults), bounds, faults);
    }

    static Node compose(String text, Bounds bounds, FaultList faults) {
        LoadSettings settings = LoadSettings.builder()
                .setCodePointLimit(Integer.MAX_VALUE)
                .setUseMarks(true)
                .build();
        try {
            Composer composer = new Composer(
                    settings,
                    new GuardedParser(
                            new ParserImpl(settings, new StreamReader(settings, text)), bounds.depth(), faults));
            Optional<Node> node = composer.getSingleNode();
            if (node.isEmpty()) {
                faults.add(1, 1, "the file is empty", "write a case into it");
                throw faults.failure();
            }
            return node.get();
        } catch (MarkedYamlEngineException e) {
            Optional<Mark> mark = e.getProblemMark();
            faults.add(
                    mark.map(Mark::getLine).orElse(0) + 1,
                    mark.map(Mark::getColumn).orElse(0) + 1,
                    "this is not YAML: " + CheckedText.shown(e.getProblem()),
                    "check quotes, colons and indentation");
        } catch (ReaderException e) {
            addUnreadable(text, e, faults);
        } catch (YamlEngineException e) {
            faults.add(1, 1, "this is not YAML: " + CheckedText.shown(e.getMessage()), "write it as YAML");
        }
        throw faults.failure();
    }

    private static void addUnreadable(String text, ReaderException e, FaultList faults) {
        int at = text.offsetByCodePoints(0, Math.min(e.getPosition(), text.codePointCount(0, text.length())));
        addAt(text, at, "character " + String.format("U+%04X", e.getCodePoint()) + " cannot be kept", faults);
    }

    private static void addAt(String text, int at, String what, FaultList faults) {
        int line =
                1 + (int) text.substring(0, at).chars().filter(c -> c == '\n').count();
        int column = at - text.lastIndexOf('\n', Math.max(0, at - 1));
        faults.add(line, Math.max(1, column), what, "remove it");
    }

    private static String decoded(byte[] bytes, FaultList faults) {
        ByteBuffer in = ByteBuffer.wrap(bytes);
        CharBuffer out = CharBuffer.allocate(bytes.length);
        var decoder = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        try {
            var result = decoder.decode(in, out, true);
            if (result.isError()) {
                result.throwException();
            }
        } catch (CharacterCodingException e) {
            String before = out.flip().toString();
            int line = 1 + (int) before.chars().filter(c -> c == '\n').count();
            int column = before.length() - before.lastIndexOf('\n');
            faults.add(line, column, "the text is not UTF-8", "save the file as UTF-8");
            throw faults.failure();
        }
        String text = out.flip().toString();
        return text.startsWith("\uFEFF") ? text.substring(1) : text;
    }
}
