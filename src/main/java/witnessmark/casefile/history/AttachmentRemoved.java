package witnessmark.casefile.history;

import java.util.Map;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CaseForm;
import witnessmark.casefile.CaseSheet;

/** A file taken off the case; its bytes stay in the store, since the history names them. */
public record AttachmentRemoved(Attachment attachment) implements Change {
    @Override
    public String kind() {
        return "attachment-removed";
    }

    @Override
    public Map<String, Object> form() {
        return CaseForm.attachment(attachment);
    }

    @Override
    public void applyTo(CaseSheet sheet, Stamp stamp) {
        sheet.removeAttachment(attachment);
    }
}
