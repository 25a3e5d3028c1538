package witnessmark.diagnosis;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Limits;
import witnessmark.casefile.Measurement;
import witnessmark.gearbox.Layout;
import witnessmark.gearbox.Unit;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.KnowledgeFile;
import witnessmark.knowledge.KnowledgeLoader;

/** A trade of four causes, small enough to be worked out by hand; the rules and the vocabulary are the shipped ones. */
final class SmallTrade {
    private static final Map<String, String> FILES = files(
            "vocabulary.yaml",
            """
            strengths: { nearly-always: 0.95, usually: 0.80, often: 0.55, sometimes: 0.30, seldom: 0.10 }
            priors: { common: 0.04, uncommon: 0.015, rare: 0.004 }
            backgrounds: { almost-never: 0.002, rarely: 0.015, now-and-then: 0.05, commonly: 0.20 }
            against: { excludes: 0.034, speaks-against: 0.20 }
            looks: { seen-if-there: 0.9999, seen-without-cause: 0.000001 }
            greatest-ratio: 30
            told: { if-so: 0.80, if-not: 0.10, not-on-paper-if-so: 0.67 }
            unsure: { if-present: 0.30, if-absent: 0.20 }
            classes:
              - { id: driver-habit, title: Driver habit, blames: true, plain: how the truck was driven }
              - { id: towing-transport, title: Towing or transport, blames: true, plain: how it was towed }
              - { id: maintenance, title: Maintenance, blames: false, plain: upkeep }
              - { id: assembly, title: Assembly, blames: false, plain: how it was built }
            """,
            "access.yaml",
            """
            access:
              - { id: cab, title: In the cab, minutes: 2, cautions: [chocks] }
              - { id: lines, title: Gauge on the lines, minutes: 15 }
              - { id: rear-off, title: Auxiliary off, minutes: 120, teardown: true }
              - { id: bench, title: On the bench, minutes: 30, inside: rear-off }
            """,
            "sources.yaml",
            "sources:\n  - { id: common-practice, title: Common practice }\n",
            "cautions.yaml",
            """
            cautions:
              - { id: chocks, en: Chock the wheels., es: Calce las ruedas. }
              - { id: goggles, en: Eye protection., es: Lentes. }
              - { id: stands-still, en: It is not driven., es: No se maneja. }
            """,
            "advice.yaml",
            """
            coaching:
              - { id: preselect, en: Preselect the range., es: Preseleccione. }
            towing:
              - { id: lift, en: Lift the drive axles., es: Levante los ejes. }
            """,
            "measures.yaml",
            """
            measures:
              - { id: outlet, title: Regulator outlet, unit: bar, below: outlet-low, above: outlet-high,
                  sources: [common-practice] }
            """,
            "findings/all.yaml",
            """
            system: range
            findings:
              - { id: cone-burned, title: Cone burned, ask: Burned?, kind: mark, access: rear-off, minutes: 5,
                  look: Look., background: almost-never, sources: [common-practice] }
              - { id: outlet-low, title: Outlet low, ask: Low?, kind: look, access: lines, minutes: 5, look: Gauge.,
                  spoiled-by: [gauge-broken], sources: [common-practice] }
              - { id: gauge-broken, title: Gauge broken, ask: Broken?, kind: sign, access: lines, minutes: 1,
                  look: Look., background: rarely, sources: [common-practice] }
              - { id: regulator-new, title: Regulator new, ask: New?, kind: paper, access: cab, minutes: 1,
                  renews: [outlet-low], background: rarely, sources: [common-practice] }
              - { id: other-truck, title: Log of another truck, ask: Other?, kind: sign, access: cab, minutes: 1,
                  look: Id., voids: log, background: rarely, sources: [common-practice] }
              - { id: serial-differs, title: Serial differs, ask: Differs?, kind: sign, access: cab, minutes: 1,
                  look: Look., identity: true, background: rarely, sources: [common-practice] }
              - { id: ordered, title: Ordered so, ask: Ordered?, kind: paper, access: cab, minutes: 1,
                  says: Speak with whoever ordered it., background: rarely, sources: [common-practice] }
              - { id: since-repair, title: Since a repair, ask: Since?, kind: paper, access: cab, minutes: 1,
                  background: now-and-then, sources: [common-practice] }
              - { id: told, title: Told so, ask: Told?, kind: account, access: cab, minutes: 1,
                  background: now-and-then, sources: [common-practice] }
              - { id: grinds, title: Grinds, ask: Grinds?, kind: symptom, gear: heard-in, access: cab, minutes: 1,
                  background: now-and-then, sources: [common-practice] }
              - { id: rattles, title: Rattles, ask: Rattles?, kind: symptom, access: cab, minutes: 1,
                  background: now-and-then, sources: [common-practice] }
              - { id: rattles-cold, title: Rattles cold, ask: Cold?, kind: symptom, access: cab, minutes: 1,
                  background: now-and-then, sources: [common-practice] }
              - { id: outlet-high, title: Outlet high, ask: High?, kind: reading, access: lines, minutes: 5,
                  background: rarely, sources: [common-practice] }
              - { id: log-shows-it, title: Log shows it, ask: Log?, kind: log, access: cab, minutes: 5,
                  background: almost-never, sources: [common-practice] }
              - { id: leak, title: Leak, ask: Leak?, kind: sign, access: lines, minutes: 5, look: Soap.,
                  background: rarely, needs: [test-proper], cautions: [goggles], when-found: [stands-still],
                  sources: [common-practice] }
              - { id: test-proper, title: Test done properly, ask: Proper?, kind: sign, access: lines,
                  minutes: 0, look: Remember., background: commonly, sources: [common-practice] }
              - { id: repaired, title: Repaired lately, ask: Repaired?, kind: paper, access: cab, minutes: 1,
                  background: now-and-then, sources: [common-practice] }
              - { id: towed, title: Towed, ask: Towed?, kind: paper, access: cab, minutes: 1,
                  background: rarely, sources: [common-practice] }
              - { id: hubs-scored, title: Hubs scored, ask: Scored?, kind: mark, gear: seen-on, access: bench, minutes: 5,
                  look: Look., background: almost-never, sources: [common-practice] }
              - { id: hubs-sound, title: Hubs sound, ask: Sound?, kind: mark, access: bench, minutes: 5,
                  look: Look., background: commonly, sources: [common-practice] }
              - { id: split-slow, title: Split slow, ask: Slow?, kind: symptom, access: cab, minutes: 1,
                  background: rarely, applies-to: { splitter: [high-only, both] }, sources: [common-practice] }
            """,
            "causes/all.yaml",
            """
            system: range
            causes:
              - id: habit
                title: Range moved in neutral
                class: driver-habit
                prior: common
                mechanism: The cone slips.
                links:
                  - { finding: cone-burned, strength: usually }
                  - { finding: log-shows-it, strength: often }
                  - { finding: told, strength: often }
                  - { finding: grinds, strength: usually }
                repair: [Replace the cone.]
                repair-at: [rear-off]
                coaching: [preselect]
                cautions: [chocks]
                sources: [common-practice]
              - id: exclusion-habit
                title: Lever not carried home
                class: driver-habit
                prior: common
                mechanism: Tapered.
                links:
                  - { finding: hubs-scored, strength: nearly-always }
                proved-good: [outlet-low]
                repair: [Replace the hub.]
                repair-at: [rear-off]
                coaching: [preselect]
                sources: [common-practice]
              - id: low-air
                title: Low air
                class: maintenance
                class-when:
                  - { finding: since-repair, class: assembly }
                prior: common
                mechanism: The piston is weak.
                links:
                  - { finding: cone-burned, strength: often }
                  - { finding: outlet-low, look: true }
                  - { finding: leak, strength: often }
                  - { finding: grinds, strength: usually }
                against:
                  - { finding: outlet-high, weight: excludes, why: High is not low. }
                breeds: [tow]
                repair: [Set the regulator.]
                repair-at: [lines]
                sources: [common-practice]
              - id: tow
                title: Towed wheels down
                class: towing-transport
                prior: uncommon
                mechanism: Dry hubs.
                links:
                  - { finding: hubs-scored, strength: nearly-always }
                  - { finding: towed, strength: usually }
                repair: [Replace the hubs.]
                repair-at: [rear-off]
                towing: [lift]
                sources: [common-practice]
              - id: splitter-slow
                title: Splitter seal
                class: maintenance
                prior: common
                mechanism: Leak.
                links:
                  - { finding: split-slow, strength: usually }
                  - { finding: rattles, strength: often }
                  - { finding: rattles-cold, strength: often }
                applies-to: { splitter: [high-only, both] }
                repair: [Replace the seal.]
                repair-at: [rear-off]
                sources: [common-practice]
            """,
            "look-alikes/all.yaml",
            """
            look-alikes:
              - { between: [habit, low-air], check: [outlet-low], tells: Gauge at the outlet.,
                  sources: [common-practice] }
            """,
            "consistency.yaml",
            """
            never-together:
              - { findings: [hubs-scored, hubs-sound], why: Hubs cannot be scored and sound. }
            explained-by:
              - { finding: leak, by: [outlet-low, grinds], why: A leak lowers the outlet or grinds. }
            follows:
              - { if: regulator-new, then: repaired, why: New is repaired. }
              - { if: outlet-low, then: test-proper, why: The gauge was on. }
              - { if: since-repair, then: repaired, why: It needs a repair. }
            """,
            "one-fact.yaml",
            """
            questions:
              - { id: rattle, title: Rattle, findings: [rattles-cold, rattles] }
              - { id: whose, title: Whose, findings: [since-repair, towed] }
            acts:
              - { id: late, title: Range late, findings: [log-shows-it, told] }
            """);

