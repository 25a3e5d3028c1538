package witnessmark.casefile.store;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The distribution's PostgreSQL server, run for tests on a port and in a folder of its own, with TLS. Where none is
 * installed the tests fail and say what to install: nothing is left out unseen.
 */
public final class PostgresServer implements AutoCloseable {
    /** The password of every login made here; no output may ever hold it. */
    public static final String PASSWORD = "pass = wörd\\with 'all'";

    /** The owner of every database made here. */
    public static final String OWNER = "contract_owner";

    private static final Path INSTALLED = Path.of("/usr/lib/postgresql");
    private static final String SUPERUSER = "keeper";
    private static final int PATIENCE = 60_000;

    private static @Nullable PostgresServer common;

    private final Path folder;
    private final int port;
    private final AtomicInteger databases = new AtomicInteger();
    private @Nullable Process process;

    private PostgresServer(Path folder, int port) {
        this.folder = folder;
        this.port = port;
    }

    /** The one server of all tests of this run, which none of them may end. */
    public static synchronized PostgresServer common() throws Exception {
        PostgresServer running = common;
        if (running == null) {
            running = start();
            common = running;
        }
        return running;
    }

    /** A server of its own, with the roles and the prepared database "contract" that others are copied from. */
    public static PostgresServer start() throws Exception {
        PostgresServer server = new PostgresServer(Files.createTempDirectory("postgres"), freePort());
        Runtime.getRuntime().addShutdownHook(new Thread(server::close));
        server.initialise();
        server.begin();
        server.makeDatabase("contract");
        server.admin(
                "postgres",
                "create role anna login in role contract_shop",
                "create role ben login in role contract_shop",
                "alter role anna password '" + quoted() + "'",
                "alter role ben password '" + quoted() + "'");
        return server;
    }

    private static String quoted() {
        return PASSWORD.replace("'", "''");
    }

