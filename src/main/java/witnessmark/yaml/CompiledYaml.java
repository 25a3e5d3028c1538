package witnessmark.yaml;

import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * Documents already parsed, in a compact form of our own: reading it takes a small part of the time that parsing takes,
 * and every check that follows still sees the places in the original files. Written by the build, read at the start.
 */
public final class CompiledYaml {
    private static final int FORM = 2;
    private static final byte TEXT = 0;
    private static final byte ITEMS = 1;
    private static final byte ENTRIES = 2;
    private static final byte NOTHING = 3;

    private CompiledYaml() {}

    /** A parsed document: the file's name and its root. */
    public record Document(String file, YamlNode root) {}

    /** Writes the documents; they must have been read without a fault. */
    public static void write(List<Document> documents, DataOutputStream out) throws IOException {
        out.writeInt(FORM);
        out.writeInt(documents.size());
        for (Document document : documents) {
            out.writeUTF(document.file());
            write(document.root().tree(), out);
        }
    }

    /** Reads what {@link #write} wrote; faults found later go to {@code faults}. */
    public static List<Document> read(DataInputStream in, Faults faults) throws IOException {
        if (in.readInt() != FORM) {
            throw new IOException("compiled documents of another version; build the program anew");
        }
        int count = in.readInt();
        List<Document> documents = new ArrayList<>(count);
        for (int i = 0; i < count; i++) {
            String file = in.readUTF();
            documents.add(new Document(file, new YamlNode(file, readTree(in), faults)));
        }
        return documents;
    }

    private static void write(Tree tree, DataOutputStream out) throws IOException {
        if (tree instanceof Tree.Text text) {
            head(TEXT, tree, out);
            byte[] value = text.value().getBytes(StandardCharsets.UTF_8);
            out.writeInt(value.length);
            out.write(value);
        } else if (tree instanceof Tree.Nothing) {
            head(NOTHING, tree, out);
            out.writeInt(0);
        } else if (tree instanceof Tree.Items list) {
            head(ITEMS, tree, out);
            out.writeInt(list.items().size());
            for (Tree item : list.items()) {
                write(item, out);
            }
        } else if (tree instanceof Tree.Entries map) {
            head(ENTRIES, tree, out);
            out.writeInt(map.entries().size());
            for (Tree.Entry entry : map.entries()) {
                write(entry.name(), out);
                write(entry.value(), out);
            }
        }
    }

    private static void head(byte kind, Tree tree, DataOutputStream out) throws IOException {
        out.writeByte(kind);
        out.writeInt(tree.line());
        out.writeInt(tree.column());
    }

    private static Tree readTree(DataInputStream in) throws IOException {
        byte kind = in.readByte();
        int line = in.readInt();
        int column = in.readInt();
        int size = in.readInt();
        return switch (kind) {
            case TEXT -> new Tree.Text(new String(in.readNBytes(size), StandardCharsets.UTF_8), line, column);
            case NOTHING -> new Tree.Nothing(line, column);
            case ITEMS -> {
                List<Tree> items = new ArrayList<>(size);
                for (int i = 0; i < size; i++) {
                    items.add(readTree(in));
                }
                yield new Tree.Items(items, line, column);
            }
            case ENTRIES -> {
                List<Tree.Entry> entries = new ArrayList<>(size);
                for (int i = 0; i < size; i++) {
                    entries.add(new Tree.Entry(readTree(in), readTree(in)));
                }
                yield new Tree.Entries(entries, line, column);
            }
            default -> throw new IOException("compiled documents are damaged; build the program anew");
        };
    }
}
