package witnessmark.casefile.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
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
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DataAccessException;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.datasource.SingleConnectionDataSource;

/**
 * The database file in the folder of a store.
 *
 * <p>It is made under another name and put in its place whole, so that a kill in the middle leaves nothing half-made;
 * it is never made where a file is. The shell that opens it first serves it to others of this machine.
 */
final class EmbeddedDatabase {
    private static final String NAME = "cases";
    static final String FILE = NAME + ".mv.db";
    private static final String IN_THE_MAKING = "making-";
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("uuuuMMdd-HHmmss-SSS", Locale.ROOT);
    /**
     * The database writes and syncs when it likes: what it did not write before a kill is taken over from the journal.
     * No compacting at close: a kill or power cut in it would hit all cases.
     */
    private static final String HELD =
            ";TRACE_LEVEL_FILE=0;MAX_COMPACT_TIME=0;DEFAULT_LOCK_TIMEOUT=20000;OPTIMIZE_REUSE_RESULTS=FALSE";

    private final Path folder;
    private final Path file;
    private final Disk disk;
    private final Journal journal;
    private final OpenMark mark;

    EmbeddedDatabase(Path folder, Disk disk) {
        this.folder = folder;
        this.file = folder.resolve(FILE);
        this.disk = disk;
        this.journal = new Journal(folder.resolve("journal"), disk);
        this.mark = new OpenMark(folder, disk);
    }

    Journal journal() {
        return journal;
    }

    StoreLock turn() {
        return isOnlyRead() ? StoreLock.ofReader(folder) : StoreLock.take(folder);
    }

    /** Whether it is there but may not be written to. */
    boolean isOnlyRead() {
        return Files.exists(file) && !(disk.isWritable(folder) && disk.isWritable(file));
    }

    /** The refusal of a change. */
    StoreUnavailable onlyRead() {
        return new StoreUnavailable(
                folder.toString(), "it may be read but not written to", "choose a folder that can be written to");
    }

    private Connection openToRead() throws SQLException {
        Database database = address(NAME, ";IFEXISTS=TRUE;ACCESS_MODE_DATA=r");
        Connection opened = connect(database);
        try {
            if (!new Schema(folder.toString(), database, opened).isUpToDate()) {
                throw new StoreUnavailable(
                        folder.toString(),
                        "it may be read but not written to, and its tables are of another version of the program",
                        "copy it to a folder that can be written to");
            }
            opened.setAutoCommit(false);
            return opened;
        } catch (SQLException | RuntimeException e) {
            opened.close();
            throw e;
        }
    }

    /** Opens the database, made if there was never one, with its tables as this version knows them, and all its lines. */
    Connection open() throws SQLException {
        if (isOnlyRead()) {
            return openToRead();
        }
        prepareFolder();
        try (StoreLock turn = turn()) {
            boolean anew = !Files.exists(file);
            if (anew) {
                refuseIfJournalled("its file " + file.getFileName() + " is gone");
                refuseIfFilesAreKept();
                make();
            }
            refuseEmpty();
            boolean leftOpen = !anew && mark.isSet() && !journal.isEmpty() && !isOpenElsewhere();
            boolean cut = leftOpen && mark.isOfAnotherRun();
            if (cut) {
                rebuildInTurn();
            }
            takeAwayStaleLock();
            mark.set();
            return openThere(leftOpen && !cut);
        } catch (IOException e) {
            throw unusable(e);
        }
    }

    /** The lock of a shell that was killed here, which the database would wait out for seconds; not that of a copy. */
    private void takeAwayStaleLock() throws IOException {
        Path lock = folder.resolve(NAME + ".lock.db");
        if (Files.exists(lock) && mark.isOf(file) && !isOpenElsewhere()) {
            Files.delete(lock);
        }
    }

