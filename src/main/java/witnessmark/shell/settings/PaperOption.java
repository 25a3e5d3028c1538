package witnessmark.shell.settings;

import org.springframework.core.convert.converter.Converter;
import org.springframework.stereotype.Component;
import witnessmark.document.Paper;

/** The paper that an option names; left out, as the shop has it. */
@Component
class PaperOption implements Converter<String, Paper> {
    private final ShopSettings shop;

    PaperOption(ShopSettings shop) {
        this.shop = shop;
    }

    @Override
    public Paper convert(String word) {
        return shop.paper(word);
    }
}
