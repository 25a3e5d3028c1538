package witnessmark.casefile.store;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import witnessmark.casefile.CaseRefused;

/** Where cases are kept: in a folder of this machine, or in a database on a server that several shops share. */
public final class StoreLocation {
    private final @Nullable Path folder;
    private final @Nullable Database database;

    private StoreLocation(@Nullable Path folder, @Nullable Database database) {
        this.folder = folder;
        this.database = database;
    }

    /** A store in a folder of its own. */
    public static StoreLocation in(Path folder) {
        Path place = folder.toAbsolutePath().normalize();
        if (folder.toString().isBlank()) {
            throw new CaseRefused("store: the folder has no name", "give the path of one after --store");
        }
        if (place.toString().contains(";")) {
            throw new CaseRefused(
                    "store: the folder name " + place + " has a semicolon in it", "choose another folder");
        }
        return new StoreLocation(place, null);
    }

    /**
     * A store in the PostgreSQL database that a file names by lines {@code url}, {@code user} and {@code password}.
     * {@link CaseRefused} if the file is not for its owner alone, or its address is more than host, name and TLS options.
     */
    public static StoreLocation shared(Path file) {
        return of(DatabaseFile.read(file));
    }

    static StoreLocation of(Database database) {
        return new StoreLocation(null, database);
    }

    /** The store in a folder, or the one that a file names. */
    public static StoreLocation at(Path place) {
        return Files.isRegularFile(DatabaseFile.notAnAddress(place)) ? shared(place) : in(place);
    }

    /** The same for a store that must be there already. */
    public static StoreLocation existing(Path place) {
        DatabaseFile.notAnAddress(place);
        if (!Files.isRegularFile(place) && !Files.exists(place.resolve(EmbeddedDatabase.FILE))) {
            throw new CaseRefused(
                    "store: there is none in '" + place + "'",
                    "give the folder of a store, or a file that names a shared database");
        }
        return at(place);
    }

    /** The folder, or empty for a shared store. */
    Optional<Path> folder() {
        return Optional.ofNullable(folder);
    }

    /** The shared database, or empty for the one in the folder. */
    Optional<Database> database() {
        return Optional.ofNullable(database);
    }

    /** What messages call it. */
    String shown() {
        return database == null ? String.valueOf(folder) : database.shown();
    }
}
