package witnessmark.casefile.store;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import witnessmark.casefile.CaseRefused;

/** A database reached by its JDBC address. */
final class Database {
    private static final Pattern SHARED =
            Pattern.compile("jdbc:postgresql:(?://HOST(?:,HOST)*/)?[A-Za-z0-9_-]{1,63}(?:\\?(.*))?"
                    .replace("HOST", "(?:[A-Za-z0-9.-]+|\\[[0-9A-Fa-f:.]+])(?::\\d{1,5})?"));
    /** Options that say how the line is secured; any other can make the driver load classes or run commands. */
    private static final Set<String> LINE = Set.of("ssl", "sslmode", "sslrootcert", "sslcert", "sslkey");

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

    /** A PostgreSQL database at an address from outside; refused if it says more than host, name and TLS options. */
    static Database named(String url, String user, String password) {
        Matcher parts = SHARED.matcher(url);
        if (!parts.matches()) {
            throw new CaseRefused(
                    "store: the database address is not one this program keeps cases in",
                    "write jdbc:postgresql://HOST[:PORT]/NAME, letters, digits, - and _ in the name; user and password"
                            + " apart");
        }
        List<String> options =
                parts.group(1) == null ? List.of() : List.of(parts.group(1).split("&", -1));
        for (String option : options) {
            String name = option.split("=", 2)[0];
            if (!LINE.contains(name) || !option.matches("[a-z]+=[A-Za-z0-9_./~-]+")) {
                // The option itself is not shown: a password may stand in it.
                throw new CaseRefused(
                        "store: the database address has an option other than for TLS",
                        "keep to ssl, sslmode, sslrootcert, sslcert and sslkey with plain values; user and password"
                                + " apart");
            }
        }
        return new Database(url, user, password);
    }

    Connection connect() throws SQLException {
        return DriverManager.getConnection(url, user, password);
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
