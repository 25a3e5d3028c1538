package witnessmark.casefile.store;

import java.nio.file.Path;
import java.util.Optional;
import witnessmark.casefile.CaseRefused;

/** Where cases are kept: in a folder, which holds the attachments and, unless another is named, the database. */
public final class StoreLocation {
    private final Path folder;
    private final Optional<Database> database;

    private StoreLocation(Path folder, Optional<Database> database) {
        this.folder = folder.toAbsolutePath().normalize();
        this.database = database;
        if (folder.toString().isBlank()) {
            throw new CaseRefused("store: the folder has no name", "give the path of one after --store");
        }
        if (this.folder.toString().contains(";")) {
            throw new CaseRefused(
                    "store: the folder name " + this.folder + " has a semicolon in it", "choose another folder");
        }
    }

    /** A store in a folder of its own. */
    public static StoreLocation in(Path folder) {
        return new StoreLocation(folder, Optional.empty());
    }

    /**
     * A store in a PostgreSQL database; attachments still lie in the folder. {@link CaseRefused} unless the address is
     * host, name and TLS options.
     */
    public static StoreLocation in(Path folder, String url, String user, String password) {
        return new StoreLocation(folder, Optional.of(Database.named(url, user, password)));
    }

    Path folder() {
        return folder;
    }

    /** The database named, or empty for the one in the folder. */
    Optional<Database> database() {
        return database;
    }

    /** What messages call it. */
    String shown() {
        return database.map(Database::shown).orElse(folder.toString());
    }
}
