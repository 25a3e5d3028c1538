package witnessmark.document.template;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.regex.Pattern;
import witnessmark.document.DocumentRefused;

/** Where templates come from: a shop's own folder first, the shipped ones for what it does not hold. */
public final class TemplateFolder {
    private static final int LARGEST = 1_000_000;
    private static final String SHIPPED = "/document/";
    private static final Pattern NAME = Pattern.compile("[a-z0-9]+([.-][a-z0-9]+)*");

    private final Optional<Path> own;

    private TemplateFolder(Optional<Path> own) {
        this.own = own;
    }

    /** The shipped templates alone. */
    public static TemplateFolder shipped() {
        return new TemplateFolder(Optional.empty());
    }

    /** A shop's folder; {@link DocumentRefused} if it is none. */
    public static TemplateFolder of(Path folder) {
        if (!Files.isDirectory(folder)) {
            throw new DocumentRefused(
                    "template folder '" + folder + "' is no folder", "give the path of one after --templates");
        }
        return new TemplateFolder(Optional.of(folder));
    }

    /** The text of the named file; {@link DocumentRefused} if there is none, or it is no text. */
    public String text(String name) {
        byte[] bytes = bytes(name)
                .orElseThrow(() ->
                        new DocumentRefused("there is no template '" + name + "'", "see the shipped ones for names"));
        return new String(bytes, StandardCharsets.UTF_8).replace("\r\n", "\n");
    }

    /** The bytes of the named file; empty if there is none. */
    public Optional<byte[]> bytes(String name) {
        if (!NAME.matcher(name).matches()) {
            throw new DocumentRefused(
                    "template '" + name + "' is not a template name",
                    "use lower-case letters, digits, dots and hyphens");
        }
        Optional<Path> file = own.map(folder -> folder.resolve(name)).filter(Files::isRegularFile);
        return file.isPresent() ? file.map(TemplateFolder::read) : shipped(name);
    }

    private static byte[] read(Path file) {
        try {
            if (Files.size(file) > LARGEST) {
                throw new DocumentRefused("'" + file + "' is larger than " + LARGEST + " bytes", "make it smaller");
            }
            return Files.readAllBytes(file);
        } catch (IOException e) {
            throw new DocumentRefused("'" + file + "' cannot be read", "check that you may read it");
        }
    }

    private static Optional<byte[]> shipped(String name) {
        try (InputStream in = TemplateFolder.class.getResourceAsStream(SHIPPED + name)) {
            return in == null ? Optional.empty() : Optional.of(in.readAllBytes());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
