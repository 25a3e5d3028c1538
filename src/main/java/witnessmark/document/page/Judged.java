package witnessmark.document.page;

import java.util.List;
import java.util.Optional;
import witnessmark.casefile.MadeWith;
import witnessmark.casefile.SignOff;
import witnessmark.casefile.SignedJudgement;
import witnessmark.casefile.SignedJudgement.SignedCause;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.ChainCheck;
import witnessmark.casefile.history.CorrectedAfterSignOff;
import witnessmark.casefile.history.Entry;
import witnessmark.diagnosis.AfterSignOff;
import witnessmark.diagnosis.SignedSentence;
import witnessmark.diagnosis.Verdict;
import witnessmark.document.Dossier;
import witnessmark.language.Language;
import witnessmark.language.Texts;

/**
 * How the verdict of a case stands: the signed one where one was signed, today's beside it where it differs.
 *
 * @param classId id of the class concluded, or undetermined
 * @param undecided whether nothing can be told yet, as the verdict says by itself
 * @param standing in words
 * @param signed who signed and when; empty for an open case
 * @param signedCauses what was signed in short, where today's judgement differs and pages show that one
 * @param today today's verdict with what changed; empty where it is the signed one, or none was signed
 * @param alarm where the chain of entries is broken; empty while it is whole
 * @param filesAlarm which files are not as they were put in; empty where all are
 * @param corrected what was corrected after the sign-off, when and why
 * @param made program and knowledge of today's judgement
 */
public record Judged(
        String classId,
        boolean concluded,
        boolean undecided,
        String verdict,
        String standing,
        String signed,
        String signedCauses,
        String today,
        String alarm,
        String filesAlarm,
        List<String> corrected,
        String made) {
    private static final int DIGEST_SHOWN = 12;

    static Judged of(Dossier dossier) {
        SayOnPaper words = new SayOnPaper(dossier);
        Verdict now = dossier.judgement().verdict();
        Optional<SignOff> signOff = dossier.file().signedOff();
        Optional<SignedJudgement> then = signOff.flatMap(SignOff::judgement);
        Optional<AfterSignOff> after =
                AfterSignOff.of(dossier.file(), dossier.history(), now, dossier.made(), dossier.knowledge());
        boolean differs = after.filter(AfterSignOff::differs).isPresent();
        String standing =
                then.map(SignedJudgement::standing).orElse(now.standing().word());
        return new Judged(
                then.map(SignedJudgement::verdict).orElse(now.classId()),
                standing.equals(Verdict.Standing.CONCLUDED.word()),
                standing.equals(Verdict.Standing.UNDETERMINED.word()),
                then.map(j -> signed(j, now, differs, dossier)).orElse(now.sentence()),
                standing(standing, then.map(SignedJudgement::verdict).orElse(now.classId()), dossier, words),
                signOff.map(s -> words.say(
                                s.judgement().isPresent() ? "signed-line" : "signed-line-bare",
                                s.who(),
                                SayOnPaper.time(s.time())))
                        .orElse(""),
                differs ? signedCauses(then.get(), dossier, words) : "",
                after.map(AfterSignOff::today).orElse(""),
                dossier.history().map(h -> alarm(h, words)).orElse(""),
                filesAlarm(dossier, words),
                after.stream()
                        .flatMap(a -> a.corrections().stream())
                        .map(e -> correction(e, dossier, words))
                        .toList(),
                made(dossier.made(), dossier.texts()));
    }

    /** A class that could name people is concluded as a class alone, as the verdict beside it says. */
    private static String standing(String standing, String classId, Dossier dossier, SayOnPaper words) {
        boolean ofPeople = standing.equals(Verdict.Standing.CONCLUDED.word())
                && dossier.knowledge().vocabulary().classes().stream()
                        .anyMatch(c -> c.id().equals(classId) && c.blames());
        return words.say("standing-" + standing + (ofPeople ? "-of-people" : ""));
    }

    /** The same verdict is said as today; another in the words that were signed, or in their translation. */
    private static String signed(SignedJudgement then, Verdict now, boolean differs, Dossier dossier) {
        boolean another = dossier.language() != Language.ENGLISH && !differs;
        return another ? now.sentence() : new SignedSentence(dossier.knowledge()).of(then);
    }

    private static String signedCauses(SignedJudgement then, Dossier dossier, SayOnPaper words) {
        String causes = SayOnPaper.list(then.causes().stream()
                .map(SignedCause::title)
                .map(dossier.knowledge()::text)
                .limit(3)
                .toList());
        return words.say("signed-causes", causes.isEmpty() ? words.say("none") : causes)
                + (then.carriedBy().isEmpty()
                        ? ""
                        : words.say("signed-carried", SayOnPaper.list(SignedGrounds.of(then, dossier, words))));
    }

    private static String alarm(CaseHistory history, SayOnPaper words) {
        return history.verify() instanceof ChainCheck.Broken broken ? words.say("chain-alarm", broken.number()) : "";
    }

    private static String filesAlarm(Dossier dossier, SayOnPaper words) {
        return dossier.damaged().isEmpty()
                ? ""
                : words.say(
                        "files-alarm",
                        SayOnPaper.list(dossier.damaged().stream()
                                .map(d -> words.say(
                                        "damaged-" + d.fault().word(), d.file().name()))
                                .toList()));
    }

    private static String correction(Entry entry, Dossier dossier, SayOnPaper words) {
        CorrectedAfterSignOff correction = (CorrectedAfterSignOff) entry.change();
        return words.say(
                "corrected",
                SayOnPaper.time(entry.stamp().time()),
                entry.stamp().who(),
                correction.reason(),
                ChainRows.shortened(new SayChange(dossier).of(correction.change()))
                        .replaceFirst("\\.$", ""));
    }

    /** The line that says with which program and knowledge a page was made. */
    public static String made(MadeWith made, Texts words) {
        return words.text("made", made.program(), shortened(made.knowledge()))
                + made.site().map(s -> words.text("made-site", shortened(s))).orElse("");
    }

    private static String shortened(String digest) {
        return digest.substring(0, Math.min(DIGEST_SHOWN, digest.length()));
    }
}
