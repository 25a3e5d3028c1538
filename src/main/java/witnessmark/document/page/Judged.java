package witnessmark.document.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.casefile.SignOff;
import witnessmark.casefile.SignedJudgement;
import witnessmark.casefile.SignedJudgement.SignedCause;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.ChainCheck;
import witnessmark.casefile.history.ChangeSentence;
import witnessmark.casefile.history.CorrectedAfterSignOff;
import witnessmark.casefile.history.Entry;
import witnessmark.diagnosis.KnownWords;
import witnessmark.diagnosis.Verdict;
import witnessmark.document.Dossier;

/**
 * How the verdict of a case stands: the signed one where one was signed, today's beside it where it differs.
 *
 * @param classId id of the class concluded, or undetermined
 * @param standing in words
 * @param signed who signed and when; empty for an open case
 * @param signedCauses what was signed in short, where today's judgement differs and pages show that one
 * @param today today's verdict with what changed; empty where it is the signed one, or none was signed
 * @param alarm where the chain of entries is broken; empty while it is whole
 * @param corrected what was corrected after the sign-off, when and why
 * @param made program and knowledge of today's judgement
 */
public record Judged(
        String classId,
        boolean concluded,
        String verdict,
        String standing,
        String signed,
        String signedCauses,
        String today,
        String alarm,
        List<String> corrected,
        String made) {
    private static final int DIGEST_SHOWN = 12;

    static Judged of(Dossier dossier) {
        Verdict now = dossier.judgement().verdict();
        Optional<SignOff> signOff = dossier.file().signedOff();
        Optional<SignedJudgement> then = signOff.flatMap(SignOff::judgement);
        List<String> unknown = KnownWords.unknown(dossier.file(), dossier.knowledge());
        boolean differs =
                then.filter(j -> !unknown.isEmpty() || !isSame(j, now)).isPresent();
        String standing =
                then.map(SignedJudgement::standing).orElse(now.standing().word());
        return new Judged(
                then.map(SignedJudgement::verdict).orElse(now.classId()),
                standing.equals(Verdict.Standing.CONCLUDED.word()),
                then.map(SignedJudgement::sentence).orElse(now.sentence()),
                words(standing),
                signOff.map(s -> "Signed off by " + s.who() + ", " + PaperFigures.time(s.time())
                                + (s.judgement().isPresent()
                                        ? "."
                                        : "; the judgement was not kept with it, what follows was judged today."))
                        .orElse(""),
                differs ? signedCauses(then.get()) : "",
                differs ? today(now, then.get(), dossier) : "",
                dossier.history().map(Judged::alarm).orElse(""),
                dossier.history().map(Judged::corrected).orElse(List.of()),
                made(dossier));
    }

    private static boolean isSame(SignedJudgement then, Verdict now) {
        return then.verdict().equals(now.classId())
                && then.standing().equals(now.standing().word())
                && then.pointsTo().equals(now.pointsTo());
    }

    /** The standing as a reader takes it in. */
    private static String words(String standing) {
        return switch (standing) {
            case "concluded" -> "concluded";
            case "points-to" -> "points there, not concluded";
            default -> "cannot be told yet";
        };
    }

    private static String signedCauses(SignedJudgement then) {
        String causes = PaperFigures.list(
                then.causes().stream().map(SignedCause::title).limit(3).toList());
        return "Signed causes, likeliest first: " + (causes.isEmpty() ? "none" : causes) + "."
                + (then.carriedBy().isEmpty() ? "" : " Carried by: " + PaperFigures.list(then.carriedBy()) + ".");
    }

    private static String today(Verdict now, SignedJudgement then, Dossier dossier) {
        List<String> changed = new ArrayList<>();
        List<String> unknown = KnownWords.unknown(dossier.file(), dossier.knowledge());
        if (!unknown.isEmpty()) {
            changed.add("not known here and left out of today's judgement: " + String.join(", ", unknown));
        }
        if (!then.made().knowledge().equals(dossier.made().knowledge())) {
            changed.add("the knowledge base");
        }
        if (!then.made().site().equals(dossier.made().site())) {
            changed.add("the shop's own knowledge");
        }
        if (!then.made().program().equals(dossier.made().program())) {
            changed.add("the program");
        }
        if (!dossier.history().map(Judged::corrected).orElse(List.of()).isEmpty()) {
            changed.add("the case itself, by corrections");
        }
        return "Judged today: " + now.sentence() + " (standing: "
                + words(now.standing().word()) + "). Changed since: "
                + (changed.isEmpty() ? "not on record" : String.join(", ", changed)) + ".";
    }

    private static String alarm(CaseHistory history) {
        return history.verify() instanceof ChainCheck.Broken broken
                ? "THE CHAIN OF ENTRIES IS BROKEN at entry " + broken.number() + ": " + broken.why()
                        + ". What this paper says of the case cannot be relied on."
                : "";
    }

    private static List<String> corrected(CaseHistory history) {
        return history.entries().stream()
                .filter(e -> e.change() instanceof CorrectedAfterSignOff)
                .map(Judged::corrected)
                .toList();
    }

    private static String corrected(Entry entry) {
        CorrectedAfterSignOff correction = (CorrectedAfterSignOff) entry.change();
        return "Corrected after sign-off on " + PaperFigures.time(entry.stamp().time()) + " by "
                + entry.stamp().who() + ", because " + correction.reason() + ": "
                + ChainRows.shortened(ChangeSentence.of(correction.change())) + ".";
    }

    private static String made(Dossier dossier) {
        return "witnessmark " + dossier.made().program() + ", knowledge "
                + shortened(dossier.made().knowledge())
                + dossier.made()
                        .site()
                        .map(s -> ", site knowledge " + shortened(s))
                        .orElse("");
    }

    private static String shortened(String digest) {
        return digest.substring(0, Math.min(DIGEST_SHOWN, digest.length()));
    }
}
