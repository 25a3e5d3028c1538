package witnessmark.shell.print;

import witnessmark.language.Language;

/** The value of {@code --language}. */
public final class LanguageOption {
    private LanguageOption() {}

    /** The language of this tag; throws {@link WrongUsage} if it is none. */
    public static Language of(String tag) {
        return Language.parse(tag)
                .orElseThrow(() -> new WrongUsage(
                        "--language '" + Terminal.harmless(tag) + "' is not known", "one of " + Language.TAGS));
    }
}
