package witnessmark.shell.print;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

class NewFileTest {
    @TempDir
    Path folder;

    @Test
    void an_older_file_stays_unless_it_is_to_be_replaced() throws IOException {
        Path file = folder.resolve("sheet.html");
        NewFile.write(file, new byte[] {1}, NewFile.Older.KEEP);

        assertThatThrownBy(() -> NewFile.write(file, new byte[] {2}, NewFile.Older.KEEP))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("is there already")
                .hasMessageContaining("--replace");
        assertThat(Files.readAllBytes(file)).containsExactly(1);

        NewFile.write(file, new byte[] {2}, NewFile.Older.REPLACE);
        assertThat(Files.readAllBytes(file)).containsExactly(2);
    }

    @Test
    void nothing_else_is_left_in_the_folder() throws IOException {
        NewFile.write(folder.resolve("sheet.html"), new byte[] {1}, NewFile.Older.KEEP);

        try (var files = Files.list(folder)) {
            assertThat(files).hasSize(1);
        }
    }

    @Test
    void a_folder_that_is_not_there_is_named() {
        assertThatThrownBy(() -> NewFile.write(folder.resolve("no/where.html"), new byte[] {1}, NewFile.Older.KEEP))
                .hasMessageContaining("is no folder");
    }

    /** As root a file put in its place would take /dev/null from the whole machine. */
    @Test
    @EnabledOnOs(OS.LINUX)
    void a_pipe_is_written_into_and_stays_one() throws Exception {
        Path pipe = folder.resolve("pipe");
        assertThat(new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor())
                .isZero();
        CompletableFuture<byte[]> read = CompletableFuture.supplyAsync(() -> {
            try {
                return Files.newInputStream(pipe).readAllBytes();
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });

        NewFile.write(pipe, new byte[] {1, 2}, NewFile.Older.REPLACE);

        assertThat(read.get(10, TimeUnit.SECONDS)).containsExactly(1, 2);
        assertThat(Files.isRegularFile(pipe)).isFalse();
    }
}
