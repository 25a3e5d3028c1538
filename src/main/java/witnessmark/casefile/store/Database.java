package witnessmark.casefile.store;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Properties;
import java.util.Set;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import witnessmark.casefile.CaseRefused;

/** A database reached by its JDBC address. */
final class Database {
    private static final String SERVER = "jdbc:postgresql:";
    private static final Pattern SHARED = Pattern.compile(SERVER
            + "(?://HOST(?:,HOST)*/)?[A-Za-z0-9_-]{1,63}(?:\\?(.*))?"
                    .replace("HOST", "(?:[A-Za-z0-9.-]+|\\[[0-9A-Fa-f:.]+])(?::\\d{1,5})?"));
    /** Options that say how the line is secured; any other can make the driver load classes or run commands. */
    private static final Set<String> LINE = Set.of("ssl", "sslmode", "sslrootcert", "sslcert", "sslkey");
    /** Those that take TLS or none, never whichever comes about. */
    private static final Set<String> MODES = Set.of("disable", "require", "verify-ca", "verify-full");

    /**
     * No change waits for ever for another, none is held up by a shell that sleeps in the middle, and no plan is kept from a
     * frequent word for a rare one.
     */
    private static final String MANNERS = "set lock_timeout = '20s'; set idle_in_transaction_session_timeout = '60s';"
            + " set plan_cache_mode = force_custom_plan";

    private static final Logger DRIVER = Logger.getLogger("org.postgresql");

    static {
        // What goes wrong is told in one line; the driver would write to the terminal as well.
        DRIVER.setLevel(Level.OFF);
    }

    private final String url;
    private final String user;
    private final String password;

    private Database(String url, String user, String password) {
        this.url = url;
        this.user = user;
        this.password = password;
    }

    /** An address this program has put together itself. */
    static Database of(String url, String user, String password) {
        return new Database(url, user, password);
    }

    /**
     * A PostgreSQL database at an address from outside; refused if it says more than host, name and TLS options. Where it
     * says nothing of TLS, the line is encrypted and the server's certificate checked.
     *
     * @param where what the address stands in, for a refusal
     */
    static Database named(String where, String url, String user, String password) {
        Matcher parts = SHARED.matcher(url);
        if (!parts.matches()) {
            throw new CaseRefused(
                    where + ": the database address is not one this program keeps cases in",
                    "write jdbc:postgresql://HOST[:PORT]/NAME, letters, digits, - and _ in the name; user and password"
                            + " apart");
        }
        List<String> options =
                parts.group(1) == null ? List.of() : List.of(parts.group(1).split("&", -1));
        options.forEach(option -> refuseUnlessOfTheLine(where, option));
        boolean said = options.stream().anyMatch(o -> o.startsWith("sslmode="));
        String secured = url + (options.isEmpty() ? "?" : "&") + "sslmode=verify-full";
        return new Database(said ? url : secured, user, password);
    }

    private static void refuseUnlessOfTheLine(String where, String option) {
        String name = option.split("=", 2)[0];
        // The option itself is not shown: a password may stand in it.
        if (!LINE.contains(name) || !option.matches("[a-z]+=[A-Za-z0-9_./~-]+")) {
            throw new CaseRefused(
                    where + ": the database address has an option other than for TLS",
                    "keep to ssl, sslmode, sslrootcert, sslcert and sslkey with plain values; user and password"
                            + " apart");
        }
        String value = option.substring(name.length() + 1);
        if ((name.equals("sslmode") && !MODES.contains(value)) || (name.equals("ssl") && !value.equals("true"))) {
            throw new CaseRefused(
                    where + ": the database address leaves it open whether the line is encrypted",
                    "write sslmode=verify-full, verify-ca, require (the server is not checked) or disable (no TLS)");
        }
    }

    Connection connect() throws SQLException {
        refuseWithoutDriver();
        Properties properties = new Properties();
        properties.setProperty("user", user);
        properties.setProperty("password", password);
        if (!isShared()) {
            return DriverManager.getConnection(url, properties);
        }
        // seconds; a server that has gone without a word is noticed
        properties.setProperty("connectTimeout", "10");
        properties.setProperty("socketTimeout", "60");
        properties.setProperty("tcpKeepAlive", "true");
        properties.setProperty("ApplicationName", "Witnessmark");
        properties.setProperty("reWriteBatchedInserts", "true");
        // no values of a case in a message
        properties.setProperty("logServerErrorDetail", "false");
        Connection opened = DriverManager.getConnection(url, properties);
        try (Statement statement = opened.createStatement()) {
            statement.execute(MANNERS);
            return opened;
        } catch (SQLException e) {
            opened.close();
            throw e;
        }
    }

    /** A library that is missing is a fault of the installation, and not of a server that does not answer. */
    private void refuseWithoutDriver() {
        try {
            DriverManager.getDriver(url);
        } catch (SQLException e) {
            // without the cause, which says only that no driver is suitable
            throw new IllegalStateException("the library is missing that reaches "
                    + (isShared() ? "PostgreSQL" : "the database of the folder"));
        }
    }

    /** Whether it is on a server that several shops may share. */
    boolean isShared() {
        return url.startsWith(SERVER);
    }

    String url() {
        return url;
    }

    String user() {
        return user;
    }

    String password() {
        return password;
    }

    /** The address without its options. */
    String shown() {
        return url.split("[?;]", 2)[0];
    }

    /** Without the password. */
    @Override
    public String toString() {
        return shown() + " as " + user;
    }
}
