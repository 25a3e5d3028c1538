package witnessmark.document.page;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import witnessmark.diagnosis.AdviceGiven;
import witnessmark.document.Dossier;
import witnessmark.document.TowWay;
import witnessmark.language.Language;

/**
 * The sheet of who moves truck or gearbox: the reminders for this way, with boxes to tick and what to write down.
 *
 * @param loose whether the gearbox goes alone, so that nothing of a truck is asked
 */
public record TowingPage(String unit, boolean loose, List<String> cautions, List<String> reminders) {
    private static final String DO_NOT_DRIVE = "do-not-drive";
    private static final List<String> CAUTIONS = List.of("truck-held", "chock-wheels", "brake-chambers");
    private static final List<String> LOOSE_CAUTIONS = List.of("heavy-parts");

    /** @param way how the truck will be moved; empty for a sheet that leaves it open, for a truck that goes as a whole */
    public static TowingPage of(Dossier dossier, Language language, Optional<TowWay> way) {
        boolean loose = way.equals(Optional.of(TowWay.LOOSE));
        return new TowingPage(
                dossier.file().vehicle().unit(),
                loose,
                (loose ? LOOSE_CAUTIONS.stream() : cautionsOfTruck(dossier))
                        .map(dossier.knowledge().cautions()::get)
                        .filter(Objects::nonNull)
                        .map(caution -> caution.in(language))
                        .toList(),
                dossier.knowledge().towing().values().stream()
                        .filter(advice ->
                                way.map(w -> w.needs(advice.id())).orElseGet(() -> !isOfLooseGearbox(advice.id())))
                        .map(advice -> advice.in(language))
                        .toList());
    }

    private static Stream<String> cautionsOfTruck(Dossier dossier) {
        return Stream.concat(
                CAUTIONS.stream(),
                dossier.judgement().advice().cautions().stream()
                        .map(AdviceGiven.Piece::id)
                        .filter(DO_NOT_DRIVE::equals));
    }

    private static boolean isOfLooseGearbox(String reminder) {
        return Arrays.stream(TowWay.values()).filter(w -> w != TowWay.LOOSE).noneMatch(w -> w.needs(reminder));
    }
}
