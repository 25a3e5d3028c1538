package witnessmark.shell;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.util.FileSystemUtils;
import witnessmark.triplog.DriveScripts;
import witnessmark.triplog.SimulatedDrive.Recording;
import witnessmark.triplog.gear.TabulateGears;
import witnessmark.truck.ReadyTrucks;

/**
 * Inputs of every kind, changed at random: each is taken or refused in a message of bounded length, soon, and never ends as
 * a fault inside the program. With the tag "long" 250 of each kind: {@code -Dwitnessmark.inputs=N} for another count,
 * {@code -Dwitnessmark.inputs.kinds=LOG_CSV,TRUCK} for some kinds only, {@code -Dwitnessmark.inputs.seed=N} for other changes.
 */
class ChangedInputsTest {
    private static final int SOME = 25;
    private static final int MANY = Integer.getInteger("witnessmark.inputs", 250);
    private static final long SEED = Long.getLong("witnessmark.inputs.seed", 20260302);
    /** So many inputs meet one store: what was taken before them makes each slower. */
    private static final int ROUND = 250;

    private static final Duration PATIENCE = Duration.ofSeconds(60);
    private static final int LONGEST_MESSAGE = 4_000;

    /** What can be given to the program, and the line that gives it; {file} holds the changed input, {n} its number. */
    enum Kind {
        JOB_CARD("card.txt", "case read one {file} --format json"),
        ACCEPTED_JOB_CARD("accepted.txt", "case read one {file} --accept-sure"),
        ANSWERS("answers.txt", "interview new --answers {file}"),
        TRUCK("truck.yaml", "truck show {file}"),
        CASE_JUDGED("judged.yaml", "diagnose {file}"),
        CASE_STORED("stored.yaml", "case import {file} --as stored-{n}"),
        PACKET("packet.zip", "packet import {file} --as packet-{n}"),
        LOG_CSV("log.csv", "log read thirteen-ratio {file}"),
        LOG_OF_A_BUS("log.candump", "log read thirteen-ratio {file}"),
        MAPPING("mapping.yaml", "log read thirteen-ratio {csv} --mapping {file}"),
        SETTINGS("store/settings.yaml", "settings set shop Sand"),
        TEMPLATE(
                "templates/evidence.html",
                "document evidence one --out {dir}/out.html --replace --templates {dir}/templates"),
        SCRIPT_LINE("script.txt", "");

        private final String file;
        private final String line;

        Kind(String file, String line) {
            this.file = file;
            this.line = line;
        }
    }

    @TempDir
    Path folder;

    private CommandLine commands;
    private final ExecutorService worker = Executors.newSingleThreadExecutor();

    @BeforeEach
    void begin() throws Exception {
        begin(folder.resolve("store"));
    }

    private void begin(Path store) {
        commands = new CommandLine(store);
        commands.run("case", "new", "one", "--ratios", "13");
    }

    private void beginAnew() throws IOException {
        commands.close();
        FileSystemUtils.deleteRecursively(folder.resolve("store"));
        begin(folder.resolve("store"));
    }

    @AfterEach
    void end() {
        worker.shutdownNow();
        commands.close();
    }

    @ParameterizedTest
    @EnumSource
    void some_of_each_kind(Kind kind) throws Exception {
        assertThat(amiss(kind, SOME)).isEmpty();
    }

    static Stream<Kind> asked() {
        String kinds = System.getProperty("witnessmark.inputs.kinds", "");
        return kinds.isEmpty()
                ? Stream.of(Kind.values())
                : Arrays.stream(kinds.split(",")).map(Kind::valueOf);
    }

    @Tag("long")
    @ParameterizedTest
    @MethodSource("asked")
    void many_of_each_kind(Kind kind) throws Exception {
        assertThat(amiss(kind, MANY)).isEmpty();
    }

    @Test
    void unchanged_they_are_taken() throws Exception {
        for (Kind kind : Kind.values()) {
            CommandLine.Run run = run(kind, inputs(kind).get(0), 0);
            assertThat(run.exitCode()).as(kind + ": " + run.messages()).isZero();
        }
    }

