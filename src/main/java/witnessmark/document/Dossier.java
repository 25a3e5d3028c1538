package witnessmark.document;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.DamagedFile;
import witnessmark.casefile.MadeWith;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.ChainCheck;
import witnessmark.casefile.logged.WeighOnce;
import witnessmark.diagnosis.EvidenceMatrix;
import witnessmark.diagnosis.Judgement;
import witnessmark.gearbox.TruckProfile;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.language.Language;
import witnessmark.language.Texts;

/**
 * All that the documents of one case are written from, in the language of its knowledge.
 *
 * @param history how the case came to stand so; empty for a case that was not stored
 * @param made what the judgement was made with
 * @param contents bytes of the attachments at hand, by SHA-256; one that is missing is said to be missing
 * @param damaged the attachments whose bytes are not those that were put in, or of a stored case not kept any more
 * @param truck profile of the truck, from which its figures and charts are computed; empty where none is named
 * @param figures charts that come from elsewhere, such as a trip log; may be empty
 * @param shop whose papers they are
 * @param weigh what weighed the case's logs for the judgement
 */
public record Dossier(
        CaseFile file,
        Optional<CaseHistory> history,
        Judgement judgement,
        EvidenceMatrix matrix,
        KnowledgeBase knowledge,
        MadeWith made,
        Map<String, byte[]> contents,
        List<DamagedFile> damaged,
        Optional<TruckProfile> truck,
        List<Figure> figures,
        Shop shop,
        WeighOnce weigh) {

    /** With logs that were not weighed yet. */
    public Dossier(
            CaseFile file,
            Optional<CaseHistory> history,
            Judgement judgement,
            EvidenceMatrix matrix,
            KnowledgeBase knowledge,
            MadeWith made,
            Map<String, byte[]> contents,
            List<DamagedFile> damaged,
            Optional<TruckProfile> truck,
            List<Figure> figures,
            Shop shop) {
        this(
                file,
                history,
                judgement,
                matrix,
                knowledge,
                made,
                contents,
                damaged,
                truck,
                figures,
                shop,
                new WeighOnce());
    }

    /**
     * A chart with what it shows.
     *
     * @param svg one SVG element
     */
    public record Figure(String title, String says, String svg) {}

    public Dossier {
        contents = Map.copyOf(contents);
        damaged = List.copyOf(damaged);
        figures = List.copyOf(figures);
    }

    /** Whether the chain of entries is broken, so that nothing the papers say of the case can be relied on. */
    public boolean isBroken() {
        return history.filter(h -> h.verify() instanceof ChainCheck.Broken).isPresent();
    }

    /** How the bytes of an attachment are damaged; empty where they are not. */
    public Optional<DamagedFile.Fault> faultOf(Attachment attachment) {
        return damaged.stream()
                .filter(d -> d.file().equals(attachment))
                .map(DamagedFile::fault)
                .findFirst();
    }

    public Language language() {
        return knowledge.language();
    }

    /** What the pages say besides, in the same language. */
    public Texts texts() {
        return Texts.of("document", language());
    }

    /** The time of the case's last entry, by which its documents are dated; empty for a case that was not stored. */
    public Optional<Instant> asOf() {
        return history.map(h -> h.last().stamp().time());
    }
}
