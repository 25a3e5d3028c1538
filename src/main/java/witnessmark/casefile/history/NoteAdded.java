package witnessmark.casefile.history;

import java.util.Map;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.CheckedText;

/** A note added; notes are not changed, a later one puts an earlier one right. */
public record NoteAdded(String text) implements Change {
    public NoteAdded {
        text = CheckedText.free("note", text);
    }

    @Override
    public String kind() {
        return "note-added";
    }

    @Override
    public Map<String, Object> form() {
        return Map.of("note", text);
    }

    @Override
    public void applyTo(CaseSheet sheet, Stamp stamp) {
        sheet.note(text);
    }
}
