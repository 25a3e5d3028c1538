package witnessmark.casefile.store;

import java.sql.SQLException;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.CannotGetJdbcConnectionException;

/** What a failure of the database means for the one who wanted to read or write. */
record SqlFault(Kind kind, @Nullable String said, Throwable cause) {
    enum Kind {
        /** The connection is gone, as when the shell that held the database open was closed. */
        LOST,
        /** The server is there and not ready yet, as after the machine went down. */
        STARTING,
        /** Another shell wrote the same at the same time. */
        CONFLICT,
        IN_USE,
        DAMAGED,
        READ_ONLY,
        FULL,
        OTHER_FORMAT,
        /** The file cannot be read or written, for a reason below the database. */
        UNREADABLE,
        NOT_ADMITTED,
        /** The login may read or write something else, not this. */
        NOT_ALLOWED,
        /** The line is not encrypted, or the server not the one it should be. */
        NOT_SECURED,
        /** The server takes no more connections for now. */
        CROWDED,
        /** The server takes no writes, as one that follows another. */
        STANDBY,
        OTHER
    }

    private static final String WITHOUT_TLS = "does not support SSL";

    /** What server, driver and virtual machine say of it; a line that breaks off under TLS is none of these. */
    private static final List<String> UNSECURED = List.of(
            "no encryption",
            WITHOUT_TLS,
            "root certificate",
            "certificate file",
            "could not be verified",
            "PKIX",
            "CertificateException");

    /** H2's code for a statement that is cut short; nothing but the end of the shell that holds the database does that here. */
    private static final int STATEMENT_CUT_SHORT = 57014;

    private static final String READING_A_FILE = "Reading from file";

    private static final List<String> BROKEN_LINE =
            List.of("EOFException", "SocketException", "ClosedChannelException", "ClosedByInterruptException");

    static SqlFault of(Throwable failure) {
        if (failure instanceof CannotGetJdbcConnectionException) {
            // found closed before it was asked anything
            return new SqlFault(Kind.LOST, failure.getMessage(), failure);
        }
        SQLException sql = sqlCause(failure);
        return sql == null
                ? new SqlFault(Kind.OTHER, failure.getMessage(), failure)
                : new SqlFault(kindOf(sql), sql.getMessage(), failure);
    }

    /** Codes of H2 as its ErrorCode class names them; states of the SQL standard and of PostgreSQL. */
    private static Kind kindOf(SQLException e) {
        String state = e.getSQLState() == null ? "" : e.getSQLState();
        return switch (e.getErrorCode()) {
            case 90067, 90098, 90121, 90135, STATEMENT_CUT_SHORT -> Kind.LOST;
            case 90131, 50200, 40001, 23505 -> Kind.CONFLICT;
            case 90020 -> Kind.IN_USE;
            case 90030 -> Kind.DAMAGED;
            case 90097 -> Kind.READ_ONLY;
            case 90100 -> Kind.FULL;
            case 90048 -> Kind.OTHER_FORMAT;
            case 90028, 90031 -> ofInputAndOutput(causes(e));
            case 28000 -> Kind.NOT_ADMITTED;
            default -> kindOf(state, causes(e));
        };
    }

    /**
     * A shell that ends while it still sends rows to another breaks the line, which the driver calls an error of input
     * and output as it does a disk's.
     */
    private static Kind ofInputAndOutput(String causes) {
        if (causes.contains("No space left")) {
            return Kind.FULL;
        }
        // A file that was cut off ends too early as well, and is no line.
        boolean line = BROKEN_LINE.stream().anyMatch(causes::contains) && !causes.contains(READING_A_FILE);
        return line ? Kind.LOST : Kind.UNREADABLE;
    }

    private static Kind kindOf(String state, String causes) {
        return switch (state) {
            case "23505", "55P03" -> Kind.CONFLICT;
            case "53100" -> Kind.FULL;
            case "53300" -> Kind.CROWDED;
            case "42501" -> Kind.NOT_ALLOWED;
            case "25006" -> Kind.STANDBY;
            case "25P03" -> Kind.LOST;
            case "57P03" -> Kind.STARTING;
            case "XX001", "XX002" -> Kind.DAMAGED;
            default -> kindOfClass(state, causes);
        };
    }