    private static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        }
    }

    private static Path program(String name) throws IOException {
        if (Files.isDirectory(INSTALLED)) {
            try (Stream<Path> versions = Files.list(INSTALLED)) {
                return versions.map(v -> v.resolve("bin").resolve(name))
                        .filter(Files::isExecutable)
                        .max(Comparator.comparing(p -> Integer.parseInt(
                                p.getName(INSTALLED.getNameCount()).toString())))
                        .orElseThrow(PostgresServer::missing);
            }
        }
        throw missing();
    }

    private static IllegalStateException missing() {
        return new IllegalStateException("these tests need a PostgreSQL server and there is none in " + INSTALLED
                + "; install the package postgresql: apt-get install postgresql");
    }

    private void initialise() throws Exception {
        TestCertificate.write("localhost", folder.resolve("server.crt"), folder.resolve("server.key"));
        Path password = Files.writeString(folder.resolve("password"), PASSWORD + "\n");
        if (isRoot()) {
            // the server does not run for the superuser of the machine
            run(new ProcessBuilder("chown", "-R", "postgres", folder.toString()));
        }
        run(command(
                program("initdb").toString(),
                "--pgdata=" + data(),
                "--username=" + SUPERUSER,
                "--pwfile=" + password,
                "--auth=scram-sha-256",
                "--encoding=UTF8",
                "--locale=C.UTF-8"));
        Files.writeString(
                data().resolve("postgresql.conf"),
                """
                port = %d
                listen_addresses = '127.0.0.1'
                unix_socket_directories = '%s'
                ssl = on
                ssl_cert_file = '%s'
                ssl_key_file = '%s'
                max_connections = 60
                shared_buffers = 64MB
                """
                        .formatted(port, folder, folder.resolve("server.crt"), folder.resolve("server.key")),
                StandardOpenOption.APPEND);
    }

    private Path data() {
        return folder.resolve("data");
    }

    private static boolean isRoot() {
        return "root".equals(System.getProperty("user.name"));
    }

    private static ProcessBuilder command(String... words) {
        List<String> all = new ArrayList<>(isRoot() ? List.of("runuser", "-u", "postgres", "--") : List.of());
        all.addAll(List.of(words));
        return new ProcessBuilder(all);
    }

    /** Runs a program to its end; its output is in the message if it fails. */
    private static void run(ProcessBuilder builder) throws Exception {
        Process process = builder.redirectErrorStream(true)
                .directory(Path.of("/").toFile())
                .start();
        String said = new String(process.getInputStream().readAllBytes(), UTF_8);
        if (process.waitFor() != 0) {
            throw new IllegalStateException(builder.command() + ": " + said);
        }
    }

    /** Starts it, again if it was ended, and waits until it answers. */
    public void begin() throws Exception {
        Path log = folder.resolve("server.log");
        process = command(program("postgres").toString(), "-D", data().toString())
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(log.toFile()))
                .directory(Path.of("/").toFile())
                .start();
        long until = System.currentTimeMillis() + PATIENCE;
        while (true) {
            try (Connection answered = raw("postgres")) {
                return;
            } catch (SQLException e) {
                if (System.currentTimeMillis() > until || !process.isAlive()) {
                    throw new IllegalStateException("the server does not answer: " + Files.readString(log), e);
                }
                Thread.sleep(50);
            }
        }
    }

    /** Ends it and all its processes at once, as when the machine goes down. */
    public void kill() throws Exception {
        Path mark = data().resolve("postmaster.pid");
        long pid = Long.parseLong(Files.readAllLines(mark).get(0).strip());
        List<ProcessHandle> all = new ArrayList<>();
        ProcessHandle.of(pid).ifPresent(first -> {
            all.add(first);
            first.descendants().forEach(all::add);
        });
        all.forEach(ProcessHandle::destroyForcibly);
        for (ProcessHandle each : all) {
            each.onExit().get(PATIENCE, TimeUnit.MILLISECONDS);
        }
        Process ended = process;
        if (ended != null) {
            ended.waitFor();
        }
        process = null;
    }

    /** A connection of the administrator, who may do everything. */
    public Connection raw(String database) throws SQLException {
        return DriverManager.getConnection(url(database, "disable"), SUPERUSER, PASSWORD);
    }

    /** The address of a database with a TLS mode. */
    public String url(String database, String mode) {
        return "jdbc:postgresql://localhost:" + port + "/" + database + "?sslmode=" + mode;
    }

    /** The address of a database as shops write it: with the server's certificate and nothing said of a mode. */
    public String url(String database) {
        return "jdbc:postgresql://localhost:" + port + "/" + database + "?sslrootcert=" + certificate();
    }

    public Path certificate() {
        return folder.resolve("server.crt");
    }

    /** What the server has written to its log. */
    public String log() throws IOException {
        return Files.readString(folder.resolve("server.log"));
    }

    /** Runs statements of the administrator, each by itself. */
    public void admin(String database, String... statements) throws SQLException {
        try (Connection connection = raw(database);
                Statement statement = connection.createStatement()) {
            for (String sql : statements) {
                statement.execute(sql);
            }
        }
    }

    /** Makes a database and its roles by the script that ships, gives the owner a password, and makes the tables. */
    public void makeDatabase(String name) throws Exception {
        runScript(name);
        admin("postgres", "alter role " + name + "_owner password '" + quoted() + "'");
        try (CaseStore store = new CaseStore(
                StoreLocation.of(Database.named("store", url(name), name + "_owner", PASSWORD)),
                java.time.Clock.systemUTC())) {
            store.prepare();
        }
    }

    /** Runs the script that ships, as an administrator does. */
    public void runScript(String name) throws Exception {
        ProcessBuilder psql = new ProcessBuilder(
                program("psql").toString(),
                "--no-psqlrc",
                "-h",
                "127.0.0.1",
                "-p",
                String.valueOf(port),
                "-U",
                SUPERUSER,
                "-d",
                "postgres",
                "-v",
                "name=" + name,
                "-f",
                Path.of("src/main/dist/shared-store.sql").toAbsolutePath().toString());
        psql.environment().put("PGPASSWORD", PASSWORD);
        run(psql);
    }

    /** A new store with nothing in it, whose owner is {@link #OWNER} and whose shops' logins are anna and ben. */
    public String emptyStore() throws SQLException {
        String name = "store_" + databases.incrementAndGet();
        admin(
                "postgres",
                "create database " + name + " owner " + OWNER + " template contract",
                "revoke all on database " + name + " from public",
                "grant connect on database " + name + " to contract_shop");
        return name;
    }

    /** A new database without tables, of the same owner. */
    public String emptyDatabase() throws SQLException {
        String name = "empty_" + databases.incrementAndGet();
        admin("postgres", "create database " + name + " owner " + OWNER + " template template0");
        admin(name, "grant create, usage on schema public to " + OWNER);
        return name;
    }

    public StoreLocation location(String database, String user) {
        return StoreLocation.of(Database.named("store", url(database), user, PASSWORD));
    }

    /** Writes the file by which a program gets in; nobody else may read it. */
    public static Path file(Path file, String url, String user, String password) throws IOException {
        Files.deleteIfExists(file);
        Files.createFile(file, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
        return Files.writeString(file, "url = " + url + "\nuser = " + user + "\npassword = " + password + "\n");
    }

    /** Ends it and takes its folder away. */
    @Override
    public void close() {
        try {
            if (process != null) {
                kill();
            }
            if (!Files.exists(folder)) {
                return;
            }
            try (Stream<Path> all = Files.walk(folder)) {
                all.sorted(Comparator.reverseOrder())
                        .forEach(path -> path.toFile().delete());
            }
        } catch (Exception e) {
            System.err.println("the test's server did not end: " + e);
        }
    }
}