    private static final String CONTEXT =
            """
            context:
              - { finding: repaired, class: assembly, odds: 4, why: Suspect the repair. }
              - { finding: towed, cause: exclusion-habit, odds: 0.5, why: The tow explains it. }
            """;

    private static Map<String, String> files(String... namesAndTexts) {
        Map<String, String> files = new LinkedHashMap<>();
        for (int i = 0; i < namesAndTexts.length; i += 2) {
            files.put(namesAndTexts[i], namesAndTexts[i + 1]);
        }
        return files;
    }

    private SmallTrade() {}

    static KnowledgeBase knowledge() {
        List<KnowledgeFile> files = new ArrayList<>();
        FILES.forEach((name, text) -> files.add(file(name, text)));
        files.add(file("context.yaml", CONTEXT));
        return new KnowledgeLoader().load(List.of(files));
    }

    static KnowledgeFile file(String name, String text) {
        return new KnowledgeFile(name, text.getBytes(StandardCharsets.UTF_8));
    }

    static Diagnosis diagnosis() {
        return new Diagnosis(RuleBase.shipped(), knowledge());
    }

    /** A case in which each finding is present, or absent where it starts with "no ", or unsure with "unsure ". */
    static CaseFile caseWith(String... findings) {
        return sheet(findings).toCaseFile();
    }

    static CaseSheet sheet(String... findings) {
        CaseSheet sheet = new CaseSheet(new CaseId("small"));
        for (String finding : findings) {
            sheet.finding(entry(finding));
        }
        return sheet;
    }

    static Measurement outletBar(double value, double low, double high) {
        Limits limits =
                new Limits(java.util.OptionalDouble.of(low), java.util.OptionalDouble.of(high), Unit.BAR, "manual");
        return new Measurement("outlet", value, Unit.BAR, java.util.Optional.of(limits), "");
    }

    static Layout withoutSplitter() {
        Layout any = Layout.unknown();
        return new Layout(
                any.forwardRatios(),
                any.range(),
                java.util.Optional.of(Layout.Splitter.NONE),
                any.countershafts(),
                any.linkage(),
                any.oilPump(),
                any.oilCooler(),
                any.powerTakeOff());
    }

    private static FindingEntry entry(String said) {
        if (said.startsWith("no ")) {
            return new FindingEntry(said.substring(3), FindingState.ABSENT);
        }
        if (said.startsWith("unsure ")) {
            return new FindingEntry(said.substring(7), FindingState.UNSURE);
        }
        return new FindingEntry(said, FindingState.PRESENT);
    }
}
