package witnessmark.casefile.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.EOFException;
import java.io.IOException;
import java.net.SocketException;
import java.sql.SQLException;
import java.util.stream.Stream;
import org.h2.api.ErrorCode;
import org.h2.message.DbException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import witnessmark.casefile.store.SqlFault.Kind;

/** What a failure of the database means; the codes are those of H2's own ErrorCode class, the failures its own. */
class SqlFaultTest {
    private static SQLException ofInputAndOutput(IOException cause) {
        return DbException.convertIOException(cause, null).getSQLException();
    }

    static Stream<IOException> the_line_breaks() {
        return Stream.of(new EOFException(), new SocketException("Connection reset"));
    }

    @ParameterizedTest
    @MethodSource("the_line_breaks")
    void a_shell_that_ends_while_it_sends_rows_is_a_line_to_take_up_again(IOException broken) {
        SQLException failure = ofInputAndOutput(broken);

        assertThat(failure.getErrorCode()).isIn(ErrorCode.IO_EXCEPTION_1, ErrorCode.IO_EXCEPTION_2);
        assertThat(SqlFault.of(failure).kind()).isEqualTo(Kind.LOST);
        assertThat(SqlFault.of(failure).canBeTriedAgain()).isTrue();
    }

    @Test
    void a_disk_that_fails_is_not_tried_again() {
        SqlFault fault = SqlFault.of(ofInputAndOutput(new IOException("Input/output error")));

        assertThat(fault.kind()).isEqualTo(Kind.UNREADABLE);
        assertThat(fault.canBeTriedAgain()).isFalse();
    }

    @Test
    void a_full_disk_is_told_as_such() {
        assertThat(SqlFault.of(ofInputAndOutput(new IOException("No space left on device")))
                        .kind())
                .isEqualTo(Kind.FULL);
    }
}
