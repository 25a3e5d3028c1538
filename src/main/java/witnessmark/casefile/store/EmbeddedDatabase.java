package witnessmark.casefile.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;

/**
 * The database file in the folder of a store.
 *
 * <p>It is made under another name and put in its place whole, so that a kill in the middle leaves nothing half-made;
 * it is never made where a file is. The shell that opens it first serves it to others of this machine.
 */
final class EmbeddedDatabase {
    private static final String NAME = "cases";
    private static final String IN_THE_MAKING = "making-";
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("uuuuMMdd-HHmmss-SSS", Locale.ROOT);
    /** WRITE_DELAY=0: committed is written. No compacting at close: a kill or power cut in it would hit all cases. */
    private static final String HELD = ";WRITE_DELAY=0;TRACE_LEVEL_FILE=0;MAX_COMPACT_TIME=0;DEFAULT_LOCK_TIMEOUT=20000"
            + ";OPTIMIZE_REUSE_RESULTS=FALSE";

    private final Path folder;
    private final Path file;

    EmbeddedDatabase(Path folder) {
        this.folder = folder;
        this.file = folder.resolve(NAME + ".mv.db");
    }

    /** Opens the database, made if there is none, with its tables as this version knows them. */
    Connection open() throws SQLException {
        prepareFolder();
        try (StoreLock turn = StoreLock.take(folder)) {
            if (!Files.exists(file)) {
                make();
            }
            refuseEmpty();
            Connection opened = connect(shared());
            try {
                refuseCopy(opened);
                closeToOthers();
                Schema schema = new Schema(folder.toString(), shared(), opened);
                if (schema.isHalfMade()) {
                    opened.close();
                    setAside("half-made");
                    make();
                    return connect(shared());
                }
                schema.refuseWithoutTables();
                schema.bringUpToDate();
                return opened;
            } catch (SQLException | RuntimeException e) {
                opened.close();
                throw e;
            }
        } catch (IOException e) {
            throw unusable(e);
        }
    }

    /** The address by which several shells share the database. */
    Database shared() {
        return address(NAME, ";IFEXISTS=TRUE;AUTO_SERVER=TRUE");
    }

    private Database address(String name, String settings) {
        return Database.of("jdbc:h2:file:" + folder.resolve(name) + HELD + settings, "sa", "");
    }

    private static Connection connect(Database database) throws SQLException {
        // The shared store listens for other shells of this machine only, not on the network.
        if (System.getProperty("h2.bindAddress") == null) {
            System.setProperty("h2.bindAddress", "127.0.0.1");
        }
        return database.connect();
    }

    /** Makes the database with its tables under another name, on the disk, then gives it its own. */
    private void make() throws SQLException, IOException {
        removeLeftOvers();
        String name = IN_THE_MAKING + Long.toHexString(System.nanoTime());
        Path making = folder.resolve(name + ".mv.db");
        Database database = address(name, "");
        try (Connection opened = connect(database)) {
            new Schema(folder.toString(), database, opened).bringUpToDate();
        }
        OwnerOnly.close(making);
        try (FileChannel written = FileChannel.open(making, StandardOpenOption.WRITE)) {
            written.force(true);
        }
        Files.move(making, file, StandardCopyOption.ATOMIC_MOVE);
        OwnerOnly.sync(folder);
    }

    /** What a shell left behind that was killed while it made the database; only the holder of the turn makes one. */
    private void removeLeftOvers() throws IOException {
        try (DirectoryStream<Path> left = Files.newDirectoryStream(folder, IN_THE_MAKING + "*.db")) {
            for (Path path : left) {
                Files.deleteIfExists(path);
            }
        }
    }

    private void setAside(String why) throws IOException {
        String time = TIME.format(Clock.systemUTC().instant().atOffset(ZoneOffset.UTC));
        Files.move(file, folder.resolve(NAME + "-" + why + "-" + time + ".mv.db"), StandardCopyOption.ATOMIC_MOVE);
    }

    private void prepareFolder() {
        try {
            OwnerOnly.folder(folder);
        } catch (IOException e) {
            throw new StoreUnavailable(
                    folder.toString(), "the folder cannot be made", "choose a folder that can be written to", e);
        }
        if (!Files.isWritable(folder) || (Files.exists(file) && !Files.isWritable(file))) {
            throw new StoreUnavailable(
                    folder.toString(), "it may be read but not written to", "choose a folder that can be written to");
        }
    }

    private void closeToOthers() throws IOException {
        OwnerOnly.close(file);
        OwnerOnly.close(folder.resolve(NAME + ".lock.db"));
    }

    private void refuseEmpty() throws IOException {
        if (Files.size(file) == 0) {
            throw new StoreUnavailable(
                    folder.toString(),
                    "its file " + file.getFileName() + " is empty; something cut off what it held",
                    "bring the file back from a copy of the store; if nothing was ever kept in it, delete the file");
        }
    }

    /** A folder copied while a shell had it open carries that shell's lock, which leads to the original. */
    private void refuseCopy(Connection opened) throws SQLException, IOException {
        Path served;
        try (Statement statement = opened.createStatement();
                ResultSet row = statement.executeQuery("select database_path()")) {
            row.next();
            served = Path.of(Optional.ofNullable(row.getString(1)).orElse("") + ".mv.db");
        }
        if (!Files.exists(served) || !Files.isSameFile(served, file)) {
            throw new StoreUnavailable(
                    folder.toString(),
                    "its lock " + NAME + ".lock.db leads to another store, " + served.getParent()
                            + ": this folder was copied or moved while a shell was open",
                    "if no shell is open here, delete that lock; better copy the store again when all shells are"
                            + " closed");
        }
    }

    private StoreUnavailable unusable(IOException e) {
        return new StoreUnavailable(
                folder.toString(),
                "its files cannot be used: " + e.getClass().getSimpleName(),
                "check that the folder may be written to and has room",
                e);
    }
}
