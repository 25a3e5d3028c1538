package witnessmark.casefile.store;

import java.io.IOException;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ThreadLocalRandom;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.datasource.SingleConnectionDataSource;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.store.SqlFault.Kind;

/** One connection to the database, opened at first use, opened again when lost, used by one thread at a time. */
final class Session implements AutoCloseable {
    private static final int ATTEMPTS = 12;
    /** A shell that is just closing the database takes longer than one that writes. */
    private static final int ATTEMPTS_WHILE_IN_USE = 40;
    /** A server that was there in this session, and was ended, may come up again by itself. */
    private static final long WAIT_FOR_SERVER = TimeUnit.SECONDS.toNanos(10);

    private static final long WAIT_FOR_UNKNOWN = TimeUnit.SECONDS.toNanos(2);
    /** Longer than the server lets a shell that sleeps hold up the others. */
    private static final long WAIT_FOR_OTHERS = TimeUnit.SECONDS.toNanos(90);

    private final StoreLocation location;
    private final @Nullable EmbeddedDatabase embedded;
    private final ReentrantLock lock = new ReentrantLock();
    private @Nullable Connection connection;
    private @Nullable JdbcTemplate sql;
    private boolean reached;

    Session(StoreLocation location, Disk disk) {
        this.location = location;
        this.embedded =
                location.folder().map(f -> new EmbeddedDatabase(f, disk)).orElse(null);
    }

    /** What messages call the store. */
    String shown() {
        return location.shown();
    }

    /** Reads in one transaction, the store as it is at one moment; what was lost with a connection is read again. */
    <T> T read(Function<JdbcTemplate, T> work) {
        return run(() -> {
            JdbcTemplate template = openedToRead();
            T result = work.apply(template);
            open().commit();
            return result;
        });
    }

    /**
     * Writes in one transaction that is on the disk when this returns. The work may be done again after a conflict
     * or a lost connection, and must then see for itself whether its first try was kept.
     */
    <T> T write(Function<CaseRows, T> work) {
        return run(() -> {
            JdbcTemplate template = opened();
            return embedded == null ? writeShared(template, work) : writeJournalled(embedded, template, work);
        });
    }

    /** Writes to tables that hold no entries, in one transaction; the work may be done again. */
    <T> T writeTables(Function<JdbcTemplate, T> work) {
        return run(() -> {
            T result = work.apply(opened());
            open().commit();
            return result;
        });
    }

    /**
     * Takes over lines of another store that follow the one named, in one transaction that is on the disk when this
     * returns; {@link StoreUnavailable} if this store does not end there.
     */
    void takeOver(String source, StoreHead after, List<StoreLine> heap) {
        run(() -> {
            JdbcTemplate template = opened();
            if (embedded == null) {
                take(template, source, after, heap);
                open().commit();
                return heap;
            }
            try (StoreLock turn = embedded.turn()) {
                embedded.catchUpAgain(template);
                if (take(template, source, after, heap)) {
                    embedded.journal().append(heap);
                }
                commit(embedded);
                return heap;
            } catch (IOException e) {
                throw journalNotWritten(e);
            }
        });
    }

    /** Whether they were taken now; not if a first try, whose answer was lost, took them. */
    private boolean take(JdbcTemplate template, String source, StoreHead after, List<StoreLine> heap) {
        StoreHead now = new StoreLines(template).lockedHead();
        StoreLine last = heap.get(heap.size() - 1);
        if (now.equals(new StoreHead(last.number(), last.hash()))) {
            return false;
        }
        if (!now.equals(after)) {
            throw new StoreUnavailable(
                    location.shown(),
                    "somebody else writes to it while it is copied to",
                    "let nobody work in it until the copy is made, then repeat");
        }
        new TakeLines(template, source).take(heap);
        return true;
    }

    private <T> T writeShared(JdbcTemplate template, Function<CaseRows, T> work) throws SQLException {
        T result = work.apply(new CaseRows(template));
        open().commit();
        return result;
    }

    /**
     * What is written is on the disk in the journal before the database is told to keep it: should the database not
     * have kept it after all, it is taken over from there.
     */
    private <T> T writeJournalled(EmbeddedDatabase database, JdbcTemplate template, Function<CaseRows, T> work)
            throws SQLException {
        if (database.isOnlyRead()) {
            throw database.onlyRead();
        }
        try (StoreLock turn = database.turn()) {
            database.catchUpAgain(template);
            StoreLines lines = new StoreLines(template);
            T result = work.apply(new CaseRows(template, lines));
            if (!lines.taken().isEmpty()) {
                database.journal().append(lines.taken());
            }
            commit(database);
            return result;
        } catch (IOException e) {
            throw journalNotWritten(e);
        }
    }

