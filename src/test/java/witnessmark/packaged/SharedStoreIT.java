package witnessmark.packaged;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.casefile.store.PostgresServer;

/** The packaged program on a server that several shops share, with the file that lets it in. */
@Tag("long")
@Timeout(value = 10, unit = TimeUnit.MINUTES)
class SharedStoreIT {
    private static PostgresServer server;

    @TempDir
    Path folder;

    private String database;

    @BeforeAll
    static void start() throws Exception {
        server = PostgresServer.start();
    }

    @AfterAll
    static void end() {
        server.close();
    }

    @BeforeEach
    void begin() throws Exception {
        database = server.emptyStore();
    }

    private Path file(String login, String url, String password) throws IOException {
        return PostgresServer.file(folder.resolve(login + ".database"), url, login, password);
    }

    private Program as(String login) throws IOException {
        return Program.shared(
                folder.resolve("of-" + login), file(login, server.url(database), PostgresServer.PASSWORD));
    }

    private Path script(String name, List<String> lines) throws IOException {
        return Files.write(folder.resolve(name + ".txt"), lines);
    }

    private static List<String> notes(String id, String who, int count) {
        return IntStream.range(0, count)
                .mapToObj(i -> "case note " + id + " '" + who + " " + i + "'")
                .toList();
    }

    /** The output of a command that must end well. */
    private static String out(Program program, String... words) {
        Program.Run run = program.run(words);
        assertThat(run.err()).isEmpty();
        assertThat(run.code()).isZero();
        return run.out().replaceAll("\\s+", " ");
    }

    private static void assertRefused(Program.Run run, String why) {
        assertThat(run.err()).hasLineCount(1).contains(why);
        assertThat(run.code()).isEqualTo(1);
        assertThat(run.out() + run.err())
                .doesNotContain(PostgresServer.PASSWORD)
                .doesNotContain("not-the-one");
    }

    @Test
    void a_case_lives_on_the_server_and_every_shop_sees_it() throws IOException {
        Program anna = as("anna");
        Program ben = as("ben");
        out(anna, "case", "new", "t1", "--title", "Hubs scored", "--ratios", "13", "--range", "air");
        out(anna, "case", "set", "t1", "hubs-scored-several-gears=present", "oil-level-low=absent");
        out(ben, "case", "note", "t1", "Größe: washers are cracked");

        assertThat(out(ben, "diagnose", "t1")).contains("neutral");
        assertThat(out(anna, "case", "history", "t1")).contains(" anna: ").contains(" ben: note: Größe");
        assertThat(out(anna, "case", "list", "--words", "hubs")).contains("t1").contains("1 of 1 shown");
        out(ben, "case", "sign-off", "t1");
        assertThat(out(anna, "case", "show", "t1")).contains("Signed off by ben");
        assertThat(out(anna, "case", "verify", "--all")).contains("1 case, 5 entries");
        assertThat(folder.resolve("of-anna").resolve("cases.mv.db")).doesNotExist();
    }

    @Test
    void who_did_it_cannot_be_said_by_an_option() throws IOException {
        Program anna = as("anna");
        out(anna, "case", "new", "t1");

        assertRefused(
                anna.run("--who", "mallory", "case", "note", "t1", "n"),
                "the entries of a shared store bear the name of the database login, 'anna', not 'mallory'");
        assertThat(out(anna, "case", "history", "t1")).doesNotContain("mallory");
    }

    @Test
    void who_is_not_admitted_is_told_in_one_line_that_shows_no_password() throws IOException {
        Path store = folder.resolve("any");
        assertRefused(
                Program.shared(store, file("anna", server.url(database), "not-the-one"))
                        .run("case", "list"),
                "the database does not admit this user; check user and password");
        assertRefused(
                Program.shared(store, file("anna", server.url(database) + "&password=not-the-one", "x"))
                        .run("case", "list"),
                ": the database address has an option other than for TLS");
        Path open = file("anna", server.url(database), "not-the-one");
        open.toFile().setReadable(true, false);
        assertRefused(Program.shared(store, open).run("case", "list"), "close it with: chmod 600");
        Path odd = file("anna", server.url(database), "x\nnot-the-one");
        assertRefused(Program.shared(store, odd).run("case", "list"), "line 4: not NAME = VALUE");
        assertRefused(Program.shared(store, folder.resolve("nowhere")).run("case", "list"), "no such file");
    }

