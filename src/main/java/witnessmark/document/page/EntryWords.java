package witnessmark.document.page;

import witnessmark.casefile.Attachment;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.Measurement;
import witnessmark.casefile.history.AttachmentAdded;
import witnessmark.casefile.history.AttachmentRemoved;
import witnessmark.casefile.history.Change;
import witnessmark.casefile.history.CorrectedAfterSignOff;
import witnessmark.casefile.history.EvidenceRemoved;
import witnessmark.casefile.history.EvidenceSet;
import witnessmark.casefile.history.FindingCleared;
import witnessmark.casefile.history.FindingSet;
import witnessmark.casefile.history.MeasurementCleared;
import witnessmark.casefile.history.MeasurementSet;
import witnessmark.casefile.history.NoteAdded;
import witnessmark.casefile.history.TextSet;

/** Says in a few words what an entry of the history did; the whole of it stands in the case's YAML form. */
final class EntryWords {
    private static final int LONGEST = 160;

    private EntryWords() {}

    static String of(Change change) {
        String detail = detail(change);
        String words = change.kind().replace('-', ' ');
        return detail.isEmpty() ? words : words + ": " + detail;
    }

    private static String detail(Change change) {
        if (change instanceof FindingSet set) {
            return set.to().finding() + set.from().map(f -> " from " + said(f)).orElse("") + " to " + said(set.to());
        }
        if (change instanceof FindingCleared cleared) {
            return cleared.finding();
        }
        if (change instanceof MeasurementSet set) {
            return set.to().measure() + set.from().map(m -> " from " + value(m)).orElse("") + " to " + value(set.to());
        }
        if (change instanceof MeasurementCleared cleared) {
            return cleared.measure();
        }
        if (change instanceof CorrectedAfterSignOff corrected) {
            return shortened(corrected.reason()) + "; " + of(corrected.change());
        }
        return textDetail(change);
    }

    private static String textDetail(Change change) {
        if (change instanceof TextSet set) {
            return set.field().word() + " to \"" + shortened(set.to()) + "\"";
        }
        if (change instanceof NoteAdded note) {
            return "\"" + shortened(note.text()) + "\"";
        }
        if (change instanceof AttachmentAdded added) {
            return file(added.attachment());
        }
        if (change instanceof AttachmentRemoved removed) {
            return file(removed.attachment());
        }
        if (change instanceof EvidenceSet set) {
            return set.to().id();
        }
        return change instanceof EvidenceRemoved removed ? removed.id() : "";
    }

    private static String said(FindingEntry entry) {
        return entry.state().word() + (entry.note().isEmpty() ? "" : " (\"" + shortened(entry.note()) + "\")");
    }

    private static String value(Measurement m) {
        return Say.number(m.value()) + " " + m.unit().symbol();
    }

    private static String file(Attachment attachment) {
        return attachment.name() + attachment.finding().map(f -> ", shows " + f).orElse("");
    }

    private static String shortened(String text) {
        if (text.codePointCount(0, text.length()) <= LONGEST) {
            return text;
        }
        return text.substring(0, text.offsetByCodePoints(0, LONGEST)) + "…";
    }
}
