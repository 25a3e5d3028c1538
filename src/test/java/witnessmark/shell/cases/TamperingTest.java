package witnessmark.shell.cases;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.util.FileSystemUtils;
import witnessmark.casefile.history.CanonicalText;
import witnessmark.shell.CommandLine;

/** What was changed behind the program's back is told first by every command that touches the case. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class TamperingTest {
    private static final String CASE = "(select case_no from case_file where case_id = 'torn')";

    @TempDir
    static Path folder;

    private Path whole;
    private String head;

    @BeforeAll
    void keep_two_cases() throws IOException {
        whole = Files.createDirectory(folder.resolve("whole"));
        try (CommandLine shop = new CommandLine(whole)) {
            done(shop, "case new torn --complaint Slips");
            done(shop, "case set torn clutch-slips=present clutch-facing-burned=present clutch-facing-oily=absent");
            done(shop, "document packet torn --as zip --out " + folder.resolve("unsigned.zip"));
            done(shop, "case new other --complaint Howls");
            FileSystemUtils.copyRecursively(whole, folder.resolve("older"));
            done(shop, "case sign-off torn");
            head = done(shop, "case head torn")
                    .lines()
                    .findFirst()
                    .orElseThrow()
                    .strip();
            done(shop, "key make");
            done(shop, "document packet torn --as zip --out " + folder.resolve("signed.zip"));
        }
    }

    private static String done(CommandLine shop, String line) {
        CommandLine.Run run = shop.type(line);
        assertThat(run.exitCode()).as(line + ": " + run.messages()).isZero();
        return run.out();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
            a row changed                   | update case_entry set body = replace(body, 'present', 'absent') where case_no = CASE and entry_number = 2
            an entry gone from the middle   | delete from case_entry where case_no = CASE and entry_number = 3
            the last entry gone             | delete from case_entry where case_no = CASE and entry_number = 5
            the last gone, the head set back| delete from case_entry where case_no = CASE and entry_number = 5; update case_file set signed_off_at = null, last_number = 4, last_hash = (select hash from case_entry where case_no = CASE and entry_number = 4) where case_no = CASE
            a row changed, all hashed anew  | FORGE
            the head alone                  | update case_file set last_number = 4 where case_no = CASE
            what is searched                | update case_finding set state = 'absent' where case_no = CASE and finding = 'clutch-slips'
            a value added to be searched    | insert into case_measurement (case_no, measure, reading, unit) values (CASE, 'clutch-free-travel', 40, 'mm')
            words that are searched         | update case_text set words = 'nothing' where case_no = CASE
            a truck that is listed          | update case_file set unit = 'another' where case_no = CASE
            when it was changed, as listed  | update case_file set changed_at = dateadd(day, -9, changed_at) where case_no = CASE
            when it was opened, as listed   | update case_file set opened_at = dateadd(day, -9, opened_at) where case_no = CASE
            when it was signed, as listed   | update case_file set signed_off_at = dateadd(day, -9, signed_off_at) where case_no = CASE
            """)
    void it_shows_on_the_first_line(String what, String change) throws Exception {
        Path store = copied(what.replaceAll("\\W+", "-"));
        tamper(store, change);

        try (CommandLine shop = new CommandLine(store)) {
            for (String line : List.of(
                    "case list",
                    "case show torn",
                    "status torn",
                    "diagnose torn",
                    "document claim torn --as md --replace --out " + folder.resolve("claim.md"),
                    "case verify torn")) {
                assertThat(firstLine(shop, line)).as(what + ": " + line).containsPattern("(?i)broken|breaks|written");
            }
            assertThat(firstLine(shop, "case verify --all")).as(what).contains("torn");
            assertThat(done(shop, "case list")).contains("other").contains("[CHAIN BROKEN");
        }
    }

    /** A line for every command that takes a case; commands that only look at it also as JSON. */
    private Map<String, String> lines() throws IOException {
        Path picture = Files.write(
                folder.resolve("one.png"),
                java.util.Base64.getDecoder()
                        .decode(
                                "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg=="));
        Path card = Files.writeString(folder.resolve("card.txt"), "Clutch facing is burned.\n");
        String reason = " --reason again";
        String days = folder.resolve("fleet/days.csv").toString();
        String log = "sample-cases/logs/unit-31_high-range-starts.csv";
        return Map.ofEntries(
                Map.entry("accounts", "torn input-seal-leak wrong-oil"),
                Map.entry("diagnose", "torn --format json"),
                Map.entry("explain", "torn"),
                Map.entry("whatif", "torn clutch-slips=absent"),
                Map.entry("status", "torn --format json"),
                Map.entry("interview", "torn --answers " + card),
                Map.entry("case claim", "torn --work-order 7" + reason),
                Map.entry("case clear", "torn clutch-slips" + reason),
                Map.entry("case export", "torn"),
                Map.entry("case fork", "torn carried-on" + reason),
                Map.entry("case gearbox", "torn --ratios 9" + reason),
                Map.entry("case head", "torn"),
                Map.entry("case history", "torn"),
                Map.entry("case measure", "torn clutch-free-travel 3 mm" + reason),
                Map.entry("case note", "torn Seen" + reason),
                Map.entry("case part", "torn disc" + reason),
                Map.entry("case read", "torn " + card + " --accept-sure" + reason),
                Map.entry("case set", "torn clutch-facing-oily=present" + reason),
                Map.entry("case show", "torn --format json"),
                Map.entry("case sign-off", "torn"),
                Map.entry("case tell", "torn work-done Done" + reason),
                Map.entry("case truck", "torn --unit 8" + reason),
                Map.entry("case verify", "torn --head " + head),
                Map.entry("case void", "torn"),
                Map.entry("photo add", "torn clutch-slips " + picture + reason),
                Map.entry("photo remove", "torn seal.png" + reason),
                Map.entry("truck angles", "--angle 3 --case torn" + reason),
                Map.entry("truck coast", "thirteen-ratio --speed 40 --unit km/h --minutes 5 --case torn" + reason),
                Map.entry("truck shift", "thirteen-ratio --from 5d --to 4 --speed 30 --unit km/h --case torn" + reason),
                Map.entry("truck start", "thirteen-ratio --gear 3 --case torn" + reason),
                Map.entry("truck tow", "thirteen-ratio --speed 40 --unit km/h --minutes 5 --case torn" + reason),
                Map.entry("log add", "torn thirteen-ratio " + log + " --nevertheless same" + reason),
                Map.entry("log import-results", days + " --case torn --truck unit-31 --nevertheless same" + reason),
                Map.entry("document", "packet torn --as zip --replace --out " + folder.resolve("torn.zip")),
                Map.entry("export cases", "torn"),
                Map.entry("export findings", "torn --as json"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
            a row changed again    | update case_entry set body = replace(body, 'present', 'absent') where case_no = CASE and entry_number = 2
            the last gone, set back| delete from case_entry where case_no = CASE and entry_number = 5; update case_file set signed_off_at = null, last_number = 4, last_hash = (select hash from case_entry where case_no = CASE and entry_number = 4) where case_no = CASE
            one gone between       | delete from case_entry where case_no = CASE and entry_number = 3
            hashed anew            | FORGE
            what is searched, again| update case_finding set state = 'absent' where case_no = CASE and finding = 'clutch-slips'
            """)
    void every_command_that_takes_a_case_says_so_first(String what, String change) throws Exception {
        Path store = copied(what.replaceAll("\\W+", "-"));
        tamper(store, change);

        try (CommandLine shop = new CommandLine(store)) {
            if (Files.notExists(folder.resolve("fleet"))) {
                done(shop, "log fleet sample-cases/logs --truck thirteen-ratio --out " + folder.resolve("fleet"));
            }
            Map<String, String> lines = lines();
            List<String> taking = shop.registered().stream()
                    .filter(name -> usage(shop, name).matches("(?s).*\\bCASE\\b.*"))
                    .filter(name -> !name.equals("case list"))
                    .toList();
            assertThat(lines.keySet()).containsExactlyInAnyOrderElementsOf(taking);
            String before = journal(store);
            lines.entrySet().stream().sorted(Map.Entry.comparingByKey()).forEach(e -> {
                String line = e.getKey() + " " + e.getValue();
                assertThat(firstLine(shop, line))
                        .as(what + ": " + line)
                        .containsPattern("(?i)torn.*(chain.*broken|breaks|cannot be read)|does not hold the entry");
            });
            assertThat(journal(store)).as("only the fork adds anything").satisfies(after -> assertThat(
                            after.lines().skip(before.lines().count()).filter(l -> !l.contains("carried-on")))
                    .isEmpty());
        }
    }

    /** Every command that takes the case tells of it, those that change it too; nobody signs for it or hands it on. */
    @ParameterizedTest
    @CsvSource({"is not as it was put in, changed", "is missing, missing"})
    void every_command_tells_of_a_damaged_photograph_first(String how, String fault) throws Exception {
        Path store = folder.resolve("photo-" + fault);
        Path png = folder.resolve("seal.png");
        ImageIO.write(new BufferedImage(60, 30, BufferedImage.TYPE_INT_RGB), "png", png.toFile());
        String head;
        try (CommandLine shop = new CommandLine(store)) {
            done(shop, "case new torn --complaint Slips");
            done(shop, "case set torn clutch-slips=present clutch-facing-burned=present clutch-facing-oily=absent");
            done(shop, "photo add torn clutch-slips " + png);
            if (Files.notExists(folder.resolve("fleet"))) {
                done(shop, "log fleet sample-cases/logs --truck thirteen-ratio --out " + folder.resolve("fleet"));
            }
            head = done(shop, "case head torn").strip();
        }
        Path kept = onlyFile(store.resolve("attachments"));
        byte[] first = Files.readAllBytes(kept);
        if (fault.equals("missing")) {
            Files.delete(kept);
        } else {
            // one byte, so that the size stays the same
            byte[] other = first.clone();
            other[other.length / 2] ^= 1;
            Files.write(kept, other);
        }

        try (CommandLine shop = new CommandLine(store)) {
            assertThat(firstLine(shop, "case list")).isEqualTo("FILES ARE NOT AS THEY WERE PUT IN in: torn");
            assertThat(done(shop, "case list --format json")).contains("\"fault\":\"" + fault + "\"");
            assertThat(done(shop, "case show torn")).contains("seal.png [" + fault.toUpperCase(Locale.ROOT));
            assertThat(shop.type("document packet torn --as zip --out " + folder.resolve("never.zip"))
                            .messages())
                    .contains("a packet would bring none or others: 'seal.png' " + how)
                    .contains("photo add torn FINDING FILE")
                    .contains("photo remove torn NAME");
            CommandLine.Run signed = shop.type("case sign-off torn");
            assertThat(signed.exitCode()).isEqualTo(1);
            assertThat(signed.messages())
                    .contains("is not signed off while its files are not as they were put in: 'seal.png' " + how)
                    .contains("photo remove torn NAME");
            Map<String, String> lines = new TreeMap<>(lines());
            lines.put("case verify", "torn --head " + head);
            lines.put("photo remove", "torn another.png");
            lines.put("case gearbox", "torn --ratios 13");
            lines.put("log add", "torn thirteen-ratio sample-cases/logs/unit-33_low-range-too-fast.csv");
            lines.replaceAll((name, rest) -> rest.replaceAll(" --nevertheless same", ""));
            lines.forEach((name, rest) -> assertThat(firstLine(
                            shop, name + " " + (name.equals("case fork") ? rest : rest.replace(" --reason again", ""))))
                    .as(name)
                    .matches("(?s).*torn.*'seal.png' " + how + ".*"));
            done(shop, "photo remove torn seal.png");
            assertThat(firstLine(shop, "case show torn")).startsWith("Case torn");
            assertThat(done(shop, "case sign-off torn")).contains("signed off");
        }
    }

    @Test
    void a_damaged_photograph_is_marked_where_its_number_stands_on_paper() throws Exception {
        Path store = folder.resolve("marked");
        Path png = folder.resolve("disc.png");
        ImageIO.write(new BufferedImage(50, 30, BufferedImage.TYPE_INT_RGB), "png", png.toFile());
        try (CommandLine shop = new CommandLine(store)) {
            done(shop, "case new p --complaint Slips");
            done(shop, "case set p clutch-facing-burned=present clutch-slips=present");
            done(shop, "photo add p clutch-facing-burned " + png);
            Files.writeString(onlyFile(store.resolve("attachments")), "other bytes");
            for (String kind : List.of("claim", "evidence", "explanation", "bench")) {
                Path paper = folder.resolve("marked.md");
                done(shop, "document " + kind + " p --as md --replace --out " + paper);
                assertThat(Files.readString(paper)).as(kind).contains("FILES ARE NOT AS THEY WERE PUT IN: 'disc.png'");
                done(shop, "document " + kind + " p --language es --as md --replace --out " + paper);
                assertThat(Files.readString(paper)).as(kind).contains("'disc.png' fue cambiado");
            }
            Path claim = folder.resolve("marked-claim.md");
            done(shop, "document claim p --as md --out " + claim);
            assertThat(Files.readString(claim)).contains("| 1 (changed) |");
            assertThat(done(shop, "export cases p")).contains("'disc.png' is not as it was put in");
        }
    }

    private static String usage(CommandLine shop, String name) {
        String help = shop.type("help " + name).out();
        int from = help.indexOf("\nUsage\n");
        int to = help.indexOf("\nOptions\n", from);
        return from < 0 ? "" : help.substring(from, to < 0 ? help.length() : to).replaceAll("(?s);.*", "");
    }

    private static String journal(Path store) throws IOException {
        try (Stream<Path> files = Files.list(store.resolve("journal"))) {
            StringBuilder all = new StringBuilder();
            for (Path file : files.sorted().toList()) {
                all.append(Files.readString(file));
            }
            return all.toString();
        }
    }

    /** A document of a broken case can still be written, says so above all, and hands on no end of the chain. */
    @Test
    void a_paper_of_a_broken_case_says_so_and_a_packet_is_refused() throws Exception {
        Path store = copied("papers");
        tamper(store, "update case_finding set state = 'absent' where case_no = CASE and finding = 'clutch-slips'");

        try (CommandLine shop = new CommandLine(store)) {
            Path sheet = folder.resolve("broken-claim.md");
            done(shop, "document claim torn --as md --out " + sheet);
            assertThat(Files.readString(sheet))
                    .contains("THE CHAIN OF ENTRIES IS BROKEN at entry 5. What this paper says")
                    .doesNotContain("witnessmark:torn:");
            CommandLine.Run packet = shop.type("document packet torn --as zip --out " + folder.resolve("never.zip"));
            assertThat(packet.exitCode()).isEqualTo(1);
            assertThat(packet.messages()).contains("no other shop would take such a packet");
            assertThat(done(shop, "case show torn --format json")).contains("\"whole\":false");
            assertThat(done(shop, "export cases")).contains("torn").contains("other");
        }
    }

    @Test
    void a_case_taken_out_is_missed_by_its_name() throws Exception {
        Path store = copied("taken");
        tamper(
                store,
                Stream.of("case_text", "case_finding", "case_entry", "case_file")
                        .map(table -> "delete from " + table + " where case_no = CASE")
                        .collect(Collectors.joining(";")));

        try (CommandLine shop = new CommandLine(store)) {
            assertThat(firstLine(shop, "case show torn")).contains("WAS TAKEN OUT OF THE STORE");
            assertThat(firstLine(shop, "case show never-there")).doesNotContain("TAKEN OUT");
        }
    }

    @Test
    void a_photograph_that_was_changed_is_not_called_missing_and_can_be_put_in_again() throws Exception {
        Path store = folder.resolve("photographed");
        Path png = folder.resolve("cone.png");
        ImageIO.write(new BufferedImage(40, 20, BufferedImage.TYPE_INT_RGB), "png", png.toFile());
        try (CommandLine shop = new CommandLine(store)) {
            done(shop, "case new p --complaint Slips");
            done(shop, "case set p clutch-slips=present");
            done(shop, "photo add p clutch-slips " + png);
            Path kept = onlyFile(store.resolve("attachments"));
            Path paper = folder.resolve("p.md");
            String write = "document evidence p --as md --replace --out " + paper;

            Files.writeString(kept, "other bytes");
            done(shop, write);
            assertThat(Files.readString(paper))
                    .contains("the bytes kept are not those that were put in")
                    .contains("The bytes kept of 'cone.png' are not those that were put in")
                    .doesNotContain("not at hand");
            assertThat(done(shop, "photo add p clutch-slips " + png)).contains("are back with case 'p'");
            assertThat(done(shop, "case verify p")).contains("1 file as put in");

            Files.delete(kept);
            done(shop, write);
            assertThat(Files.readString(paper))
                    .contains("The bytes kept of 'cone.png' are lost")
                    .doesNotContain("not those that were put in");
            assertThat(done(shop, "photo add p clutch-slips " + png)).contains("are back with case 'p'");
            assertThat(shop.type("photo add p clutch-slips " + png).messages()).contains("the same bytes are on case");
        }
        // both the database and its journal lost: what was kept is not hidden behind a new, empty store
        Files.delete(store.resolve("cases.mv.db"));
        FileSystemUtils.deleteRecursively(store.resolve("journal"));
        try (CommandLine shop = new CommandLine(store)) {
            CommandLine.Run run = shop.type("case list");
            assertThat(run.exitCode()).isEqualTo(1);
            assertThat(run.messages()).contains("cases.mv.db and its journal are gone");
        }
        assertThat(store.resolve("cases.mv.db")).doesNotExist();
    }

    private static Path onlyFile(Path below) throws IOException {
        try (Stream<Path> files = Files.walk(below)) {
            return files.filter(Files::isRegularFile).reduce((a, b) -> null).orElseThrow();
        }
    }

    @Test
    void an_older_copy_of_the_whole_store_shows_by_a_head_noted_outside() {
        try (CommandLine shop = new CommandLine(folder.resolve("older"))) {
            assertThat(done(shop, "case verify torn")).contains("noted outside");
            assertThat(firstLine(shop, "case verify torn --head " + head))
                    .contains("does not hold the entry that was noted, entry 5");
        }
        try (CommandLine shop = new CommandLine(whole)) {
            assertThat(done(shop, "case verify torn --head " + head)).contains("stands as it was");
        }
    }

    @Nested
    class OfAPacket {
        @Test
        void a_signed_and_an_unsigned_one_are_told_apart() {
            try (CommandLine other = new CommandLine(folder.resolve("other-shop"))) {
                assertThat(done(other, "packet import " + folder.resolve("signed.zip")))
                        .contains("signed with key");
                assertThat(done(other, "packet import " + folder.resolve("unsigned.zip") + " --as unsigned"))
                        .contains("not signed");
            }
        }

        @ParameterizedTest
        @CsvSource({"case.yaml", "SHA256SUMS", "signed-head.txt"})
        void a_changed_part_is_refused(String part) throws IOException {
            Path changed = rewritten(part, text -> text.replace("clutch-slips", "clutch-drags")
                    .replaceFirst("[0-9a-f]{64}", "ab".repeat(32)));

            try (CommandLine other = new CommandLine(folder.resolve("for-" + part))) {
                CommandLine.Run run = other.type("packet import " + changed);
                assertThat(run.exitCode()).isEqualTo(1);
                assertThat(run.messages()).contains(part.equals("SHA256SUMS") ? "case.yaml" : part);
            }
        }

        @Test
        void a_head_signed_with_another_key_in_place_of_the_shops_is_seen_by_its_key(@TempDir Path forger)
                throws IOException {
            try (CommandLine shop = new CommandLine(forger.resolve("store"))) {
                done(shop, "packet import " + folder.resolve("signed.zip"));
                done(shop, "key make");
                done(shop, "case head torn --out " + forger.resolve("head.txt"));
            }
            String ours = new String(parts(folder.resolve("signed.zip")).get("signed-head.txt"), UTF_8);
            String forged = Files.readString(forger.resolve("head.txt"));
            Path mixed = rewritten(
                    "signed-head.txt",
                    text -> ours.lines().limit(2).reduce("", (a, b) -> a + b + "\n")
                            + forged.lines().skip(2).findFirst().orElseThrow() + "\n");
            Path replaced = rewritten("signed-head.txt", text -> forged);

            try (CommandLine other = new CommandLine(forger.resolve("other"))) {
                assertThat(other.type("packet import " + mixed).messages()).contains("signed-head.txt");
                String honest = done(other, "packet import " + folder.resolve("signed.zip"));
                String stranger = done(other, "packet import " + replaced + " --as again");
                assertThat(key(stranger)).isNotEqualTo(key(honest));
            }
        }

        private static String key(String told) {
            return told.replaceAll("\\s+", " ").replaceAll(".*signed with key ([0-9a-f ]+);.*", "$1");
        }
    }

    private Path copied(String name) throws IOException {
        Path to = folder.resolve(name);
        FileSystemUtils.copyRecursively(whole, to);
        return to;
    }

    private static void tamper(Path store, String change) throws Exception {
        try (var connection = DriverManager.getConnection("jdbc:h2:file:" + store.resolve("cases"), "sa", "");
                var statement = connection.createStatement()) {
            if (change.equals("FORGE")) {
                forge(statement);
                return;
            }
            for (String one : change.replace("CASE", CASE).split(";")) {
                assertThat(statement.executeUpdate(one)).as(one).isPositive();
            }
        }
    }

    /** Changes who made the last entry, with its hash and the head of the case as they would then be. */
    private static void forge(java.sql.Statement statement) throws Exception {
        String hash;
        try (var row = statement.executeQuery("select made_at, body, previous_hash from case_entry where case_no = "
                + CASE + " and entry_number = 5")) {
            assertThat(row.next()).isTrue();
            hash = CanonicalText.hash(
                    5,
                    row.getObject(1, java.time.OffsetDateTime.class).toInstant(),
                    "somebody else",
                    row.getString(2),
                    row.getString(3));
        }
        statement.executeUpdate("update case_entry set who = 'somebody else', hash = '" + hash + "' where case_no = "
                + CASE + " and entry_number = 5");
        statement.executeUpdate("update case_file set last_hash = '" + hash + "' where case_no = " + CASE);
    }

    /** What is said first: beside the answer, as a refusal, or in the answer. */
    private static String firstLine(CommandLine shop, String line) {
        PrintStream before = System.err;
        ByteArrayOutputStream beside = new ByteArrayOutputStream();
        System.setErr(new PrintStream(beside, true, UTF_8));
        try {
            CommandLine.Run run = shop.type(line);
            return (beside.toString(UTF_8) + run.messages() + run.out())
                    .strip()
                    .lines()
                    .findFirst()
                    .orElse("");
        } finally {
            System.setErr(before);
        }
    }

    private static Map<String, byte[]> parts(Path zip) throws IOException {
        Map<String, byte[]> parts = new LinkedHashMap<>();
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(Files.readAllBytes(zip)))) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                parts.put(entry.getName(), in.readAllBytes());
            }
        }
        return parts;
    }

    /** The signed packet with one part changed; what its list says of the part is made to fit, if it names it. */
    private Path rewritten(String part, UnaryOperator<String> change) throws IOException {
        Map<String, byte[]> parts = parts(folder.resolve("signed.zip"));
        assertThat(parts).containsKey(part);
        byte[] old = parts.get(part);
        byte[] changed = change.apply(new String(old, UTF_8)).getBytes(UTF_8);
        assertThat(changed).isNotEqualTo(old);
        parts.put(part, changed);
        if (part.equals("signed-head.txt")) {
            parts.computeIfPresent("SHA256SUMS", (name, list) -> new String(list, UTF_8)
                    .replace(CanonicalText.sha256(old), CanonicalText.sha256(changed))
                    .getBytes(UTF_8));
        }
        Path zip = Files.createTempFile(folder, "changed-", ".zip");
        try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(zip))) {
            for (Map.Entry<String, byte[]> one : parts.entrySet()) {
                out.putNextEntry(new ZipEntry(one.getKey()));
                out.write(one.getValue());
                out.closeEntry();
            }
        }
        return zip;
    }
}
