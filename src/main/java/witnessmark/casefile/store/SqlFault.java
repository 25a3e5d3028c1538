package witnessmark.casefile.store;

import java.sql.SQLException;
import org.jspecify.annotations.Nullable;

/** What a failure of the database means for the one who wanted to read or write. */
record SqlFault(Kind kind, @Nullable String said, Throwable cause) {
    enum Kind {
        /** The connection is gone, as when the shell that held the database open was closed. */
        LOST,
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
        OTHER
    }

    static SqlFault of(Throwable failure) {
        SQLException sql = sqlCause(failure);
        return sql == null
                ? new SqlFault(Kind.OTHER, failure.getMessage(), failure)
                : new SqlFault(kindOf(sql), sql.getMessage(), failure);
    }

    /** Codes of H2 as its ErrorCode class names them; states of the SQL standard and of PostgreSQL. */
    private static Kind kindOf(SQLException e) {
        String state = e.getSQLState() == null ? "" : e.getSQLState();
        return switch (e.getErrorCode()) {
            case 90067, 90098, 90121, 90135 -> Kind.LOST;
            case 90131, 50200, 40001, 23505 -> Kind.CONFLICT;
            case 90020 -> Kind.IN_USE;
            case 90030 -> Kind.DAMAGED;
            case 90097 -> Kind.READ_ONLY;
            case 90100 -> Kind.FULL;
            case 90048 -> Kind.OTHER_FORMAT;
            case 90028, 90031 -> causes(e).contains("No space left") ? Kind.FULL : Kind.UNREADABLE;
            case 28000 -> Kind.NOT_ADMITTED;
            default -> kindOf(state, causes(e));
        };
    }

    private static Kind kindOf(String state, String causes) {
        if (state.equals("23505") || state.startsWith("40")) {
            return Kind.CONFLICT;
        }
        if (state.startsWith("28")) {
            return Kind.NOT_ADMITTED;
        }
        if (causes.contains("No space left") || state.equals("53100")) {
            return Kind.FULL;
        }
        if (causes.contains("corrupt")) {
            return Kind.DAMAGED;
        }
        return state.startsWith("08") || state.startsWith("57P") ? Kind.LOST : Kind.OTHER;
    }

    /** In use may only mean that the shell that serves the others is just closing. */
    boolean canBeTriedAgain() {
        return kind == Kind.LOST || kind == Kind.CONFLICT || kind == Kind.IN_USE;
    }

    /** Whether the fault is in the database's file, not in what was asked of it. */
    boolean isOfTheFile() {
        return switch (kind) {
            case DAMAGED, OTHER_FORMAT, UNREADABLE, OTHER -> true;
            case LOST, CONFLICT, IN_USE, READ_ONLY, FULL, NOT_ADMITTED -> false;
        };
    }

    StoreUnavailable told(String where) {
        return switch (kind) {
            case LOST -> told(where, "the database cannot be reached", "check that it runs, then repeat");
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
            case OTHER -> told(where, "the database says: " + firstLine(), "mend that, then repeat");
        };
    }

    private StoreUnavailable told(String where, String what, String mend) {
        return new StoreUnavailable(where, what, mend, cause);
    }

    private String firstLine() {
        String text = said == null ? "nothing" : said;
        String line = text.lines().findFirst().orElse("nothing");
        return line.replaceAll("\\p{Cntrl}", " ").substring(0, Math.min(line.length(), 200));
    }

    private static @Nullable SQLException sqlCause(Throwable failure) {
        for (Throwable t = failure; t != null; t = t.getCause()) {
            if (t instanceof SQLException e) {
                return e;
            }
        }
        return null;
    }

    private static String causes(Throwable failure) {
        StringBuilder all = new StringBuilder();
        for (Throwable t = failure; t != null; t = t.getCause()) {
            all.append(t.getMessage()).append(' ');
        }
        return all.toString();
    }
}
