package witnessmark.shell.knowledge;

import java.util.Optional;
import witnessmark.casefile.MadeWith;

/** What an answer was made with, for every machine form. */
public record MadeWithJson(String program, String knowledge, Optional<String> siteKnowledge) {
    public static MadeWithJson of(MadeWith made) {
        return new MadeWithJson(made.program(), made.knowledge(), made.site());
    }
}
