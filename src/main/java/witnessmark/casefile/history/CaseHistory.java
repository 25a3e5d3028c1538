package witnessmark.casefile.history;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseRefused;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.DamagedFile;
import witnessmark.casefile.TextField;

/** All entries of one case, from its opening, and the present state they come to. */
public final class CaseHistory {
    /** Texts that the opening brings, and the place of an interview, which is no part of a case. */
    private static final Set<TextField> OPENING_OR_NONE =
            Set.of(TextField.TITLE, TextField.COMPLAINT, TextField.INTERVIEW_POSITION);

    private final List<Entry> entries;
    private final CaseFile present;

    /** What was found amiss with it where it was kept, which the entries alone do not show. */
    private final Optional<ChainCheck.Broken> found;

    private final List<DamagedFile> damaged;

    private CaseHistory(List<Entry> entries, CaseFile present) {
        this(List.copyOf(entries), present, Optional.empty(), List.of());
    }

    private CaseHistory(
            List<Entry> entries, CaseFile present, Optional<ChainCheck.Broken> found, List<DamagedFile> damaged) {
        this.entries = entries;
        this.present = present;
        this.found = found;
        this.damaged = List.copyOf(damaged);
    }

    /** The same, known to be broken where it was kept; {@link #verify} says so from then on. */
    public CaseHistory foundBroken(ChainCheck.Broken broken) {
        return new CaseHistory(entries, present, Optional.of(broken), damaged);
    }

    /** The same, with the files of it that were found damaged where they are kept. */
    public CaseHistory foundDamaged(List<DamagedFile> files) {
        return new CaseHistory(entries, present, found, files);
    }

    /** The files found missing or changed where they are kept; none where all are whole or nobody looked. */
    public List<DamagedFile> damagedFiles() {
        return damaged;
    }

    /** A case newly opened. */
    public static CaseHistory open(Opened opened, Stamp stamp) {
        return of(List.of(Entry.after(0, CanonicalText.NO_HASH, stamp, opened)));
    }

    /** A new history that comes to a case as it stands, all of it entered at once; a sign-off is not taken over. */
    public static CaseHistory leadingTo(CaseFile present, Stamp stamp) {
        List<Change> changes = new ArrayList<>();
        present.texts().forEach((field, text) -> {
            if (!OPENING_OR_NONE.contains(field)) {
                changes.add(new TextSet(field, text));
            }
        });
        if (!present.claim().isEmpty()) {
            changes.add(new ClaimSet(present.claim()));
        }
        present.findings().values().forEach(finding -> changes.add(new FindingSet(finding)));
        present.measurements().values().forEach(measurement -> changes.add(new MeasurementSet(measurement)));
        present.notes().forEach(note -> changes.add(new NoteAdded(note)));
        present.evidence().values().forEach(evidence -> changes.add(new EvidenceSet(evidence)));
        present.attachments().forEach(attachment -> changes.add(new AttachmentAdded(attachment)));
        Opened opened =
                new Opened(present.id(), present.title(), present.complaint(), present.vehicle(), present.gearbox());
        return open(opened, stamp).with(changes, stamp);
    }

    /**
     * A history from its entries as they were kept, true or not: {@link #verify} tells.
     * Throws {@link CaseRefused} if they do not come to a case.
     */
    public static CaseHistory of(List<Entry> entries) {
        if (entries.isEmpty() || !(entries.get(0).change() instanceof Opened opened)) {
            throw new CaseRefused(
                    "history: it does not begin with the opening of a case", "bring back the first entry");
        }
        CaseSheet sheet = new CaseSheet(opened.id());
        for (int i = 0; i < entries.size(); i++) {
            apply(entries.get(i).change(), sheet, entries.get(i).stamp(), i == 0);
        }
        return new CaseHistory(entries, sheet.toCaseFile());
    }

    /** The history with these changes after it, each told what stood before it; all of them or, if refused, none. */
    public CaseHistory with(List<? extends Change> changes, Stamp stamp) {
        CaseSheet sheet = new CaseSheet(present);
        List<Entry> longer = new ArrayList<>(entries);
        for (Change change : changes) {
            Change told = change.against(sheet);
            apply(told, sheet, stamp, false);
            Entry last = longer.get(longer.size() - 1);
            longer.add(Entry.after(last.number(), last.hash(), stamp, told));
        }
        return new CaseHistory(longer, sheet.toCaseFile());
    }

    public CaseHistory with(Change change, Stamp stamp) {
        return with(List.of(change), stamp);
    }

    private static void apply(Change change, CaseSheet sheet, Stamp stamp, boolean first) {
        if (change instanceof Opened && !first) {
            throw new CaseRefused("case '" + sheet.id() + "' is already open", "change it instead");
        }
        boolean correction = change instanceof CorrectedAfterSignOff;
        if (sheet.signedOff().isPresent() && !correction) {
            throw new CaseRefused(
                    "case '" + sheet.id() + "' was signed off by "
                            + sheet.signedOff().get().who(),
                    "enter a correction with its reason");
        }
        if (sheet.signedOff().isEmpty() && correction) {
            throw new CaseRefused("case '" + sheet.id() + "' is not signed off", "change it without a reason");
        }
        change.applyTo(sheet, stamp);
    }

    public CaseId id() {
        return present.id();
    }

    /** The entries, oldest first, never none. */
    public List<Entry> entries() {
        return entries;
    }

    public Entry last() {
        return entries.get(entries.size() - 1);
    }

    /** Whether this very entry is one of them. */
    public boolean contains(Entry entry) {
        int index = (int) entry.number() - 1;
        return index < entries.size() && entries.get(index).equals(entry);
    }

    /** The case as it stands after the last entry. */
    public CaseFile present() {
        return present;
    }

    /** Whether every entry is as it was written and follows from the one before it, and nothing else was found amiss. */
    public ChainCheck verify() {
        String before = CanonicalText.NO_HASH;
        long expected = 1;
        for (Entry entry : entries) {
            if (entry.number() != expected) {
                return new ChainCheck.Broken(
                        expected,
                        "entry " + expected + " is missing; entry " + entry.number() + " stands in its place");
            }
            if (!entry.previousHash().equals(before)) {
                return new ChainCheck.Broken(expected, "entry " + expected + " does not follow from the one before it");
            }
            if (!entry.isTrue()) {
                return new ChainCheck.Broken(expected, "entry " + expected + " is not as it was written");
            }
            before = entry.hash();
            expected++;
        }
        return found.<ChainCheck>map(broken -> broken).orElseGet(() -> new ChainCheck.Intact(entries.size()));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof CaseHistory that && entries.equals(that.entries);
    }

    @Override
    public int hashCode() {
        return entries.hashCode();
    }

    @Override
    public String toString() {
        return "history of case '" + id() + "', " + entries.size() + " entries";
    }
}