    private Connection openThere(boolean killed) throws SQLException, IOException {
        Connection opened = connectThere();
        try {
            refuseCopy(opened);
            mark.claim(file);
            closeToOthers();
            Schema schema = new Schema(folder.toString(), shared(), opened);
            if (schema.isHalfMade()) {
                opened.close();
                refuseIfJournalled("its tables are not whole");
                setAside("half-made");
                make();
                return openThere(false);
            }
            if (!schema.hasTables()) {
                refuseIfJournalled("its file is not empty but shows no tables");
                throw schema.withoutTables();
            }
            schema.bringUpToDate();
            opened.setAutoCommit(false);
            JdbcTemplate sql = new JdbcTemplate(new SingleConnectionDataSource(opened, true));
            if (killed && mayBeTorn(sql)) {
                opened.close();
                rebuildInTurn();
                return openThere(false);
            }
            catchUp(sql);
            opened.commit();
            return opened;
        } catch (DataIntegrityViolationException e) {
            opened.close();
            return openRebuilt(e);
        } catch (SQLException | DataAccessException e) {
            opened.close();
            if (killed && SqlFault.of(e).isOfTheFile()) {
                return openRebuilt(e);
            }
            offerJournal(e);
            throw e;
        } catch (IOException | RuntimeException e) {
            opened.close();
            throw e;
        }
    }

    /** A database that holds lines which it says it has not was torn by a kill; its journal knows all that was kept. */
    private Connection openRebuilt(Exception torn) throws SQLException, IOException {
        if (isOpenElsewhere()) {
            throw rebuildable("its database is not of one piece", torn);
        }
        rebuildInTurn();
        return openThere(false);
    }

    /**
     * After a kill: whether the database holds other rows than it says, or the shell was at a change that the journal has
     * and the database has not, rows of which it may hold all the same. A journal that does not go on from the database is
     * no ground. Without a kill such a database was changed by hand, which stays as it is for {@code case verify} to tell.
     */
    private boolean mayBeTorn(JdbcTemplate sql) throws IOException {
        StoreLines lines = new StoreLines(sql);
        Optional<StoreHead> head = lines.head();
        if (head.isEmpty() || !lines.journalBegun()) {
            return false;
        }
        return journal.endsWith(head.get())
                ? !(lines.endWith(head.get()) && lines.fillAllCases())
                : journal.follow(head.get(), change -> {}).fits();
    }

    private Connection connectThere() throws SQLException, IOException {
        try {
            return connect(shared());
        } catch (SQLException e) {
            offerJournal(e);
            throw e;
        }
    }

    /** Takes over from the journal what the database does not know; the caller holds the turn and commits. */
    void catchUp(JdbcTemplate sql) throws IOException {
        new CatchUp(folder, sql, journal).run();
    }

    /** The same, quicker where this shell has caught up before and no other has written since, as is usual. */
    void catchUpAgain(JdbcTemplate sql) throws IOException {
        Optional<StoreHead> head = new StoreLines(sql).head();
        if (head.isEmpty() || !journal.endsWith(head.get())) {
            catchUp(sql);
        }
    }

    /**
     * The same before a comparison: a shell that was ended in mid-save leaves its change in the journal alone, while
     * others have the database open. A journal that does not go on from the database is left for the comparison to tell.
     */
    void catchUpWhereItGoesOn(JdbcTemplate sql) throws IOException {
        Optional<StoreHead> head = new StoreLines(sql).head();
        if (isOnlyRead() || head.isEmpty() || !journal.isThere() || journal.endsWith(head.get())) {
            return;
        }
        if (journal.follow(head.get(), change -> {}).fits()) {
            catchUp(sql);
        }
    }

    private void refuseIfJournalled(String what) throws IOException {
        if (!journal.isEmpty()) {
            throw rebuildable(what, null);
        }
    }