    @Test
    void a_server_that_is_not_the_right_one_is_told_in_one_line() throws IOException {
        Path store = folder.resolve("any");
        String untrusted = server.url(database).replaceAll("\\?.*", "?sslrootcert=/nowhere.crt");
        assertRefused(
                Program.shared(store, file("anna", untrusted, PostgresServer.PASSWORD))
                        .run("case", "list"),
                "the line to the server is not secured");
        String other = server.url(database).replace("localhost", "127.0.0.1");
        assertRefused(
                Program.shared(store, file("anna", other, PostgresServer.PASSWORD))
                        .run("case", "list"),
                "the line to the server is not secured");
        String away = server.url(database).replaceFirst(":\\d+/", ":1/");
        assertRefused(
                Program.shared(store, file("anna", away, PostgresServer.PASSWORD))
                        .run("case", "list"),
                "the database cannot be reached; check that it runs, then repeat");
    }

    @Test
    void the_password_is_in_no_list_of_processes() throws Exception {
        out(as("anna"), "case", "new", "t1");
        Process running = as("anna")
                .start("@" + script("many", notes("t1", "n", 500)))
                .redirectErrorStream(true)
                .start();
        try (BufferedReader lines = running.inputReader()) {
            assertThat(lines.readLine()).contains("Stored");
            for (String name : List.of("cmdline", "environ")) {
                byte[] seen = Files.readAllBytes(Path.of("/proc/" + running.pid() + "/" + name));
                assertThat(new String(seen, UTF_8)).doesNotContain(PostgresServer.PASSWORD);
            }
            assertThat(new String(Files.readAllBytes(Path.of("/proc/" + running.pid() + "/cmdline")), UTF_8))
                    .contains("--database");
        } finally {
            running.destroyForcibly().waitFor();
        }
    }

    @Test
    void eight_programs_at_once_lose_nothing_of_each_other() throws Exception {
        out(as("anna"), "case", "new", "both");
        List<Process> all = new ArrayList<>();
        for (int w = 0; w < 8; w++) {
            Program program = as(w % 2 == 0 ? "anna" : "ben");
            all.add(program.start("@" + script("w" + w, notes("both", "w" + w, 10)))
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start());
        }
        for (Process process : all) {
            assertThat(process.waitFor()).isZero();
        }

        String history = as("anna").run("case", "history", "both").out();
        assertThat(history.lines().filter(l -> l.contains("note: w")).distinct().count())
                .isEqualTo(80);
        assertThat(out(as("ben"), "case", "verify", "both")).contains("chain of 81 entries is whole");
    }

    @Test
    void a_program_killed_in_mid_stream_loses_nothing_acknowledged() throws Exception {
        out(as("anna"), "case", "new", "killed");
        Process process = as("anna")
                .start("@" + script("many", notes("killed", "n", 5_000)))
                .redirectErrorStream(true)
                .start();
        int acknowledged = acknowledged(process, 60, () -> process.toHandle().destroyForcibly());

        assertThat(entries("killed")).isBetween(acknowledged, acknowledged + 1);
    }

    @Test
    void a_server_killed_in_mid_stream_is_told_and_loses_nothing_acknowledged() throws Exception {
        out(as("anna"), "case", "new", "killed");
        Path err = folder.resolve("err.txt");
        Process process = as("anna")
                .start("@" + script("many", notes("killed", "n", 5_000)))
                .redirectError(err.toFile())
                .start();
        int acknowledged = acknowledged(process, 60, server::kill);

        assertThat(process.waitFor()).isEqualTo(1);
        assertThat(Files.readString(err))
                .contains("the database cannot be reached; check that it runs, then repeat")
                .contains("stopped at line")
                .doesNotContain(PostgresServer.PASSWORD);
        server.begin();
        assertThat(entries("killed")).isBetween(acknowledged, acknowledged + 1);
    }

