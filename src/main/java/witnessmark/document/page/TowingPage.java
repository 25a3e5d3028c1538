package witnessmark.document.page;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import witnessmark.diagnosis.AdviceGiven;
import witnessmark.document.Dossier;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.TowWay;
import witnessmark.language.Language;

/**
 * The sheet of who moves truck or gearbox: the reminders for this way, with boxes to tick and what to write down.
 *
 * @param loose whether the gearbox goes alone, so that nothing of a truck is asked
 */
public record TowingPage(String unit, boolean loose, List<String> cautions, List<String> reminders) {
    /** @param way how the truck will be moved; empty for a sheet that leaves it open, for a truck that goes as a whole */
    public static TowingPage of(Dossier dossier, Language language, Optional<TowWay> way) {
        KnowledgeBase knowledge = dossier.knowledge();
        Set<TowWay> ways = way.map(Set::of).orElse(TowWay.OF_TRUCK);
        return new TowingPage(
                dossier.file().vehicle().unit(),
                way.equals(Optional.of(TowWay.LOOSE)),
                knowledge.towCautions().stream()
                        .filter(c -> isForOne(ways, c.ways()) && (!c.ifAdvised() || isAdvised(dossier, c.caution())))
                        .map(c -> knowledge.cautions().get(c.caution()).in(language))
                        .toList(),
                knowledge.towing().values().stream()
                        .filter(advice -> isForOne(ways, advice.ways()))
                        .map(advice -> advice.in(language))
                        .toList());
    }

    private static boolean isForOne(Set<TowWay> ways, List<TowWay> of) {
        return of.stream().anyMatch(ways::contains);
    }

    private static boolean isAdvised(Dossier dossier, String caution) {
        return dossier.judgement().advice().cautions().stream()
                .map(AdviceGiven.Piece::id)
                .anyMatch(caution::equals);
    }
}