    /** Files come to a store after its first case: where there are some, a new database would hide that one is lost. */
    private void refuseIfFilesAreKept() throws IOException {
        Path kept = folder.resolve("attachments");
        if (!Files.isDirectory(kept)) {
            return;
        }
        try (Stream<Path> all = Files.walk(kept)) {
            if (all.anyMatch(Files::isRegularFile)) {
                throw new StoreUnavailable(
                        folder.toString(),
                        "its file " + file.getFileName() + " and its journal are gone, while files of cases are in "
                                + kept.getFileName(),
                        "bring both back from a copy of the store; to begin anew, choose another folder");
            }
        }
    }

    /** When the database cannot be read: its entries are in the journal as well. */
    private void offerJournal(Exception e) throws IOException {
        SqlFault fault = SqlFault.of(e);
        if (fault.isOfTheFile() && !journal.isEmpty()) {
            throw rebuildable("its database cannot be read", e);
        }
    }

    /** Gives every whole line of the journal, in order; the caller holds the turn. A sentence where it is not whole. */
    Optional<String> eachLine(Consumer<StoreLine> taker) throws IOException {
        Journal.Followed followed = journal.follow(StoreHead.NONE, change -> change.forEach(taker));
        return followed.fits() && followed.tornFile() == null
                ? Optional.empty()
                : Optional.of(
                        "the journal is not whole after line " + followed.end().lines());
    }

    StoreUnavailable rebuildable(String what, @Nullable Throwable cause) {
        return new StoreUnavailable(
                folder.toString(),
                what,
                "its entries are in the journal beside it; make it anew with: store rebuild",
                cause);
    }

    /** Makes the database anew from the journal; the one that was there is kept aside. */
    Rebuilt rebuild() throws SQLException {
        prepareFolder();
        try (StoreLock turn = turn()) {
            if (journal.isEmpty()) {
                throw new StoreUnavailable(
                        folder.toString(), "there is no journal to make it from", "bring the store back from a copy");
            }
            if (isOpenElsewhere()) {
                throw new StoreUnavailable(
                        folder.toString(), "another shell has it open", "close all shells, then repeat");
            }
            return rebuildInTurn();
        } catch (IOException e) {
            throw unusable(e);
        }
    }

    private Rebuilt rebuildInTurn() throws SQLException, IOException {
        removeLeftOvers();
        String name = IN_THE_MAKING + Long.toHexString(System.nanoTime());
        Database database = address(name, "");
        Rebuilt made;
        try (Connection opened = connect(database)) {
            new Schema(folder.toString(), database, opened).bringUpToDate();
            opened.setAutoCommit(false);
            made = filled(new JdbcTemplate(new SingleConnectionDataSource(opened, true)));
            opened.commit();
        }
        Optional<Path> aside = Files.exists(file) ? Optional.of(setAside("before-rebuild")) : Optional.empty();
        Files.deleteIfExists(folder.resolve(NAME + ".lock.db"));
        putInPlace(name);
        return new Rebuilt(made.cases(), made.head(), aside, made.tornAfter());
    }

    private Rebuilt filled(JdbcTemplate sql) throws IOException {
        StoreLines lines = new StoreLines(sql);
        lines.numberAll();
        Journal.Followed followed = new CatchUp(folder, sql, journal).replay(StoreHead.NONE);
        if (!followed.fits()) {
            throw new StoreUnavailable(
                    folder.toString(),
                    "its journal is not whole after line " + followed.end().lines(),
                    "bring back the journal from a copy of the store");
        }
        lines.setJournalBegun();
        long cases = new CaseSearch(sql).count(CaseQuery.all());
        return new Rebuilt(cases, followed.end(), Optional.empty(), followed.tornFile() != null);
    }

