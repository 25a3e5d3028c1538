package witnessmark.diagnosis;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.MadeWith;
import witnessmark.casefile.SignOff;
import witnessmark.casefile.SignedJudgement;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.CorrectedAfterSignOff;
import witnessmark.casefile.history.Entry;
import witnessmark.gearbox.EnumWord;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.language.Texts;

/** A signed case as it is shown later: what was signed, what was corrected since, and today's judgement beside it. */
public final class AfterSignOff {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss 'UTC'", Locale.ROOT)
            .withZone(ZoneOffset.UTC);

    /** What is otherwise than when the case was signed. */
    public enum Changed {
        /** Findings or measures that are not known here, and so are left out today. */
        UNKNOWN,
        KNOWLEDGE,
        SITE,
        PROGRAM,
        CASE;

        public String word() {
            return EnumWord.of(this);
        }
    }

    private final SignOff signOff;
    private final List<Entry> corrections;
    private final List<String> unknown;
    private final Verdict now;
    private final MadeWith made;
    private final KnowledgeBase knowledge;
    private final Texts texts;

    private AfterSignOff(
            SignOff signOff,
            List<Entry> corrections,
            List<String> unknown,
            Verdict now,
            MadeWith made,
            KnowledgeBase knowledge) {
        this.signOff = signOff;
        this.corrections = corrections;
        this.unknown = unknown;
        this.now = now;
        this.made = made;
        this.knowledge = knowledge;
        this.texts = Texts.of("document", knowledge.language());
    }

    /**
     * Empty for an open case.
     *
     * @param history empty for a case that was not stored
     * @param now today's verdict on what of the case is known here, made with {@code made}
     */
    public static Optional<AfterSignOff> of(
            CaseFile file, Optional<CaseHistory> history, Verdict now, MadeWith made, KnowledgeBase knowledge) {
        List<Entry> corrections = history.stream()
                .flatMap(h -> h.entries().stream())
                .filter(e -> e.change() instanceof CorrectedAfterSignOff)
                .toList();
        return file.signedOff()
                .map(s -> new AfterSignOff(s, corrections, CheckKnown.unknown(file, knowledge), now, made, knowledge));
    }

    /** Today's verdict. */
    public Verdict now() {
        return now;
    }

    public List<Entry> corrections() {
        return corrections;
    }

    /** Whether today's judgement is another one than the one that was kept with the signature. */
    public boolean differs() {
        return signOff.judgement()
                .filter(then -> !unknown.isEmpty() || !isSame(then))
                .isPresent();
    }

    private boolean isSame(SignedJudgement then) {
        return then.verdict().equals(now.classId())
                && then.standing().equals(now.standing().word())
                && then.pointsTo().equals(now.pointsTo());
    }

    /** What is otherwise than it was; none where no judgement was kept. */
    public List<Changed> changed() {
        return signOff.judgement().stream().flatMap(this::changedSince).toList();
    }

    private Stream<Changed> changedSince(SignedJudgement then) {
        List<Changed> changed = new ArrayList<>();
        add(changed, !unknown.isEmpty(), Changed.UNKNOWN);
        add(changed, !then.made().knowledge().equals(made.knowledge()), Changed.KNOWLEDGE);
        add(changed, !then.made().site().equals(made.site()), Changed.SITE);
        add(changed, !then.made().program().equals(made.program()), Changed.PROGRAM);
        add(changed, !corrections.isEmpty(), Changed.CASE);
        return changed.stream();
    }

    private static void add(List<Changed> changed, boolean is, Changed what) {
        if (is) {
            changed.add(what);
        }
    }

    /** Today's verdict with what changed; empty where it is the signed one, or none was kept. */
    public String today() {
        if (!differs()) {
            return "";
        }
        List<String> changed = changed().stream()
                .map(c -> texts.text("changed-" + c.word(), String.join(", ", unknown)))
                .toList();
        return texts.text(
                "judged-today",
                now.sentence(),
                texts.text("standing-" + now.standing().word()),
                changed.isEmpty() ? texts.text("changed-unrecorded") : String.join(", ", changed));
    }

    /** What is said first of the case: who signed what, each correction with its reason, and today's judgement. */
    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add(texts.text(
                        signOff.judgement().isPresent() ? "signed-line" : "signed-line-bare",
                        signOff.who(),
                        TIME.format(signOff.time()))
                + signOff.judgement()
                        .map(j -> " " + new SignedSentence(knowledge).of(j))
                        .orElse(""));
        corrections.forEach(e -> lines.add(texts.text(
                "corrected-bare",
                time(e.stamp().time()),
                e.stamp().who(),
                ((CorrectedAfterSignOff) e.change()).reason())));
        if (differs()) {
            lines.add(today());
        }
        return lines;
    }

    private static String time(Instant time) {
        return TIME.format(time);
    }
}