    private StoreUnavailable journalNotWritten(IOException e) {
        return new StoreUnavailable(
                location.shown(),
                "its journal cannot be written: " + e.getMessage(),
                "check that the disk has room and the folder may be written to, then repeat",
                e);
    }

    private void commit(EmbeddedDatabase database) throws SQLException, IOException {
        try {
            open().commit();
        } catch (SQLException e) {
            if (SqlFault.of(e).kind() != Kind.LOST) {
                database.journal().takeBack();
            }
            throw e;
        }
    }

    /** Compares what the database holds with the chain over all entries and with the journal; what is amiss. */
    List<String> compareLines() {
        return run(() -> {
            JdbcTemplate template = openedToRead();
            CompareLines compare = new CompareLines(template);
            List<String> amiss = new ArrayList<>();
            if (embedded != null) {
                try (StoreLock turn = embedded.turn()) {
                    embedded.catchUpWhereItGoesOn(template);
                    embedded.eachLine(compare::journalled).ifPresent(amiss::add);
                    amiss.addAll(compare.found(head(template)));
                } catch (IOException e) {
                    throw journalNotRead(e);
                }
            } else {
                amiss.addAll(compare.found(head(template)));
            }
            open().commit();
            return amiss;
        });
    }

    private static StoreHead head(JdbcTemplate template) {
        return new StoreLines(template).head().orElse(StoreHead.NONE);
    }

    /** What the journal says of a case that the database does not; empty without a journal or if both say the same. */
    Optional<String> compareCase(CaseId id, long entries, String hash) {
        if (embedded == null) {
            return Optional.empty();
        }
        StoreLine last = lastJournalled(embedded, id);
        long known = last == null ? 0 : last.row().number();
        return known == entries && (last == null || last.row().hash().equals(hash))
                ? Optional.empty()
                : Optional.of("the journal ends with entry " + known + " of it, the database with entry " + entries
                        + (known == entries ? " of another hash" : ""));
    }

    private @Nullable StoreLine lastJournalled(EmbeddedDatabase database, CaseId id) {
        StoreLine[] last = new StoreLine[1];
        run(() -> {
            JdbcTemplate template = openedToRead();
            try (StoreLock turn = database.turn()) {
                database.catchUpWhereItGoesOn(template);
                open().commit();
                return database.eachLine(line -> {
                    if (line.caseId().equals(id.text())) {
                        last[0] = line;
                    }
                });
            } catch (IOException e) {
                throw journalNotRead(e);
            }
        });
        return last[0];
    }

    private StoreUnavailable journalNotRead(IOException e) {
        return new StoreUnavailable(location.shown(), "its journal cannot be read", "check the disk and the rights", e);
    }

    /** Looks at more than one thing of a store in a folder while no shell adds to it, so that they belong together. */
    <T> T whileNobodyWrites(Supplier<T> look) {
        if (embedded == null) {
            return look.get();
        }
        lock.lock();
        try (StoreLock turn = embedded.turn()) {
            return look.get();
        } finally {
            lock.unlock();
        }
    }

    /** Work with the database that may fail because of it. */
    private interface Work<T> {
        T run() throws SQLException;
    }

    private <T> T run(Work<T> work) {
        lock.lock();
        long begun = System.nanoTime();
        try {
            for (int attempt = 1; ; attempt++) {
                try {
                    return work.run();
                } catch (SQLException | DataAccessException e) {
                    SqlFault fault = SqlFault.of(e);
                    abandon(fault.kind() == Kind.LOST || fault.kind() == Kind.STARTING);
                    if (!fault.canBeTriedAgain() || isEnough(fault, attempt, begun)) {
                        throw told(fault);
                    }
                    pause(attempt);
                } catch (RuntimeException e) {
                    abandon(false);
                    throw e;
                }
            }
        } finally {
            lock.unlock();
        }
    }

    private boolean isEnough(SqlFault fault, int attempt, long begun) {
        long waited = System.nanoTime() - begun;
        if (fault.kind() == Kind.STARTING) {
            return waited > (reached ? WAIT_FOR_OTHERS : WAIT_FOR_SERVER);
        }
        if (embedded == null && fault.kind() != Kind.CONFLICT) {
            return waited > (reached ? WAIT_FOR_SERVER : WAIT_FOR_UNKNOWN);
        }
        if (waited > WAIT_FOR_OTHERS) {
            return true;
        }
        return attempt >= (fault.kind() == Kind.IN_USE ? ATTEMPTS_WHILE_IN_USE : ATTEMPTS);
    }

