package witnessmark.casefile.history;

import java.util.Map;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.SignOff;

/** The case closed to change by the one who makes the entry. */
public record SignedOff() implements Change {
    @Override
    public String kind() {
        return "signed-off";
    }

    @Override
    public Map<String, Object> form() {
        return Map.of();
    }

    @Override
    public void applyTo(CaseSheet sheet, Stamp stamp) {
        sheet.signedOff(new SignOff(stamp.who(), stamp.time()));
    }
}
