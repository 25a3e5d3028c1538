package witnessmark.diagnosis;

import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;

/** A case of a few findings in one line, each present, or absent behind "no". */
final class ShortCase {
    private ShortCase() {}

    static CaseFile of(String name, String entered) {
        CaseSheet sheet = new CaseSheet(new CaseId(name));
        for (String finding : entered.split(",")) {
            String plain = finding.strip();
            sheet.finding(
                    plain.startsWith("no ")
                            ? new FindingEntry(plain.substring(3), FindingState.ABSENT)
                            : new FindingEntry(plain, FindingState.PRESENT));
        }
        return sheet.toCaseFile();
    }
}
