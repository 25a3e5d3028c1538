package witnessmark.yaml;

import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Documents already parsed, in a compact form of our own: reading it takes a small part of the time that parsing takes,
 * and every check that follows still sees the places in the original files. Written by the build, read at the start.
 * Each text stands once, however often it is used.
 */
public final class CompiledYaml {
    private static final int FORM = 3;
    private static final byte TEXT = 0;
    private static final byte ITEMS = 1;
    private static final byte ENTRIES = 2;
    private static final byte NOTHING = 3;

    private CompiledYaml() {}

    /** A parsed document: the file's name and its root. */
    public record Document(String file, YamlNode root) {}

    /** Writes the documents; they must have been read without a fault. */
    public static void write(List<Document> documents, DataOutputStream out) throws IOException {
        Map<String, Integer> places = new LinkedHashMap<>();
        for (Document document : documents) {
            places.putIfAbsent(document.file(), places.size());
            collect(document.root().tree(), places);
        }
        out.writeInt(FORM);
        out.writeInt(places.size());
        for (String text : places.keySet()) {
            byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
            out.writeInt(bytes.length);
            out.write(bytes);
        }
        out.writeInt(documents.size());
        for (Document document : documents) {
            out.writeInt(places.get(document.file()));
            write(document.root().tree(), places, out);
        }
    }

    /** Reads what {@link #write} wrote, and nothing beyond it; faults found later go to {@code faults}. */
    public static List<Document> read(ByteBuffer in, Faults faults) throws IOException {
        try {
            if (in.getInt() != FORM) {
                throw new IOException("compiled documents of another version; build the program anew");
            }
            String[] texts = new String[in.getInt()];
            for (int i = 0; i < texts.length; i++) {
                texts[i] = text(in);
            }
            int count = in.getInt();
            List<Document> documents = new ArrayList<>(count);
            for (int i = 0; i < count; i++) {
                String file = texts[in.getInt()];
                documents.add(new Document(file, new YamlNode(file, readTree(in, texts), faults)));
            }
            return documents;
        } catch (BufferUnderflowException
                | IllegalArgumentException
                | IndexOutOfBoundsException
                | NegativeArraySizeException e) {
            throw damaged();
        }
    }

    /** A text with its length before it. */
    public static String text(ByteBuffer in) {
        int length = in.getInt();
        int start = in.position();
        in.position(start + length);
        return new String(in.array(), start, length, StandardCharsets.UTF_8);
    }

    private static void collect(Tree tree, Map<String, Integer> places) {
        if (tree instanceof Tree.Text text) {
            places.putIfAbsent(text.value(), places.size());
        } else if (tree instanceof Tree.Items list) {
            list.items().forEach(item -> collect(item, places));
        } else if (tree instanceof Tree.Entries map) {
            for (Tree.Entry entry : map.entries()) {
                collect(entry.name(), places);
                collect(entry.value(), places);
            }
        }
    }

    private static void write(Tree tree, Map<String, Integer> places, DataOutputStream out) throws IOException {
        if (tree instanceof Tree.Text text) {
            head(TEXT, tree, places.get(text.value()), out);
        } else if (tree instanceof Tree.Nothing) {
            head(NOTHING, tree, 0, out);
        } else if (tree instanceof Tree.Items list) {
            head(ITEMS, tree, list.items().size(), out);
            for (Tree item : list.items()) {
                write(item, places, out);
            }
        } else if (tree instanceof Tree.Entries map) {
            head(ENTRIES, tree, map.entries().size(), out);
            for (Tree.Entry entry : map.entries()) {
                write(entry.name(), places, out);
                write(entry.value(), places, out);
            }
        }
    }

    private static void head(byte kind, Tree tree, int sizeOrText, DataOutputStream out) throws IOException {
        out.writeByte(kind);
        out.writeInt(tree.line());
        out.writeInt(tree.column());
        out.writeInt(sizeOrText);
    }

    private static Tree readTree(ByteBuffer in, String[] texts) throws IOException {
        byte kind = in.get();
        int line = in.getInt();
        int column = in.getInt();
        int sizeOrText = in.getInt();
        return switch (kind) {
            case TEXT -> new Tree.Text(texts[sizeOrText], line, column);
            case NOTHING -> new Tree.Nothing(line, column);
            case ITEMS -> {
                List<Tree> items = new ArrayList<>(sizeOrText);
                for (int i = 0; i < sizeOrText; i++) {
                    items.add(readTree(in, texts));
                }
                yield new Tree.Items(items, line, column);
            }
            case ENTRIES -> {
                List<Tree.Entry> entries = new ArrayList<>(sizeOrText);
                for (int i = 0; i < sizeOrText; i++) {
                    entries.add(new Tree.Entry(readTree(in, texts), readTree(in, texts)));
                }
                yield new Tree.Entries(entries, line, column);
            }
            default -> throw damaged();
        };
    }

    private static IOException damaged() {
        return new IOException("compiled documents are damaged; build the program anew");
    }
}
