package witnessmark.document.page;

import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import witnessmark.diagnosis.AdviceGiven;
import witnessmark.document.Dossier;
import witnessmark.document.Language;
import witnessmark.knowledge.Caution;

/** The tow operator's sheet: every reminder of the knowledge base, with boxes to tick and what to write down. */
public record TowingPage(String unit, List<String> cautions, List<String> reminders) {
    private static final String DO_NOT_DRIVE = "do-not-drive";
    private static final List<String> CAUTIONS = List.of("truck-held", "chock-wheels", "brake-chambers");

    public static TowingPage of(Dossier dossier, Language language) {
        return new TowingPage(
                dossier.file().vehicle().unit(),
                Stream.concat(
                                CAUTIONS.stream(),
                                dossier.judgement().advice().cautions().stream()
                                        .map(AdviceGiven.Piece::id)
                                        .filter(DO_NOT_DRIVE::equals))
                        .map(dossier.knowledge().cautions()::get)
                        .filter(Objects::nonNull)
                        .map(caution -> text(caution, language))
                        .toList(),
                dossier.knowledge().towing().values().stream()
                        .map(advice -> language == Language.ENGLISH ? advice.english() : advice.spanish())
                        .toList());
    }

    private static String text(Caution caution, Language language) {
        return switch (language) {
            case ENGLISH -> caution.english();
            case SPANISH -> caution.spanish();
        };
    }
}
