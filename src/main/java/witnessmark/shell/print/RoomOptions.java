package witnessmark.shell.print;

import org.springframework.core.convert.converter.ConverterRegistry;

/** What a room makes of the words of its options; a word that it cannot take is refused with the option, and the mend. */
@FunctionalInterface
public interface RoomOptions {
    void addTo(ConverterRegistry values);
}
