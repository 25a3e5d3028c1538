package witnessmark.shell.cases;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.shell.CommandLine;

/** A signed case whose knowledge changed, or that is opened in another shop: the signed judgement stands first. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class SignedElsewhereTest {
    private static final String SIGNED = "The evidence is consistent with: Starts in high range or in too high a gear.";

    @TempDir
    static Path folder;

    private Path signed;
    private Map<String, Object> weaker;

    @BeforeAll
    void sign_in_a_shop_with_a_finding_of_its_own() throws IOException {
        Map<String, Object> own = site(
                "own",
                "mixers-smoke-at-the-gate",
                cause("often")
                        .replace(
                                "    against:",
                                "      - { finding: mixers-smoke-at-the-gate, strength: often }\n    against:"));
        weaker = site("weaker", "", cause("seldom").replace("prior: common", "prior: rare"));
        signed = folder.resolve("signed.zip");
        try (CommandLine shop = new CommandLine(folder.resolve("first"), own)) {
            done(shop, "case import sample-cases/clutch-cooked-shaft-straight.yaml --as mixer");
            done(
                    shop,
                    "case set mixer mixers-smoke-at-the-gate=present range-works-backwards=absent disc-wrong-or-reversed=absent");
            done(shop, "case sign-off mixer");
            done(shop, "document packet mixer --as zip --out " + signed);
        }
    }

    /** The shipped cause with its telling links at this strength. */
    private static String cause(String strength) throws IOException {
        String all = Files.readString(Path.of("knowledge-base/causes/driving.yaml"));
        String head = all.substring(0, all.indexOf("  - id:"));
        int from = all.indexOf("  - id: high-gear-start");
        String one = all.substring(from, all.indexOf("  - id: ", from + 10));
        for (String finding : new String[] {
            "clutch-facing-burned", "flywheel-heat-checked", "log-start-gear-too-high", "computed-start-gear-too-high"
        }) {
            one = one.replaceAll("(finding: " + finding + ", strength: )[a-z-]+", "$1" + strength);
        }
        return head + one;
    }

    private static Map<String, Object> site(String name, String finding, String causes) throws IOException {
        Path site = Files.createDirectories(folder.resolve(name));
        Files.writeString(Files.createDirectories(site.resolve("causes")).resolve("driving.yaml"), causes);
        if (!finding.isEmpty()) {
            Files.writeString(
                    Files.createDirectories(site.resolve("findings")).resolve("own.yaml"),
                    """
                    system: clutch
                    findings:
                      - id: %s
                        title: Smoke at the gate
                        ask: Does the gate show smoke on a start?
                        kind: symptom
                        access: clutch-out
                        minutes: 5
                        look: Look at the gate.
                        looks-like: Smoke under the cab.
                        background: rarely
                        part: clutch
                        sources: [common-practice]
                    """
                            .formatted(finding));
        }
        return Map.of("witnessmark.knowledge", site.toString());
    }

    private static String done(CommandLine shop, String line) {
        CommandLine.Run run = shop.type(line);
        assertThat(run.exitCode()).as(line + ": " + run.messages()).isZero();
        return run.out().replaceAll("\\s+", " ");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "case show mixer",
                "status mixer",
                "diagnose mixer",
            })
    void another_shop_shows_what_was_signed_and_today_s_beside_it(String line) {
        try (CommandLine other = new CommandLine(folder.resolve("other-" + line.hashCode()))) {
            done(other, "packet import " + signed);

            assertThat(done(other, line))
                    .containsSubsequence(
                            "Signed off by tester",
                            SIGNED,
                            "Judged today: ",
                            "Changed since: ",
                            "left out of today's judgement: mixers-smoke-at-the-gate");
        }
    }

    @Test
    void another_shop_s_questions_and_exports_hold_too() {
        try (CommandLine other = new CommandLine(folder.resolve("other"))) {
            done(other, "packet import " + signed);

            assertThat(done(other, "explain mixer")).isNotEmpty();
            assertThat(done(other, "whatif mixer clutch-slips=absent")).isNotEmpty();
            assertThat(done(other, "accounts mixer high-gear-start riding-clutch"))
                    .isNotEmpty();
            assertThat(done(other, "export cases mixer"))
                    .contains("verdict_today,changed_since,chain", "driver-habit,concluded", "unknown", "whole");
            assertThat(done(other, "case show mixer --format json"))
                    .contains(
                            "\"judgedToday\":{\"verdict\":",
                            "\"changed\":[\"unknown\"",
                            "\"verdict\":\"driver-habit\"");
            for (String kind : new String[] {"claim", "explanation", "evidence", "bench", "coaching", "towing"}) {
                done(other, "document " + kind + " mixer --as md --replace --out " + folder.resolve(kind + ".md"));
            }
            assertThat(folder.resolve("claim.md")).content().containsSubsequence(SIGNED, "Judged today: ");
        }
    }

    @Test
    void with_weaker_knowledge_the_signed_class_stands_and_the_explanation_tells_what_was_signed() throws IOException {
        try (CommandLine changed = new CommandLine(folder.resolve("changed"), weaker)) {
            done(changed, "packet import " + signed);
            Path paper = folder.resolve("explanation-changed.md");
            done(changed, "document explanation mixer --as md --out " + paper);
            Path sheet = folder.resolve("claim-changed.md");
            done(changed, "document claim mixer --as md --out " + sheet);

            assertThat(Files.readString(paper))
                    .containsSubsequence(
                            "Judged when signed: **" + SIGNED,
                            "Judged today: It cannot be told yet.",
                            "### Starts in high range or in too high a gear",
                            "**Judged when signed: concluded.** Chance when signed: ",
                            "Class when signed: Driver habit.",
                            "- For, when signed: ")
                    .doesNotContain("### Foot on the pedal");
            assertThat(Files.readString(sheet)).doesNotContain("it could be: ");
            assertThat(done(changed, "export cases mixer --as json"))
                    .contains("\"judgedToday\":{\"verdict\":\"undetermined\"");
        }
    }

    @Test
    void the_list_says_that_a_signed_case_was_corrected_since() {
        try (CommandLine shop = new CommandLine(folder.resolve("lists"))) {
            done(shop, "case import sample-cases/clutch-cooked-shaft-straight.yaml --as mixer");
            done(shop, "case set mixer range-works-backwards=absent disc-wrong-or-reversed=absent");
            done(shop, "case sign-off mixer");
            assertThat(done(shop, "case list")).contains("signed off, on: ").doesNotContain("corrected since");

            done(shop, "case set mixer flywheel-heat-checked=absent --reason \"looked again\"");

            assertThat(done(shop, "case list")).contains("signed off, corrected since, on: " + SIGNED);
            assertThat(done(shop, "case show mixer"))
                    .containsSubsequence(
                            "Signed off by tester", "Corrected after sign-off on", "because looked again.");
        }
    }
}
