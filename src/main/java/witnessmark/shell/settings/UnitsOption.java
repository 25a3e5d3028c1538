package witnessmark.shell.settings;

import org.springframework.core.convert.converter.Converter;
import org.springframework.stereotype.Component;
import witnessmark.gearbox.Units;

/** The units that an option names; left out, as the shop has it. */
@Component
class UnitsOption implements Converter<String, Units> {
    private final ShopSettings shop;

    UnitsOption(ShopSettings shop) {
        this.shop = shop;
    }

    @Override
    public Units convert(String word) {
        return shop.units(word);
    }
}