    private List<String> amiss(Kind kind, int count) throws Exception {
        List<byte[]> inputs = inputs(kind);
        Mutate mutate = new Mutate(SEED + kind.ordinal());
        List<String> amiss = new ArrayList<>();
        int taken = 0;
        int tried = 0;
        long slowest = 0;
        long began = System.nanoTime();
        for (int n = 1; n <= count && amiss.size() < 20; n++) {
            if (n > 1 && n % ROUND == 1) {
                beginAnew();
            }
            byte[] input = kind == Kind.PACKET && n % 2 == 0 ? packed(inputs.get(0), mutate) : mutate.one(inputs);
            long start = System.nanoTime();
            CommandLine.Run run = run(kind, input, n);
            slowest = Math.max(slowest, System.nanoTime() - start);
            tried++;
            taken += run.exitCode() == 0 ? 1 : 0;
            if (isAmiss(run)) {
                Files.write(
                        Files.createDirectories(Path.of("target/changed-inputs"))
                                .resolve(kind + "-" + n),
                        input);
                amiss.add(kind + " " + n + " -> " + run.exitCode() + " " + start(run.messages()));
            }
        }
        System.out.printf(
                "%s: %d, %d of them taken, %d amiss, the slowest %d ms, all %d s%n",
                kind, tried, taken, amiss.size(), slowest / 1_000_000, (System.nanoTime() - began) / 1_000_000_000);
        return amiss;
    }

    private static boolean isAmiss(CommandLine.Run run) {
        String said = run.messages();
        return run.exitCode() > 2
                || (run.exitCode() > 0 && said.isBlank())
                || said.length() > LONGEST_MESSAGE
                || said.contains("(null)")
                || said.lines().anyMatch(line -> line.startsWith("\tat "));
    }

    private static String start(String message) {
        return message.replace('\n', ' ').substring(0, Math.min(300, message.length()));
    }

    private CommandLine.Run run(Kind kind, byte[] input, int n) throws Exception {
        Path file = folder.resolve(kind.file);
        Files.createDirectories(file.getParent());
        Files.write(file, input);
        if (kind == Kind.SCRIPT_LINE) {
            return soon(() -> commands.run("@" + file));
        }
        String line = kind.line
                .replace("{file}", file.toString())
                .replace("{dir}", folder.toString())
                .replace("{csv}", folder.resolve("plain.csv").toString())
                .replace("{n}", String.valueOf(n));
        return soon(() -> commands.run(line.split(" ")));
    }

    private CommandLine.Run soon(java.util.concurrent.Callable<CommandLine.Run> work) throws Exception {
        try {
            return worker.submit(work).get(PATIENCE.toSeconds(), TimeUnit.SECONDS);
        } catch (TimeoutException e) {
            return new CommandLine.Run(99, "", "no end within " + PATIENCE.toSeconds() + " s");
        }
    }

