package witnessmark.casefile.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.OptionalInt;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;

/** The tables of the store and their version. */
final class Schema {
    /** The highest migration in db/migration. */
    static final int VERSION = 1;

    private static final String WRITTEN_BY =
            "select \"version\" from \"flyway_schema_history\" where \"success\" order by \"installed_rank\" desc";

    private final StoreLocation location;
    private final Connection connection;

    Schema(StoreLocation location, Connection connection) {
        this.location = location;
        this.connection = connection;
    }

    /**
     * Makes or completes the tables. The migrations themselves are only looked at when the version differs, since
     * that takes longer than all else at the start.
     */
    void bringUpToDate() throws SQLException {
        OptionalInt found = version();
        if (found.isPresent() && found.getAsInt() > VERSION) {
            throw new StoreUnavailable(
                    location.shown(),
                    "it was written by a newer version of the program (tables of version " + found.getAsInt()
                            + ", this one knows " + VERSION + ")",
                    "use the newer program");
        }
        if (found.isEmpty() || found.getAsInt() < VERSION) {
            migrate();
        }
    }

    private OptionalInt version() throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(WRITTEN_BY)) {
            return rows.next() ? OptionalInt.of(Integer.parseInt(rows.getString(1))) : OptionalInt.empty();
        } catch (SQLException e) {
            if (SqlFault.of(e).kind() == SqlFault.Kind.LOST) {
                throw e;
            }
            return OptionalInt.empty();
        }
    }

    private void migrate() throws SQLException {
        var database = location.reached();
        for (int attempt = 1; ; attempt++) {
            try {
                Flyway.configure(Schema.class.getClassLoader())
                        .dataSource(database.url(), database.user(), database.password())
                        .locations("classpath:db/migration")
                        .load()
                        .migrate();
                return;
            } catch (FlywayException e) {
                // Two shells may find the same new store at once: then the other one has made the tables.
                OptionalInt now = version();
                if (now.isPresent() && now.getAsInt() == VERSION) {
                    return;
                }
                if (attempt == 5) {
                    throw refused(e);
                }
                pause();
            }
        }
    }

    private StoreUnavailable refused(FlywayException e) {
        boolean foreign = String.valueOf(e.getMessage()).contains("non-empty schema");
        return foreign
                ? new StoreUnavailable(
                        location.shown(),
                        "the database holds tables of something else",
                        "give the store a folder or database of its own",
                        e)
                : new StoreUnavailable(
                        location.shown(),
                        "its tables cannot be made or completed: "
                                + String.valueOf(e.getMessage())
                                        .lines()
                                        .findFirst()
                                        .orElse(""),
                        "keep a copy of the store, then repeat",
                        e);
    }

    private static void pause() {
        try {
            Thread.sleep(200);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