    private static Kind kindOfClass(String state, String causes) {
        if (state.startsWith("40")) {
            return Kind.CONFLICT;
        }
        if (UNSECURED.stream().anyMatch(causes::contains)) {
            return Kind.NOT_SECURED;
        }
        if (state.startsWith("28")) {
            return Kind.NOT_ADMITTED;
        }
        if (causes.contains("No space left")) {
            return Kind.FULL;
        }
        if (causes.contains("corrupt")) {
            return Kind.DAMAGED;
        }
        return state.startsWith("08") || state.startsWith("57P") ? Kind.LOST : Kind.OTHER;
    }

    /** In use may only mean that the shell that serves the others is just closing. */
    boolean canBeTriedAgain() {
        return kind == Kind.LOST
                || kind == Kind.STARTING
                || kind == Kind.CONFLICT
                || kind == Kind.IN_USE
                || kind == Kind.CROWDED;
    }

    /** Whether the fault is in the database's file, not in what was asked of it. */
    boolean isOfTheFile() {
        return switch (kind) {
            case DAMAGED, OTHER_FORMAT, UNREADABLE, OTHER -> true;
            case LOST,
                    STARTING,
                    CONFLICT,
                    IN_USE,
                    READ_ONLY,
                    FULL,
                    NOT_ADMITTED,
                    NOT_ALLOWED,
                    NOT_SECURED,
                    CROWDED,
                    STANDBY -> false;
        };
    }

    StoreUnavailable told(String where) {
        return switch (kind) {
            case LOST -> isUnknownHost()
                    ? told(
                            where,
                            "no server of the name in its address is known here",
                            "check the name, and the network of this computer")
                    : told(where, "the database cannot be reached", "check that it runs, then repeat");
            case STARTING -> told(where, "the server is starting up", "wait a while, then repeat");
            case CONFLICT -> told(where, "another shell kept writing to the same case", "repeat the change");
            case IN_USE -> told(
                    where, "another program or computer has it open", "close it there, or wait until it has ended");
            case DAMAGED -> told(
                    where,
                    "the database file is damaged",
                    "keep a copy of it, and bring the store back from a copy or from exported cases");
            case READ_ONLY -> told(
                    where, "it may be read but not written to", "choose a folder that can be written to");
            case FULL -> told(where, "the disk is full", "make room, then repeat the change");
            case OTHER_FORMAT -> told(
                    where,
                    "the database file was written by another version of the database",
                    "use the version of the program that wrote it");
            case UNREADABLE -> told(
                    where,
                    "its database file cannot be read or written",
                    "check the disk and the rights of the file, then repeat");
            case NOT_ADMITTED -> told(where, "the database does not admit this user", "check user and password");
            case NOT_ALLOWED -> told(
                    where,
                    "this login may not do that (" + firstLine() + ")",
                    "let the owner of the database do it, or give the login its rights with: store prepare");
            case NOT_SECURED -> told(
                    where,
                    "the line to the server is not secured: " + firstLine(),
                    (withoutTls()
                                    ? "let the server's administrator switch TLS on"
                                    : "name the server's certificate or its issuer's in the address with sslrootcert=FILE")
                            + "; on a line nobody else can reach, write sslmode=disable");
            case CROWDED -> told(where, "the server takes no more connections", "repeat it later");
            case STANDBY -> told(where, "the server may be read but not written to", "name the one that takes writes");
            case OTHER -> told(where, "the database says: " + firstLine(), "mend that, then repeat");
        };
    }

    private boolean isUnknownHost() {
        return causes(cause).contains("UnknownHostException");
    }

    private boolean withoutTls() {
        return said != null && said.contains(WITHOUT_TLS);
    }

    private StoreUnavailable told(String where, String what, String mend) {
        return new StoreUnavailable(where, what, mend, cause);
    }

    private String firstLine() {
        String text = said == null ? "nothing" : said;
        String line = text.lines().findFirst().orElse("nothing");
        return line.replaceAll("\\p{Cntrl}", " ")
                .substring(0, Math.min(line.length(), 200))
                .replaceFirst("\\.+$", "");
    }

    /** The innermost, which is what the database said; one of many statements at once is wrapped in all their values. */
    private static @Nullable SQLException sqlCause(Throwable failure) {
        SQLException innermost = null;
        for (Throwable t = failure; t != null; t = t.getCause()) {
            if (t instanceof SQLException e) {
                innermost = e;
            }
        }
        return innermost;
    }

    private static String causes(Throwable failure) {
        StringBuilder all = new StringBuilder();
        for (Throwable t = failure; t != null; t = t.getCause()) {
            all.append(t).append(' ');
        }
        return all.toString();
    }
}
