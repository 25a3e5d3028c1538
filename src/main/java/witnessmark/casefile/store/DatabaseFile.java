package witnessmark.casefile.store;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import witnessmark.casefile.CaseRefused;

/**
 * The file that says where a shared database is and how to get in: lines {@code url = ...}, {@code user = ...} and
 * {@code password = ...}, each value as it stands to the end of the line. No value of it is ever shown.
 */
final class DatabaseFile {
    private static final List<String> NAMES = List.of("url", "user", "password");
    private static final long LARGEST = 10_000;
    private static final Set<PosixFilePermission> OF_OTHERS = Set.of(
            PosixFilePermission.GROUP_READ,
            PosixFilePermission.GROUP_WRITE,
            PosixFilePermission.OTHERS_READ,
            PosixFilePermission.OTHERS_WRITE);

    private DatabaseFile() {}

    /** Refuses an address in the place of a path, without saying it again: it may hold a password. */
    static Path notAnAddress(Path place) {
        if (place.toString().contains("jdbc:")) {
            throw new CaseRefused(
                    "store: a database is named by a file, not by its address",
                    "write lines " + String.join(", ", NAMES) + " into a file of your own and give its path");
        }
        return place;
    }

    /** The database it names; {@link CaseRefused} if the file is not there, open to others or says something else. */
    static Database read(Path given) {
        Path file = notAnAddress(given);
        String where = "database file '" + file + "'";
        Map<String, String> values = new HashMap<>();
        int number = 0;
        for (String line : lines(where, file)) {
            number++;
            if (line.isBlank() || line.strip().startsWith("#")) {
                continue;
            }
            int equals = line.indexOf('=');
            String name = equals < 0 ? "" : line.substring(0, equals).strip();
            // The line is not shown: it may be the password.
            if (!NAMES.contains(name) || values.containsKey(name)) {
                throw new CaseRefused(
                        where + ", line " + number + ": not NAME = VALUE with a name of its own",
                        "write one line each for " + String.join(", ", NAMES));
            }
            values.put(name, line.substring(equals + 1).strip());
        }
        for (String name : NAMES.subList(0, 2)) {
            if (values.getOrDefault(name, "").isEmpty()) {
                throw new CaseRefused(
                        where + ": no line " + name + " = ...", "write one line each for " + String.join(", ", NAMES));
            }
        }
        return Database.named(where, values.get("url"), values.get("user"), values.getOrDefault("password", ""));
    }

    private static List<String> lines(String where, Path file) {
        try {
            if (!Files.isRegularFile(file) || Files.size(file) > LARGEST) {
                throw new CaseRefused(
                        where + ": no such file of a few lines",
                        "give the path of one with lines " + String.join(", ", NAMES));
            }
            if (file.getFileSystem().supportedFileAttributeViews().contains("posix")
                    && Files.getPosixFilePermissions(file).stream().anyMatch(OF_OTHERS::contains)) {
                throw new CaseRefused(where + ": others may read or write it", "close it with: chmod 600 " + file);
            }
            return Files.readAllLines(file, StandardCharsets.UTF_8);
        } catch (CharacterCodingException e) {
            throw new CaseRefused(where + ": it is not UTF-8", "write it anew as UTF-8 text");
        } catch (IOException e) {
            throw new CaseRefused(where + ": it cannot be read", "check that it is a file you may read");
        }
    }
}
