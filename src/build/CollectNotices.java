import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
import java.util.jar.JarFile;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;

/**
 * Run by the build: gathers the notices of all libraries that ship into one file, each text once, and fails where a
 * library has no line in the list of licences. Arguments: list of licences, file to write, class path.
 */
class CollectNotices {
    private static final Pattern NOTICE = Pattern.compile("(META-INF/)?(NOTICE|COPYRIGHT)(\\.(TXT|MD))?");

    public static void main(String[] args) throws IOException {
        String licences = Files.readString(Path.of(args[0]));
        Map<String, TreeSet<String>> owners = new LinkedHashMap<>();
        TreeSet<String> unlisted = new TreeSet<>();
        for (String entry : args[2].split(File.pathSeparator)) {
            String jar = Path.of(entry).getFileName().toString();
            if (!jar.endsWith(".jar")) {
                continue;
            }
            if (!isListed(jar, licences)) {
                unlisted.add(jar);
            }
            for (String notice : notices(entry)) {
                owners.computeIfAbsent(notice, n -> new TreeSet<>()).add(jar);
            }
        }
        if (!unlisted.isEmpty()) {
            System.err.println("no licence is listed for " + unlisted + "; see " + args[0]);
            System.exit(1);
        }
        StringBuilder text = new StringBuilder("Notices of the libraries that this program is shipped with.\n");
        owners.forEach((notice, jars) -> text.append("\n======== ")
                .append(String.join(", ", jars))
                .append("\n\n")
                .append(notice)
                .append('\n'));
        Files.writeString(Path.of(args[1]), text);
    }

    /** The list says group:artifact:version, the file is named artifact-version.jar. */
    private static boolean isListed(String jar, String licences) {
        String name = jar.substring(0, jar.length() - ".jar".length());
        return licences.lines().anyMatch(line -> {
            for (String word : line.split("[( ]")) {
                String[] parts = word.split(":");
                if (parts.length == 3 && name.equals(parts[1] + "-" + parts[2])) {
                    return true;
                }
            }
            return false;
        });
    }

    private static List<String> notices(String file) throws IOException {
        try (JarFile jar = new JarFile(file)) {
            return jar.stream()
                    .filter(e -> NOTICE.matcher(e.getName().toUpperCase(Locale.ROOT)).matches())
                    .map(e -> text(jar, e))
                    .filter(text -> !text.isEmpty())
                    .toList();
        }
    }

    private static String text(JarFile jar, ZipEntry entry) {
        try (InputStream in = jar.getInputStream(entry)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .replace("\r\n", "\n")
                    .strip();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
