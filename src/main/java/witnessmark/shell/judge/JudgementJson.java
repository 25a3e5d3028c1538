package witnessmark.shell.judge;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.diagnosis.AdviceGiven;
import witnessmark.diagnosis.AfterSignOff;
import witnessmark.diagnosis.Judgement;
import witnessmark.diagnosis.NextCheck;
import witnessmark.diagnosis.RankedCause;
import witnessmark.shell.cases.ChainJson;
import witnessmark.shell.cases.SignedOffJson;
import witnessmark.shell.print.Json;

/** The stable machine form of a judgement. */
public record JudgementJson(
        @Json.Name("case") String id,
        String verdict,
        String standing,
        @Nullable String pointsTo,
        String verdictText,
        List<String> carriedBy,
        List<String> open,
        List<Cause> causes,
        List<Share> attribution,
        List<Conflict> contradictions,
        List<Change> changes,
        List<Check> nextChecks,
        Advice advice,
        double coverage,
        List<String> remarks) {
    private static final double LEAST_PROBABILITY = 0.001;

    record Cause(
            String id,
            String title,
            @Json.Name("class") String classId,
            double probability,
            RankedCause.Standing standing,
            @Json.Name("for") List<Weight> evidenceFor,
            List<Weight> against,
            List<String> unchecked,
            List<String> lookAlikes,
            List<String> heldBack) {
        static Cause of(RankedCause cause) {
            return new Cause(
                    cause.id(),
                    cause.title(),
                    cause.classId(),
                    cause.probability(),
                    cause.standing(),
                    cause.evidenceFor().stream().map(Weight::of).toList(),
                    cause.evidenceAgainst().stream().map(Weight::of).toList(),
                    cause.unchecked(),
                    cause.lookAlikes().stream().map(RankedCause.Rivalry::cause).toList(),
                    cause.heldBack());
        }
    }

    record Weight(String finding, String state, double decibans) {
        static Weight of(RankedCause.Weight weight) {
            return new Weight(weight.finding(), weight.state().word(), weight.decibans());
        }
    }

    record Share(@Json.Name("class") String classId, double probability) {}

    record Conflict(List<String> findings, String why) {}

    record Change(String subject, String finding, String why) {
        static Change of(Judgement.Change change) {
            return new Change(change.subject(), change.finding(), change.sentence());
        }
    }

    record Check(
            String finding,
            String title,
            String ask,
            String access,
            double gainBits,
            double minutes,
            boolean teardown,
            String why,
            List<String> cautions) {
        static Check of(NextCheck check) {
            return new Check(
                    check.finding(),
                    check.title(),
                    check.ask(),
                    check.access(),
                    check.gainBits(),
                    check.minutes(),
                    check.teardown(),
                    check.why(),
                    check.cautions());
        }
    }

    record Advice(List<Piece> repair, List<Piece> coaching, List<Piece> towing, List<Piece> cautions) {
        static Advice of(AdviceGiven advice) {
            return new Advice(
                    pieces(advice.repair()),
                    pieces(advice.coaching()),
                    pieces(advice.towing()),
                    pieces(advice.cautions()));
        }

        private static List<Piece> pieces(List<AdviceGiven.Piece> pieces) {
            return pieces.stream()
                    .map(p -> new Piece(p.id(), p.text(), p.why()))
                    .toList();
        }
    }

    record Piece(String id, String text, String why) {}

    /**
     * A judgement of a case that may have been signed.
     *
     * @param signedOff null for an open case
     * @param judgedToday null where today's judgement is the signed one
     */
    public record OfCase(
            @Json.Inlined JudgementJson judgement,
            @Nullable SignedOffJson signedOff,
            SignedOffJson.@Nullable Today judgedToday,
            ChainJson chain) {
        public static OfCase of(CaseDocument document, Judgement judgement, Optional<AfterSignOff> after) {
            return new OfCase(
                    JudgementJson.of(judgement),
                    document.present().signedOff().map(SignedOffJson::of).orElse(null),
                    SignedOffJson.Today.of(after),
                    ChainJson.of(document));
        }
    }

    public static JudgementJson of(Judgement judgement) {
        return new JudgementJson(
                judgement.caseId(),
                judgement.verdict().classId(),
                judgement.verdict().standing().word(),
                judgement.verdict().pointsTo().orElse(null),
                judgement.verdict().sentence(),
                judgement.verdict().carriedBy(),
                judgement.verdict().open(),
                judgement.causesFrom(LEAST_PROBABILITY).stream().map(Cause::of).toList(),
                judgement.sharesTold().stream()
                        .map(s -> new Share(s.classId(), s.probability()))
                        .toList(),
                judgement.contradictions().stream()
                        .map(c -> new Conflict(c.findings(), c.why()))
                        .toList(),
                judgement.changes().stream().map(Change::of).toList(),
                judgement.nextChecks().stream().map(Check::of).toList(),
                Advice.of(judgement.advice()),
                judgement.coverage(),
                judgement.remarks());
    }
}
