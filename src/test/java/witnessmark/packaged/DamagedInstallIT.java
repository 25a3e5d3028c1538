package witnessmark.packaged;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The unpacked form with something of it gone or spoiled: it says so in a line, or does without. */
class DamagedInstallIT {
    private static final Path BUILT = Path.of("target/dist").toAbsolutePath();

    @TempDir
    Path folder;

    private Path install;

    /** Libraries as links, which can be taken away one by one. */
    @BeforeEach
    void install() throws IOException {
        install = folder.resolve("install");
        Files.createDirectories(install.resolve("lib"));
        for (String file : new String[] {"witnessmark", "witnessmark.jar"}) {
            Files.copy(BUILT.resolve(file), install.resolve(file), java.nio.file.StandardCopyOption.COPY_ATTRIBUTES);
        }
        try (Stream<Path> libraries = Files.list(BUILT.resolve("lib"))) {
            for (Path library : libraries.toList()) {
                Files.createSymbolicLink(install.resolve("lib").resolve(library.getFileName()), library);
            }
        }
    }

    @AfterEach
    void take_the_links_away() throws IOException {
        try (Stream<Path> links = Files.list(install.resolve("lib"))) {
            for (Path link : links.toList()) {
                Files.delete(link);
            }
        }
    }

    private Program.Run list() {
        return Program.at(install.resolve("witnessmark"), folder.resolve("store"))
                .run("case", "list");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"spring-boot-4", "spring-core-", "spring-shell-core-4", "spring-jdbc-", "spring-beans-", "h2-"})
    void without_a_library_it_says_what_is_missing_and_where_the_details_are(String library) throws IOException {
        try (Stream<Path> libraries = Files.list(install.resolve("lib"))) {
            Files.delete(libraries
                    .filter(l -> l.getFileName().toString().startsWith(library))
                    .findFirst()
                    .orElseThrow());
        }

        Program.Run run = list();

        assertThat(run.code()).as(run.err()).isEqualTo(3);
        assertThat(run.err()).containsAnyOf("cannot start", "fault inside the program");
        assertThat(run.err()).containsAnyOf("NoClassDefFoundError", "ClassNotFoundException", "library is missing");
        assertThat(run.err()).contains("Details are in ").contains("faults");
        assertThat(run.err().lines()).hasSize(1);
    }

    /** The archive of classes, and what newer JDKs have in its place. */
    @ParameterizedTest
    @ValueSource(strings = {"witnessmark.jsa", "witnessmark.aot"})
    void with_a_spoiled_class_archive_it_works_and_is_silent_about_it(String archive) throws IOException {
        byte[] noise = new byte[1_000_000];
        new Random(16).nextBytes(noise);
        Files.write(install.resolve(archive), noise);

        Program.Run run = list();

        assertThat(run.code()).as(run.err()).isZero();
        assertThat(run.err()).isEmpty();
        assertThat(run.out()).contains("No case fits");
    }
}
