package witnessmark.casefile.store;

import java.nio.file.Path;
import java.util.Optional;
import witnessmark.casefile.CaseRefused;
import witnessmark.casefile.CheckedText;

/**
 * Where cases are kept.
 *
 * @param folder holds the attachments, and the database itself unless another is named
 * @param database another database; empty for the one in the folder
 */
public record StoreLocation(Path folder, Optional<Database> database) {

    /** A database reached by its JDBC address: PostgreSQL, or H2 of the user's own choice. */
    public record Database(String url, String user, String password) {
        public Database {
            if (!url.startsWith("jdbc:postgresql:") && !url.startsWith("jdbc:h2:")) {
                throw new CaseRefused(
                        "store: '" + CheckedText.shown(url.split("[?;]", 2)[0])
                                + "' is not a database this program keeps cases in",
                        "give an address that begins with jdbc:postgresql: or jdbc:h2:");
            }
        }

        /** The address without its settings, among which a password may stand. */
        String shown() {
            return url.split("[?;]", 2)[0];
        }

        /** Without the password. */
        @Override
        public String toString() {
            return shown() + " as " + user;
        }
    }

    public StoreLocation {
        folder = folder.toAbsolutePath().normalize();
        if (folder.toString().contains(";")) {
            throw new CaseRefused(
                    "store: the folder name " + folder + " has a semicolon in it", "choose another folder");
        }
    }

    /** A store in a folder of its own. */
    public static StoreLocation in(Path folder) {
        return new StoreLocation(folder, Optional.empty());
    }

    /** A store in another database; attachments still lie in the folder. */
    public static StoreLocation in(Path folder, String url, String user, String password) {
        return new StoreLocation(folder, Optional.of(new Database(url, user, password)));
    }

    /** What messages call it. */
    String shown() {
        return database.map(Database::shown).orElse(folder.toString());
    }

    boolean isH2() {
        return database.isEmpty() || database.get().url().startsWith("jdbc:h2:");
    }

    /** The database to connect to. WRITE_DELAY=0 and AUTO_SERVER: nothing acknowledged is lost, two shells may share it. */
    Database reached() {
        return database.orElseGet(() -> new Database(
                "jdbc:h2:file:" + folder.resolve("cases") + ";WRITE_DELAY=0;AUTO_SERVER=TRUE;TRACE_LEVEL_FILE=0",
                "sa",
                ""));
    }
}
