package witnessmark.casefile;

import witnessmark.gearbox.EnumWord;
import witnessmark.gearbox.Layout;

/** Keeps results of one gearbox out of the case of another: a case whose box differs would hold figures of the wrong one. */
public final class SameGearbox {
    private SameGearbox() {}

    /**
     * Refused where case and truck both say their forward ratios, or their splitter, and not the same.
     *
     * @param truck id of the profile that the results were reckoned with
     * @throws CaseRefused naming both gearboxes
     */
    public static void check(CaseFile file, String truck, Layout ofTruck) {
        Layout ofCase = file.gearbox();
        boolean otherRatios = ofCase.forwardRatios().isPresent()
                && ofTruck.forwardRatios().isPresent()
                && !ofCase.forwardRatios().equals(ofTruck.forwardRatios());
        boolean otherSplitter = ofCase.splitter().isPresent()
                && ofTruck.splitter().isPresent()
                && !ofCase.splitter().equals(ofTruck.splitter());
        if (otherRatios || otherSplitter) {
            throw new CaseRefused(
                    "case '" + file.id() + "' says that its gearbox has " + words(ofCase) + ", truck '"
                            + CheckedText.shown(truck) + "' has " + words(ofTruck),
                    "name the truck of the case, or put the case right with: case gearbox " + file.id()
                            + " --ratios N --splitter none|high-only|both");
        }
    }

    private static String words(Layout layout) {
        String ratios = layout.forwardRatios().isPresent()
                ? layout.forwardRatios().getAsInt() + " forward ratios"
                : "forward ratios not said";
        return ratios
                + layout.splitter().map(s -> ", splitter " + EnumWord.of(s)).orElse("");
    }
}
