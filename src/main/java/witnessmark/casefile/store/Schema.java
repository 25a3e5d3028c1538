package witnessmark.casefile.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.HashSet;
import java.util.Locale;
import java.util.OptionalInt;
import java.util.Set;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;

/** The tables of the store and their version. */
final class Schema {
    /** The highest migration in db/migration, which a store in a folder has. */
    static final int VERSION = 2;

    /** The highest in db/shared, which a shared database has on top. */
    static final int SHARED_VERSION = 4;

    /** The first row that the migration tool writes on H2 has no version. */
    private static final String WRITTEN_BY = "select \"version\" from \"flyway_schema_history\""
            + " where \"success\" and \"version\" is not null order by \"installed_rank\" desc";

    private static final Set<String> OURS =
            Set.of("flyway_schema_history", "case_file", "case_text", "case_entry", "case_finding", "case_measurement");

    private static final String[] OF_A_FOLDER = {"classpath:db/migration"};
    private static final String[] SHARED = {"classpath:db/migration", "classpath:db/shared"};
    private static final String PREPARE = "let the owner of the database run: store prepare";

    private final String where;
    private final Database database;
    private final Connection connection;

    /** The tables that a connection shows; the database is the same, for the migrations' own connection. */
    Schema(String where, Database database, Connection connection) {
        this.where = where;
        this.database = database;
        this.connection = connection;
    }

    /** Whether it was left by a shell that was killed while it made the tables, and so holds no case. */
    boolean isHalfMade() throws SQLException {
        Set<String> tables = tables();
        return !tables.isEmpty() && OURS.containsAll(tables) && version().isEmpty() && holdsNoCase(tables);
    }

    private boolean holdsNoCase(Set<String> tables) throws SQLException {
        if (!tables.contains("case_file")) {
            return true;
        }
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("select case_no from case_file limit 1")) {
            return !row.next();
        }
    }

    boolean isUpToDate() throws SQLException {
        OptionalInt found = version();
        return found.isPresent() && found.getAsInt() == known();
    }

    private int known() {
        return database.isShared() ? SHARED_VERSION : VERSION;
    }

    boolean hasTables() throws SQLException {
        return !tables().isEmpty();
    }

    /** The refusal of a database that was there before and shows nothing: what it held may be out of sight, not gone. */
    StoreUnavailable withoutTables() {
        return new StoreUnavailable(
                where,
                "the database file is not empty but shows no tables",
                "keep a copy of it, and bring the store back from a copy; if nothing was ever kept in it, move the"
                        + " file away");
    }

    private Set<String> tables() throws SQLException {
        Set<String> names = new HashSet<>();
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(
                        "select table_name from information_schema.tables where lower(table_schema) = 'public'")) {
            while (rows.next()) {
                names.add(rows.getString(1).toLowerCase(Locale.ROOT));
            }
        }
        return names;
    }

    /**
     * Makes or completes the tables. The migrations themselves are only looked at when the version differs, since
     * that takes longer than all else at the start.
     */
    void bringUpToDate() throws SQLException {
        OptionalInt found = version();
        refuseNewer(found);
        if (found.isEmpty() || found.getAsInt() < known()) {
            migrate();
        }
    }

    /**
     * Makes the tables of a shared database that has none, if this login may. Older ones are left as they are: the other
     * shops' programs may not know the new ones yet.
     */
    void makeOrRefuse() throws SQLException {
        OptionalInt found = version();
        refuseNewer(found);
        if (found.isPresent() && found.getAsInt() == known()) {
            return;
        }
        if (found.isPresent()) {
            throw new StoreUnavailable(
                    where,
                    "its tables are of version " + found.getAsInt() + ", this program needs " + known(),
                    PREPARE + "; older programs cannot use it afterwards");
        }
        refuseUnlessMaker("it has no tables that this login can see, and the login may not make any");
        migrate();
    }

    /** Completes the tables of a shared database, and gives the shops' logins their rights anew. */
    void prepare() throws SQLException {
        refuseNewer(version());
        refuseUnlessMaker("this login may not make or change its tables");
        migrate();
    }

    private void refuseUnlessMaker(String what) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("select has_schema_privilege('public', 'create')")) {
            row.next();
            if (!row.getBoolean(1)) {
                throw new StoreUnavailable(where, what, PREPARE);
            }
        }
    }

    private void refuseNewer(OptionalInt found) {
        if (found.isPresent() && found.getAsInt() > known()) {
            throw new StoreUnavailable(
                    where,
                    "it was written by a newer version of the program (tables of version " + found.getAsInt()
                            + ", this one knows " + known() + ")",
                    "use the newer program");
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
        for (int attempt = 1; ; attempt++) {
            try {
                Flyway.configure(Schema.class.getClassLoader())
                        .dataSource(database.url(), database.user(), database.password())
                        .locations(database.isShared() ? SHARED : OF_A_FOLDER)
                        .load()
                        .migrate();
                return;
            } catch (FlywayException e) {
                // Two shells may find the same new store at once: then the other one has made the tables.
                OptionalInt now = version();
                if (now.isPresent() && now.getAsInt() == known()) {
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
                        where,
                        "the database holds tables of something else",
                        "give the store a folder or database of its own",
                        e)
                : new StoreUnavailable(
                        where,
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
