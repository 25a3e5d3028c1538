package witnessmark.casefile.logged;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import witnessmark.casefile.CaseRefused;
import witnessmark.casefile.Evidence;
import witnessmark.casefile.Evidence.SourceFile;
import witnessmark.casefile.SameGearbox;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.gearbox.Layout;
import witnessmark.triplog.evidence.LogRecord;

/**
 * Logs of one truck on their way into a case, however they were read: each stretch of driving counts once, and what
 * speaks against their truck or time must be overruled in so many words, which the case keeps.
 */
public final class AddLogs {
    /**
     * The logs as they were read.
     *
     * @param id of the evidence that they become; what bears it already is replaced
     * @param truck id of the profile they were read with
     * @param gearbox of that profile
     * @param units that the names of the logs tell of, as {@code unit-31}
     * @param inputs what went in, besides the files
     * @param files the logs, at least one
     * @param driving what each covers, for the question whether the case holds it already
     * @param record what they held
     * @param doubts what else speaks against their truck, one sentence each
     * @param remarks what is to be known of how the reading went, one sentence each
     */
    public record Offer(
            String id,
            String truck,
            Layout gearbox,
            List<String> units,
            Map<String, String> inputs,
            List<SourceFile> files,
            List<LogsOfCase.Log> driving,
            LogRecord record,
            List<String> doubts,
            List<String> remarks) {}

    private final CaseHistory before;
    private final Offer offer;
    private final List<String> doubts;

    /**
     * @param now the present time
     * @throws CaseRefused where the truck's gearbox is not that of the case
     */
    public AddLogs(CaseHistory before, Offer offer, Instant now) {
        SameGearbox.check(before.present(), offer.truck(), offer.gearbox());
        this.before = before;
        this.offer = offer;
        this.doubts = Stream.of(
                        offer.record().doubts(),
                        LogDoubts.of(before.present(), Optional.of(opened(before)), offer.record(), offer.units(), now),
                        offer.doubts())
                .flatMap(List::stream)
                .toList();
    }

    /** When the case was opened: logs of a later time are not of its damage. */
    public static Instant opened(CaseHistory before) {
        return before.entries().get(0).stamp().time();
    }

    /** The logs that stand in a case, without those of the evidence that is to be replaced. */
    public static LogsOfCase inCase(CaseHistory before, String replaced) {
        return new LogsOfCase(before.present().evidence().values().stream()
                .filter(e -> !e.id().equals(replaced))
                .toList());
    }

    /** What speaks against these logs being of the case's truck and time; empty where nothing does. */
    public List<String> doubts() {
        return doubts;
    }

    /**
     * The evidence that the case takes.
     *
     * @param nevertheless why they are added in spite of doubts; empty where they are not to be
     * @throws CaseRefused where the case holds some of this driving already, or there are doubts and no reason
     */
    public Evidence evidence(String nevertheless) {
        return evidence(nevertheless, new WeighOnce());
    }

    /** The same for somebody who goes on to ask what all logs of the case say together. */
    public Evidence evidence(String nevertheless, WeighOnce weigh) {
        List<String> twice = inCase(before, offer.id()).add(offer.driving());
        if (!twice.isEmpty()) {
            throw new CaseRefused(String.join("\n", twice));
        }
        return LoggedEvidence.of(
                offer.id(),
                offer.inputs(),
                offer.files(),
                doubts.isEmpty() ? offer.record() : overruled(nevertheless),
                offer.remarks(),
                weigh);
    }

    private LogRecord overruled(String nevertheless) {
        if (nevertheless.isEmpty()) {
            throw new CaseRefused(
                    "these logs may not be of this truck or time: " + String.join("; ", doubts)
                            + "\nnothing was stored",
                    "if they are all the same, add them with --nevertheless 'why', and the case keeps it");
        }
        List<String> kept = new ArrayList<>(doubts);
        kept.add("added nevertheless: " + nevertheless);
        return offer.record().with(kept);
    }
}