    private interface Kill {
        void run() throws Exception;
    }

    /** The last entry that was said to be stored, with the kill after so many. */
    private static int acknowledged(Process process, int enough, Kill kill) throws Exception {
        int acknowledged = 0;
        boolean killed = false;
        try (BufferedReader lines = process.inputReader()) {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                if (line.startsWith("Stored as entry")) {
                    acknowledged = Integer.parseInt(line.split(" ")[3]);
                }
                if (acknowledged > enough && !killed) {
                    killed = true;
                    kill.run();
                }
            }
        }
        assertThat(killed).isTrue();
        return acknowledged;
    }

    private int entries(String id) throws IOException {
        String verified = out(as("ben"), "case", "verify", id);
        return Integer.parseInt(verified.replaceAll(".*chain of (\\d+) entries is whole.*", "$1"));
    }

    @Test
    void a_store_moves_to_the_server_and_back_by_one_command_each() throws IOException {
        Program own = Program.unpacked(folder.resolve("own"));
        out(own, "case", "new", "t1", "--title", "Slips");
        out(own, "case", "note", "t1", "n");
        String kept = out(own, "case", "verify", "--all");
        Path owner = file(PostgresServer.OWNER, server.url(database), PostgresServer.PASSWORD);

        assertThat(out(own, "store", "copy", folder.resolve("own").toString(), owner.toString()))
                .contains("2 entries and 0 files are copied");
        assertThat(out(as("anna"), "case", "history", "t1")).contains("tester");
        out(as("anna"), "case", "note", "t1", "at the server");
        assertThat(out(
                        own,
                        "store",
                        "copy",
                        owner.toString(),
                        folder.resolve("own").toString()))
                .contains("1 entries and 0 files are copied");

        assertThat(kept).contains("1 case, 2 entries");
        String now = out(own, "case", "verify", "--all");
        assertThat(now).isEqualTo(out(as("ben"), "case", "verify", "--all")).contains("1 case, 3 entries");
    }

    @Test
    void tables_of_an_older_and_a_newer_program_are_told_with_who_mends_it() throws Exception {
        String empty = server.emptyDatabase();
        Program owner = Program.shared(
                folder.resolve("any"), file(PostgresServer.OWNER, server.url(empty), PostgresServer.PASSWORD));
        assertRefused(
                Program.shared(folder.resolve("any"), file("anna", server.url(empty), PostgresServer.PASSWORD))
                        .run("case", "list"),
                "it has no tables that this login can see, and the login may not make any; let the owner of the database"
                        + " run: store prepare");
        assertThat(out(owner, "store", "prepare")).contains("The tables are those of version 4");

        server.admin(database, "delete from flyway_schema_history where version = '4'");
        assertRefused(as("anna").run("case", "list"), "its tables are of version 3, this program needs 4");
        server.admin(
                database,
                "insert into flyway_schema_history select 99, '99', 'later', 'SQL', 'V99__later.sql', 0, 'x', now(), 0,"
                        + " true");
        assertRefused(as("anna").run("case", "list"), "it was written by a newer version of the program");
    }

    @Test
    void the_script_that_makes_the_roles_ships_beside_the_program() throws IOException {
        assertThat(Path.of("target/dist/shared-store.sql"))
                .hasSameTextualContentAs(Path.of("src/main/dist/shared-store.sql"));
        assertThat(Files.readString(Path.of("target/dist/shared-store.sql"))
                        .lines()
                        .filter(l -> l.toLowerCase(java.util.Locale.ROOT).contains(" password '"))
                        .collect(Collectors.toList()))
                .isEmpty();
    }
}
