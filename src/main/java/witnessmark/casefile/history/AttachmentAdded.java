package witnessmark.casefile.history;

import java.util.Map;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CaseForm;
import witnessmark.casefile.CaseSheet;

/** A file put with the case. */
public record AttachmentAdded(Attachment attachment) implements Change {
    @Override
    public String kind() {
        return "attachment-added";
    }

    @Override
    public Map<String, Object> form() {
        return CaseForm.attachment(attachment);
    }

    @Override
    public void applyTo(CaseSheet sheet, Stamp stamp) {
        sheet.attachment(attachment);
    }
}
