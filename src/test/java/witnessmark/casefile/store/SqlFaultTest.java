package witnessmark.casefile.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.EOFException;
import java.io.IOException;
import java.net.SocketException;
import java.nio.channels.ClosedByInterruptException;
import java.nio.channels.ClosedChannelException;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.stream.Stream;
import org.h2.api.ErrorCode;
import org.h2.message.DbException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.datasource.SingleConnectionDataSource;
import witnessmark.casefile.store.SqlFault.Kind;

/** What a failure of the database means; the codes are those of H2's own ErrorCode class, the failures its own. */
class SqlFaultTest {
    private static SQLException ofInputAndOutput(IOException cause) {
        return DbException.convertIOException(cause, null).getSQLException();
    }

    static Stream<IOException> the_line_breaks() {
        return Stream.of(
                new EOFException(),
                new SocketException("Connection reset"),
                new ClosedChannelException(),
                new ClosedByInterruptException());
    }

    @ParameterizedTest
    @MethodSource("the_line_breaks")
    void a_shell_that_ends_while_it_sends_rows_is_a_line_to_take_up_again(IOException broken) {
        SQLException failure = ofInputAndOutput(broken);

        assertThat(failure.getErrorCode()).isIn(ErrorCode.IO_EXCEPTION_1, ErrorCode.IO_EXCEPTION_2);
        assertThat(SqlFault.of(failure).kind()).isEqualTo(Kind.LOST);
        assertThat(SqlFault.of(failure).canBeTriedAgain()).isTrue();
    }

    /** The shell that holds the database cuts the statements of others short when it ends. */
    @Test
    void a_statement_that_the_end_of_another_shell_cuts_short_is_taken_up_again() {
        SQLException cut = DbException.get(ErrorCode.STATEMENT_WAS_CANCELED).getSQLException();

        assertThat(SqlFault.of(cut).kind()).isEqualTo(Kind.LOST);
    }

    @Test
    void a_line_that_is_found_closed_is_taken_up_again() throws SQLException {
        Connection closed = DriverManager.getConnection("jdbc:h2:mem:");
        JdbcTemplate sql = new JdbcTemplate(new SingleConnectionDataSource(closed, true));
        closed.close();

        assertThatThrownBy(() -> sql.execute("select 1"))
                .satisfies(failure -> assertThat(SqlFault.of(failure).kind()).isEqualTo(Kind.LOST));
    }

    /** The states as PostgreSQL's manual lists them (appendix "PostgreSQL Error Codes"), from memory. */
    @ParameterizedTest
    @CsvSource({
        "08000, LOST",
        "08001, LOST",
        "08003, LOST",
        "08006, LOST",
        "08007, LOST",
        "57P01, LOST",
        "57P02, LOST",
        "57P04, LOST",
        "57P05, LOST",
        "25P03, LOST",
        "57P03, STARTING",
        "53300, CROWDED",
        "40001, CONFLICT",
        "40P01, CONFLICT",
        "55P03, CONFLICT",
        "53100, FULL",
        "25006, STANDBY",
        "42501, NOT_ALLOWED",
        "28P01, NOT_ADMITTED",
        "57014, OTHER",
        "42P01, OTHER"
    })
    void a_servers_states_are_told_apart(String state, Kind kind) {
        assertThat(SqlFault.of(new SQLException("said", state)).kind()).isEqualTo(kind);
    }

    @Test
    void a_disk_that_fails_is_not_tried_again() {
        SqlFault fault = SqlFault.of(ofInputAndOutput(new IOException("Input/output error")));

        assertThat(fault.kind()).isEqualTo(Kind.UNREADABLE);
        assertThat(fault.canBeTriedAgain()).isFalse();
    }

    @Test
    void a_file_that_was_cut_off_is_no_broken_line() {
        IOException cut = new IOException("Reading from file cases.mv.db failed at 4096", new EOFException());

        assertThat(SqlFault.of(ofInputAndOutput(cut)).kind()).isEqualTo(Kind.UNREADABLE);
    }

    @Test
    void a_full_disk_is_told_as_such() {
        assertThat(SqlFault.of(ofInputAndOutput(new IOException("No space left on device")))
                        .kind())
                .isEqualTo(Kind.FULL);
    }
}