    private StoreUnavailable told(SqlFault fault) {
        return embedded != null && fault.kind() == Kind.DAMAGED
                ? embedded.damaged(fault)
                : fault.told(location.shown());
    }

    private Connection open() {
        return Objects.requireNonNull(connection);
    }

    private JdbcTemplate opened() throws SQLException {
        JdbcTemplate open = sql;
        if (open != null) {
            return open;
        }
        Connection fresh = connect();
        connection = fresh;
        open = new JdbcTemplate(new SingleConnectionDataSource(fresh, true));
        sql = open;
        return open;
    }

    private JdbcTemplate openedToRead() throws SQLException {
        JdbcTemplate template = opened();
        if (embedded == null) {
            template.execute("set transaction isolation level repeatable read, read only");
        }
        return template;
    }

    private Connection connect() throws SQLException {
        return embedded == null ? connectShared(Schema::makeOrRefuse) : embedded.open();
    }

    private interface Tables {
        void look(Schema schema) throws SQLException;
    }

    private Connection connectShared(Tables tables) throws SQLException {
        Database shared = location.database().orElseThrow();
        Connection fresh = shared.connect();
        try {
            tables.look(new Schema(location.shown(), shared, fresh));
            fresh.setAutoCommit(false);
            JdbcTemplate template = new JdbcTemplate(new SingleConnectionDataSource(fresh, true));
            // What is acknowledged is on the server's disk, whatever the server does for others.
            if ("off".equals(template.queryForObject("select current_setting('synchronous_commit')", String.class))) {
                template.execute("set synchronous_commit = on");
            }
            StoreLines lines = new StoreLines(template);
            if (lines.head().isEmpty()) {
                lines.numberAll();
            }
            fresh.commit();
            reached = true;
            return fresh;
        } catch (SQLException | RuntimeException e) {
            closeQuietly(fresh);
            throw e;
        }
    }

    private void abandon(boolean lost) {
        Connection open = connection;
        if (open == null) {
            return;
        }
        try {
            open.rollback();
        } catch (SQLException e) {
            lost = true;
        }
        if (lost) {
            close();
        }
    }

    private static void pause(int attempt) {
        try {
            Thread.sleep(ThreadLocalRandom.current().nextLong(5, 20L + 15L * attempt));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Makes or completes the tables, and gives the logins of a shared store their rights. */
    void prepare() {
        if (embedded == null) {
            run(() -> {
                close();
                connection = connectShared(Schema::prepare);
                sql = new JdbcTemplate(new SingleConnectionDataSource(open(), true));
                return open();
            });
        }
    }

    /** Makes the database anew from the journal beside it. */
    Rebuilt rebuild() {
        lock.lock();
        try {
            close();
            return journalled().rebuild();
        } catch (SQLException | DataAccessException e) {
            throw SqlFault.of(e).told(location.shown());
        } finally {
            lock.unlock();
        }
    }

    /** Begins a new journal from the database as it is, which is opened without looking at the old one. */
    void beginJournal() {
        lock.lock();
        try {
            close();
            journalled().beginJournal();
        } catch (SQLException | DataAccessException e) {
            throw SqlFault.of(e).told(location.shown());
        } finally {
            lock.unlock();
        }
    }

    private EmbeddedDatabase journalled() {
        if (embedded == null) {
            throw new StoreUnavailable(
                    location.shown(),
                    "its journal is the database server's own log",
                    "use the means of the server to bring it back");
        }
        return embedded;
    }

    /** Closes the connection, if there is one; the next use opens another. */
    @Override
    public void close() {
        lock.lock();
        try {
            closeInTurn();
            connection = null;
            sql = null;
        } finally {
            lock.unlock();
        }
    }

    /** In turn, so that no other shell opens the file while this one, which serves it, is closing. */
    private void closeInTurn() {
        if (embedded == null || connection == null) {
            closeQuietly(connection);
            return;
        }
        try (StoreLock turn = embedded.turn()) {
            closeQuietly(connection);
            embedded.closed();
        } catch (StoreUnavailable | IOException e) {
            // the next opening takes it for not closed, and looks to it
            closeQuietly(connection);
        }
    }

    private static void closeQuietly(@Nullable Connection open) {
        if (open != null) {
            try {
                open.close();
            } catch (SQLException e) {
                // what was acknowledged is on the disk already, and there is nothing else to keep
            }
        }
    }
}
