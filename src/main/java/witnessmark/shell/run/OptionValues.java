package witnessmark.shell.run;

import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.springframework.core.convert.support.DefaultConversionService;
import witnessmark.shell.print.Format;
import witnessmark.shell.print.GivenPath;
import witnessmark.shell.print.RoomOptions;

/**
 * Makes of an option's word what its command takes. A word that cannot be taken is refused by what makes it: a
 * {@link witnessmark.refusal.Refusal} that says the option, the word and the mend.
 */
public final class OptionValues extends DefaultConversionService {

    public OptionValues(Stream<RoomOptions> ofRooms) {
        addConverter(String.class, Format.class, Format::of);
        addConverter(String.class, GivenPath.class, GivenPath::new);
        addConverter(String.class, OptionalDouble.class, word -> TypedFigure.maybe("value", word));
        ofRooms.forEach(room -> room.addTo(this));
    }
}
