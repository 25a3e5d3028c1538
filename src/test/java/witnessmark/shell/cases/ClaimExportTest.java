package witnessmark.shell.cases;

import static org.assertj.core.api.Assertions.assertThat;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.Claim;
import witnessmark.casefile.ClaimField;
import witnessmark.casefile.PartLine;
import witnessmark.casefile.PartLine.Whereabouts;
import witnessmark.casefile.store.CaseStore;
import witnessmark.casefile.store.StoreLocation;
import witnessmark.shell.CommandLine;
import witnessmark.shell.print.CsvTable;

/** Every fact of a claim goes out of the program in each form, and in again where the form is read. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ClaimExportTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final List<PartLine> PARTS = List.of(
            new PartLine("cone, low \"range\"; old", "=cone", 2.5, Optional.of(Whereabouts.RETURNED), "W-1007-1"),
            new PartLine("oil", "", 1, Optional.empty(), ""));

    @TempDir
    static Path folder;

    private CommandLine shop;
    private final Claim claim = new Claim(facts(), PARTS);

    /** A value for each field there is, so that one added later is held too. */
    private static Map<ClaimField, String> facts() {
        Map<ClaimField, String> facts = new EnumMap<>(ClaimField.class);
        for (ClaimField field : ClaimField.values()) {
            facts.put(
                    field,
                    switch (field) {
                        case IN_SERVICE, FAILED, REPAIRED -> "2026-03-0" + (1 + field.ordinal() % 9);
                        case ENGINE_HOURS, LABOUR_HOURS -> field.ordinal() + ".5";
                        default -> "+ " + field.word() + ", \"so\"; it is";
                    });
        }
        return facts;
    }

    @BeforeAll
    void enter_every_fact_by_command() {
        shop = new CommandLine(folder.resolve("shop"));
        done("case", "new", "full", "--complaint", "Slips");
        List<String> words = new ArrayList<>(List.of("case", "claim", "full"));
        claim.facts().forEach((field, value) -> words.addAll(List.of("--" + field.word(), value)));
        done(words.toArray(String[]::new));
        for (PartLine part : PARTS) {
            List<String> line = new ArrayList<>(
                    List.of("case", "part", "full", part.old(), "--quantity", String.valueOf(part.quantity())));
            line.addAll(part.fitted().isEmpty() ? List.of() : List.of("--fitted", part.fitted()));
            part.whereabouts().ifPresent(w -> line.addAll(List.of("--whereabouts", w.word())));
            line.addAll(part.tag().isEmpty() ? List.of() : List.of("--tag", part.tag()));
            done(line.toArray(String[]::new));
        }
    }

    @AfterAll
    void close() {
        shop.close();
    }

    private String done(String... words) {
        CommandLine.Run run = shop.run(words);
        assertThat(run.exitCode())
                .as(String.join(" ", words) + ": " + run.messages())
                .isZero();
        return run.out();
    }

    private static Claim stored(Path store, String id) {
        try (CaseStore cases = new CaseStore(StoreLocation.in(store), Clock.systemUTC())) {
            return cases.read(new CaseId(id)).present().claim();
        }
    }

    @Test
    void by_yaml_and_by_packet_it_comes_into_another_shop_as_it_was_entered() {
        Path yaml = folder.resolve("full.yaml");
        Path zip = folder.resolve("full.zip");
        done("case", "export", "full", "--out", yaml.toString());
        done("document", "packet", "full", "--as", "zip", "--out", zip.toString());

        Path other = folder.resolve("other");
        try (CommandLine there = new CommandLine(other)) {
            assertThat(there.run("case", "import", yaml.toString(), "--as", "from-yaml")
                            .exitCode())
                    .isZero();
            assertThat(there.run("packet", "import", zip.toString(), "--as", "from-packet")
                            .exitCode())
                    .isZero();
        }

        assertThat(claim.facts().keySet()).containsExactly(ClaimField.values());
        assertThat(stored(other, "from-yaml")).isEqualTo(claim);
        assertThat(stored(other, "from-packet")).isEqualTo(claim);
    }

    @Test
    void json_says_each_fact_by_its_word() {
        for (JsonNode said : List.of(
                JSON.readTree(done("case", "show", "full", "--format", "json")).get("claim"),
                JSON.readTree(done("export", "cases", "full", "--as", "json"))
                        .get("rows")
                        .get(0)
                        .get("claim"))) {
            assertThat(JSON.convertValue(said, Object.class)).isEqualTo(claim.form());
        }
    }

    @Test
    void a_row_of_csv_has_a_column_for_each_and_its_part_lines_can_be_taken_apart() {
        List<CsvRecord> rows = rows(done("export", "cases", "full"));
        Map<ClaimField, String> read = new EnumMap<>(ClaimField.class);
        for (ClaimField field : ClaimField.values()) {
            read.put(field, CsvTable.undefused(cell(rows, field.word().replace('-', '_'))));
        }

        assertThat(read).isEqualTo(claim.facts());
        assertThat(rows(cell(rows, "parts")).stream().map(ClaimExportTest::part))
                .containsExactlyElementsOf(PARTS);
    }

    /** The hash is reckoned here from the bytes that were put in. */
    @Test
    void photographs_are_listed_by_number_name_finding_and_hash() throws Exception {
        Path first = picture("cone, \"low\".png", 20);
        Path second = picture("=seen.png", 30);
        done("case", "new", "shown", "--complaint", "Slips");
        done("case", "set", "shown", "clutch-slips=present", "clutch-facing-burned=present");
        done("photo", "add", "shown", "clutch-facing-burned", first.toString());
        done("photo", "add", "shown", "clutch-slips", second.toString());

        List<List<String>> told = rows(cell(rows(done("export", "cases", "shown")), "photographs")).stream()
                .map(row -> row.getFields().stream().map(CsvTable::undefused).toList())
                .toList();

        assertThat(told)
                .containsExactly(
                        List.of("1", "cone, \"low\".png", "clutch-facing-burned", sha256(first)),
                        List.of("2", "=seen.png", "clutch-slips", sha256(second)));
        assertThat(cell(rows(done("export", "cases", "full")), "photographs")).isEmpty();
    }

    private static Path picture(String name, int width) throws IOException {
        Path file = folder.resolve(name);
        ImageIO.write(new BufferedImage(width, 20, BufferedImage.TYPE_INT_RGB), "png", file.toFile());
        return file;
    }

    private static String sha256(Path file) throws Exception {
        return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file)));
    }

    private static List<CsvRecord> rows(String csv) {
        try (Stream<CsvRecord> rows = CsvReader.builder().ofCsvRecord(csv).stream()) {
            return rows.toList();
        }
    }

    private static String cell(List<CsvRecord> rows, String column) {
        return rows.get(1).getField(rows.get(0).getFields().indexOf(column));
    }

    private static PartLine part(CsvRecord row) {
        List<String> cells = row.getFields().stream().map(CsvTable::undefused).toList();
        return new PartLine(
                cells.get(0),
                cells.get(1),
                Double.parseDouble(cells.get(2)),
                Arrays.stream(Whereabouts.values())
                        .filter(w -> w.word().equals(cells.get(3)))
                        .findFirst(),
                cells.get(4));
    }
}
