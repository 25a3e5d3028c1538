package witnessmark.casefile;

import java.util.Optional;

/**
 * What a judgement was made with.
 *
 * @param program version of the program
 * @param knowledge SHA-256 of the shipped knowledge, lower-case hexadecimal
 * @param site SHA-256 of the site's own knowledge, where there is one
 */
public record MadeWith(String program, String knowledge, Optional<String> site) {
    public MadeWith {
        program = CheckedText.free("program", program);
        knowledge = CheckedText.free("knowledge", knowledge);
        site = site.map(digest -> CheckedText.free("site knowledge", digest));
    }
}
