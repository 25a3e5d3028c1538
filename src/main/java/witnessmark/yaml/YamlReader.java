package witnessmark.yaml;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.ReaderException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;

/** Turns plain YAML 1.2 in UTF-8 into {@link YamlNode}s whose places are known. */
public final class YamlReader {
    private final int mostBytes;

    /** @param mostBytes inputs larger than this are refused unread */
    public YamlReader(int mostBytes) {
        this.mostBytes = mostBytes;
    }

    /** The root of the file's document; empty if it could not be read, the reason then stands in {@code faults}. */
    public Optional<YamlNode> read(Path file, Faults faults) {
        String name = file.toString();
        try (InputStream in = Files.newInputStream(file)) {
            return read(name, in.readNBytes(mostBytes + 1), faults);
        } catch (NoSuchFileException e) {
            faults.add(new Fault(name, 0, 0, "is not there", "check the name"));
        } catch (IOException e) {
            boolean folder = Files.isDirectory(file);
            faults.add(new Fault(
                    name,
                    0,
                    0,
                    folder ? "is a folder" : "cannot be read",
                    folder ? "name one file in it" : "check that you may read it"));
        }
        return Optional.empty();
    }

    /** The root of the document in the bytes, {@code file} standing for it in messages; empty after a fault. */
    public Optional<YamlNode> read(String file, byte[] content, Faults faults) {
        if (content.length > mostBytes) {
            faults.add(new Fault(
                    file,
                    0,
                    0,
                    "has more than " + mostBytes + " bytes",
                    "take out what does not belong, such as photographs and logs"));
            return Optional.empty();
        }
        return decoded(file, content, faults).flatMap(text -> tree(file, text, faults));
    }

    private static Optional<YamlNode> tree(String file, String text, Faults faults) {
        try {
            return Optional.of(new YamlNode(file, GrowTree.from(file, text), faults));
        } catch (GrowTree.Stopped e) {
            faults.add(e.fault());
        } catch (MarkedYamlEngineException e) {
            Optional<Mark> mark = e.getProblemMark().or(e::getContextMark);
            faults.add(new Fault(
                    file,
                    mark.map(m -> m.getLine() + 1).orElse(0),
                    mark.map(m -> m.getColumn() + 1).orElse(0),
                    "this is not YAML: " + PlainText.shown(e.getProblem()),
                    "check quotes, colons and indentation"));
        } catch (ReaderException e) {
            int at = text.offsetByCodePoints(0, Math.min(e.getPosition(), text.codePointCount(0, text.length())));
            faults.add(faultAfter(
                    file,
                    text.substring(0, at),
                    "character " + PlainText.codePoint(e.getCodePoint()) + " cannot be kept",
                    "remove it"));
        } catch (YamlEngineException e) {
            faults.add(new Fault(file, 0, 0, "is not YAML: " + PlainText.shown(e.getMessage()), "mend or replace it"));
        }
        return Optional.empty();
    }

    private static Optional<String> decoded(String file, byte[] content, Faults faults) {
        CharBuffer out = CharBuffer.allocate(content.length);
        CoderResult result = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .decode(ByteBuffer.wrap(content), out, true);
        String text = out.flip().toString();
        if (result.isError()) {
            faults.add(faultAfter(file, text, "the text is not UTF-8", "save the file as UTF-8"));
            return Optional.empty();
        }
        return Optional.of(text.startsWith("\uFEFF") ? text.substring(1) : text);
    }

    /** A fault at the character that follows the text. */
    private static Fault faultAfter(String file, String before, String what, String mend) {
        int line = 1 + (int) before.chars().filter(c -> c == '\n').count();
        return new Fault(file, line, before.length() - before.lastIndexOf('\n'), what, mend);
    }
}
