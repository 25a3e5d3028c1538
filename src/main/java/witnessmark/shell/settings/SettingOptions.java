package witnessmark.shell.settings;

import org.springframework.core.convert.converter.ConverterRegistry;
import org.springframework.stereotype.Component;
import witnessmark.document.Paper;
import witnessmark.gearbox.Units;
import witnessmark.language.Language;
import witnessmark.shell.print.RoomOptions;

/** Language, units and paper that an option names; left out, as the shop has them. */
@Component
class SettingOptions implements RoomOptions {
    private final ShopSettings shop;

    SettingOptions(ShopSettings shop) {
        this.shop = shop;
    }

    @Override
    public void addTo(ConverterRegistry values) {
        values.addConverter(String.class, Language.class, shop::language);
        values.addConverter(String.class, Units.class, shop::units);
        values.addConverter(String.class, Paper.class, shop::paper);
    }
}
