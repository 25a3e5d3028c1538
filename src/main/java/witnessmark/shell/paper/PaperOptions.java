package witnessmark.shell.paper;

import java.util.Map;
import java.util.Optional;
import org.springframework.core.convert.converter.ConverterRegistry;
import org.springframework.stereotype.Component;
import witnessmark.document.Kind;
import witnessmark.gearbox.EnumWord;
import witnessmark.knowledge.TowWay;
import witnessmark.shell.print.RoomOptions;
import witnessmark.shell.print.WrongUsage;

/** Which document is meant, and how the truck will be moved. */
@Component
class PaperOptions implements RoomOptions {

    /** How the truck will be moved; empty where it is not said. */
    record MoveSaid(Optional<TowWay> way) {}

    @Override
    public void addTo(ConverterRegistry values) {
        values.addConverter(String.class, Kind.class, PaperOptions::kind);
        values.addConverter(String.class, MoveSaid.class, PaperOptions::move);
    }

    private static Kind kind(String word) {
        return Kind.parse(word).orElseThrow(() -> WrongUsage.unknown("document", word, "one of " + Kind.WORDS));
    }

    private static MoveSaid move(String word) {
        if (word.isEmpty()) {
            return new MoveSaid(Optional.empty());
        }
        Map<String, TowWay> ways = EnumWord.all(TowWay.class);
        return new MoveSaid(Optional.of(Optional.ofNullable(ways.get(word))
                .orElseThrow(() -> WrongUsage.unknown("--tow", word, "one of " + String.join(", ", ways.keySet())))));
    }
}