    private List<byte[]> inputs(Kind kind) throws Exception {
        return switch (kind) {
            case JOB_CARD, ACCEPTED_JOB_CARD -> texts(
                    "Driver says grinds into low when cold. Regulator 44 psi. Washed the mirrors.\nOil level ok.\n",
                    "C/S: hard to shift, jumps out of 5th on overrun. Found: dogs of 5th rounded, fork worn 0.8 mm."
                            + " Replaced fork. Not checked: linkage. Supply 7.5 bar, clutch brake squeeze 25 mm.\n",
                    "Cliente dice que rasca al meter baja en fr\u00edo. Presi\u00f3n del regulador 3 bar. Sin fugas.\n");
            case ANSWERS -> texts(
                    "otherwise: stop\n",
                    "range-grinds-into-low: yes\nrange-slow-into-low: unsure\notherwise: stop\n",
                    "yes\nno\nunsure\n44 psi\notherwise: unsure\nrange-regulator-pressure: 3 bar\notherwise: stop\n");
            case TRUCK -> all("src/main/resources/trucks", 4);
            case CASE_JUDGED, CASE_STORED -> all("sample-cases", 12);
            case PACKET -> List.of(packet());
            case LOG_CSV -> List.of(
                    csv("plain.csv"), start(Path.of("sample-cases/logs/unit-31_high-range-starts.csv")));
            case LOG_OF_A_BUS -> List.of(bus());
            case MAPPING -> {
                csv("plain.csv");
                yield texts(
                        "time: { column: time_s }\ncolumns:\n  engine-speed: { column: engine_rpm, unit: rpm }\n"
                                + "  road-speed: speed_kmh\n",
                        "separator: ','\ndecimal: '.'\ntime: { column: '#1' }\ncolumns: { engine-speed: '#2' }\n");
            }
            case SETTINGS -> texts(
                    "units: metric\nlanguage: en\nshop: 'Sand and Gravel'\n",
                    "# ours\npaper: letter\nwho: R. Ortega\nrole: technician\nunits: us\n");
            case TEMPLATE -> all("src/main/resources/document", 40).stream()
                    .filter(ChangedInputsTest::isEvidence)
                    .toList();
            case SCRIPT_LINE -> texts(
                    "case set one range-grinds-into-low=present --note \"cold only\"\n",
                    "truck speeds thirteen-ratio --rpm 1200,1500 --units us\n",
                    "case measure one range-regulator-pressure 44 psi --low 57 --high 62 --limit-from \"manual\"\n",
                    "whatif one air-filter-clogged=present\ncase list --words 'a b' --most 3\n# a remark\nhelp case set\n",
                    "case note one 'it''s \"cold\" \\ here'\ncase tell one complaint \"Grinds\"\ncase claim one --cost \"2400 USD\"\n");
        };
    }

    private static boolean isEvidence(byte[] template) {
        return new String(template, UTF_8).contains("{{") && new String(template, UTF_8).contains("<");
    }

    private static List<byte[]> texts(String... texts) {
        return Arrays.stream(texts).map(text -> text.getBytes(UTF_8)).toList();
    }

    private static List<byte[]> all(String place, int most) throws IOException {
        try (Stream<Path> files = Files.list(Path.of(place))) {
            List<byte[]> read = new ArrayList<>();
            for (Path file :
                    files.filter(Files::isRegularFile).sorted().limit(most).toList()) {
                read.add(Files.readAllBytes(file));
            }
            return read;
        }
    }

    private static byte[] start(Path file) throws IOException {
        return Files.readString(file).substring(0, 6_000).getBytes(UTF_8);
    }

    private byte[] csv(String name) throws IOException {
        Path file = folder.resolve(name);
        DriveScripts.proper(TabulateGears.of(ReadyTrucks.named("thirteen-ratio")), 7, 1)
                .writeCsv(file, Recording.usual(5), 7);
        Files.writeString(file, Files.readString(file).substring(0, 8_000));
        return Files.readAllBytes(file);
    }

    private byte[] bus() throws IOException {
        Path file = folder.resolve("bus.candump");
        DriveScripts.proper(TabulateGears.of(ReadyTrucks.named("thirteen-ratio")), 7, 1)
                .writeCandump(file, Recording.usual(5), 7);
        return start(file);
    }

    private byte[] packet() throws IOException {
        Path file = folder.resolve("one.zip");
        if (!Files.exists(file)) {
            commands.run("case", "set", "one", "range-grinds-into-low=present");
            commands.run("document", "packet", "one", "--out", file.toString());
        }
        return Files.readAllBytes(file);
    }

    /** A packet that is a good archive, with one of its parts changed. */
    private static byte[] packed(byte[] packet, Mutate mutate) throws IOException {
        Map<String, byte[]> parts = new LinkedHashMap<>();
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(packet))) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                parts.put(entry.getName(), in.readAllBytes());
            }
        }
        List<String> told =
                parts.keySet().stream().filter(name -> !name.endsWith(".pdf")).toList();
        String which = mutate.any(told);
        parts.put(which, mutate.one(List.of(parts.get(which))));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(out)) {
            for (Map.Entry<String, byte[]> part : parts.entrySet()) {
                zip.putNextEntry(new ZipEntry(part.getKey()));
                zip.write(part.getValue());
            }
        }
        return out.toByteArray();
    }
}
