package witnessmark.casefile.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.Objects;
import java.util.concurrent.ThreadLocalRandom;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.datasource.SingleConnectionDataSource;
import witnessmark.casefile.store.SqlFault.Kind;

/** One connection to the database, opened at first use, opened again when lost, used by one thread at a time. */
final class Session implements AutoCloseable {
    private static final int ATTEMPTS = 12;

    private final StoreLocation location;
    private final @Nullable EmbeddedDatabase embedded;
    private final ReentrantLock lock = new ReentrantLock();
    private @Nullable Connection connection;
    private @Nullable JdbcTemplate sql;

    Session(StoreLocation location) {
        this.location = location;
        this.embedded = location.database().isPresent() ? null : new EmbeddedDatabase(location.folder());
    }

    /** Reads in one transaction; what was lost with a connection is read again. */
    <T> T read(Function<JdbcTemplate, T> work) {
        return run(work, false);
    }

    /**
     * Writes in one transaction that is on the disk when this returns. The work may be done again after a conflict
     * or a lost connection, and must then see for itself whether its first try was kept.
     */
    <T> T write(Function<JdbcTemplate, T> work) {
        return run(work, true);
    }

    private <T> T run(Function<JdbcTemplate, T> work, boolean writes) {
        lock.lock();
        try {
            for (int attempt = 1; ; attempt++) {
                try {
                    return once(work, writes);
                } catch (SQLException | DataAccessException e) {
                    SqlFault fault = SqlFault.of(e);
                    abandon(fault.kind() == Kind.LOST);
                    if (!fault.canBeTriedAgain() || attempt == ATTEMPTS) {
                        throw fault.told(location.shown());
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

    private <T> T once(Function<JdbcTemplate, T> work, boolean writes) throws SQLException {
        JdbcTemplate template = opened();
        Connection open = Objects.requireNonNull(connection);
        T result = work.apply(template);
        open.commit();
        if (writes && embedded != null) {
            // Without this a commit is in the file but not yet on the disk: H2 syncs only now and then.
            template.execute("checkpoint sync");
        }
        return result;
    }

    private JdbcTemplate opened() throws SQLException {
        JdbcTemplate open = sql;
        if (open != null) {
            return open;
        }
        Connection fresh = connect();
        try {
            fresh.setAutoCommit(false);
        } catch (SQLException | RuntimeException e) {
            closeQuietly(fresh);
            throw e;
        }
        connection = fresh;
        open = new JdbcTemplate(new SingleConnectionDataSource(fresh, true));
        sql = open;
        return open;
    }

    private Connection connect() throws SQLException {
        if (embedded != null) {
            return embedded.open();
        }
        Database shared = location.database().orElseThrow();
        Connection fresh = shared.connect();
        try {
            new Schema(location.shown(), shared, fresh).bringUpToDate();
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
            Thread.sleep(ThreadLocalRandom.current().nextLong(5, 20L + 30L * attempt));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Closes the connection, if there is one; the next use opens another. */
    @Override
    public void close() {
        lock.lock();
        try {
            closeQuietly(connection);
            connection = null;
            sql = null;
        } finally {
            lock.unlock();
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
