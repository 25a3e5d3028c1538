package witnessmark.shell.settings;

import org.springframework.core.convert.converter.Converter;
import org.springframework.stereotype.Component;
import witnessmark.language.Language;

/** The language that an option names; left out, as the shop has it. */
@Component
class LanguageOption implements Converter<String, Language> {
    private final ShopSettings shop;

    LanguageOption(ShopSettings shop) {
        this.shop = shop;
    }

    @Override
    public Language convert(String word) {
        return shop.language(word);
    }
}