    /** The database holds a lock on its file as long as it is open. */
    private boolean isOpenElsewhere() throws IOException {
        if (!Files.exists(file)) {
            return false;
        }
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE);
                FileLock lock = channel.tryLock()) {
            return lock == null;
        } catch (OverlappingFileLockException e) {
            // held by this very process
            return true;
        }
    }

    /** After the connection was closed, in turn: if no other shell has the database open, all of it is on the disk. */
    void closed() throws IOException {
        if (Files.exists(folder.resolve(NAME + ".lock.db")) || !Files.exists(file) || isOnlyRead()) {
            return;
        }
        try (FileChannel written = disk.open(file, StandardOpenOption.WRITE)) {
            written.force(true);
        }
        mark.clear();
    }

    /** Begins a new journal from the database as it is; the one that was there is kept aside. */
    void beginJournal() throws SQLException {
        prepareFolder();
        try (StoreLock turn = turn();
                Connection opened = connect(shared())) {
            refuseCopy(opened);
            opened.setAutoCommit(false);
            StoreLines lines = new StoreLines(new JdbcTemplate(new SingleConnectionDataSource(opened, true)));
            journal.begin(lines::all, folder.resolve("journal-before-" + now()));
            lines.setJournalBegun();
            opened.commit();
        } catch (IOException e) {
            throw unusable(e);
        }
    }

    /** The refusal of a database whose file turns out damaged in the middle of work. */
    StoreUnavailable damaged(SqlFault fault) {
        try {
            return journal.isEmpty()
                    ? fault.told(folder.toString())
                    : rebuildable("the database file is damaged", fault.cause());
        } catch (IOException e) {
            return fault.told(folder.toString());
        }
    }

    /** The address by which several shells share the database. */
    Database shared() {
        return address(NAME, ";IFEXISTS=TRUE;AUTO_SERVER=TRUE");
    }

    private Database address(String name, String settings) {
        return Database.of("jdbc:h2:" + disk.scheme() + folder.resolve(name) + HELD + settings, "sa", "");
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
        Database database = address(name, "");
        try (Connection opened = connect(database)) {
            new Schema(folder.toString(), database, opened).bringUpToDate();
        }
        putInPlace(name);
    }

    private void putInPlace(String name) throws IOException {
        Path making = folder.resolve(name + ".mv.db");
        OwnerOnly.close(making);
        try (FileChannel written = disk.open(making, StandardOpenOption.WRITE)) {
            written.force(true);
        }
        disk.move(making, file);
    }

    /** What a shell left behind that was killed while it made the database; only the holder of the turn makes one. */
    private void removeLeftOvers() throws IOException {
        try (DirectoryStream<Path> left = Files.newDirectoryStream(folder, IN_THE_MAKING + "*.db")) {
            for (Path path : left) {
                Files.deleteIfExists(path);
            }
        }
    }

    private Path setAside(String why) throws IOException {
        Path aside = folder.resolve(NAME + "-" + why + "-" + now() + ".mv.db");
        disk.move(file, aside);
        return aside;
    }

    private static String now() {
        return TIME.format(Clock.systemUTC().instant().atOffset(ZoneOffset.UTC));
    }

    private void prepareFolder() {
        if (Files.exists(folder) && !Files.isDirectory(folder)) {
            throw new StoreUnavailable(
                    folder.toString(),
                    "it is a file, not a folder",
                    "give the folder of a store; a file that names a database on a server goes with --database");
        }
        try {
            OwnerOnly.folder(folder);
        } catch (IOException e) {
            throw new StoreUnavailable(
                    folder.toString(), "the folder cannot be made", "choose a folder that can be written to", e);
        }
        if (!disk.isWritable(folder)) {
            throw onlyRead();
        }
    }

    private void closeToOthers() throws IOException {
        OwnerOnly.close(file);
        OwnerOnly.close(folder.resolve(NAME + ".lock.db"));
    }

    private void refuseEmpty() throws IOException {
        if (Files.size(file) == 0) {
            refuseIfJournalled("its file " + file.getFileName() + " is empty");
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
            String path = Optional.ofNullable(row.getString(1)).orElse("");
            served = Path.of((path.startsWith(disk.scheme())
                            ? path.substring(disk.scheme().length())
                            : path) + ".mv.db");
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
