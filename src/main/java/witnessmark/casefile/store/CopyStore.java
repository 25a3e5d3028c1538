package witnessmark.casefile.store;

import java.util.List;
import java.util.function.BiConsumer;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.history.AttachmentAdded;
import witnessmark.casefile.history.Change;
import witnessmark.casefile.history.CorrectedAfterSignOff;

/**
 * Copies a store to another, heap by heap in the order of keeping, each heap in one transaction, so that a copy cut off at
 * any place is carried on by the same copy.
 */
final class CopyStore {
    private static final long BETWEEN_TELLING = 5_000_000_000L;

    private final CaseStore from;
    private final CaseStore to;
    private final BiConsumer<Long, Long> told;
    private long files;

    CopyStore(CaseStore from, CaseStore to, BiConsumer<Long, Long> told) {
        this.from = from;
        this.to = to;
        this.told = told;
    }

    Copied copy() {
        StoreCheck before = from.verifyStore();
        if (!before.broken().isEmpty() || !before.lines().isEmpty()) {
            throw new StoreUnavailable(
                    from.session().shown(),
                    "it is not whole and is not copied: " + firstAmiss(before),
                    "see all with: case verify --all; bring it back from a copy");
        }
        StoreHead begun = to.head();
        refuseStranger(begun);
        StoreHead end = copyLines(begun);
        copyFilesLeft(begun);
        from.interviews().each(to.interviews()::keep);
        StoreCheck after = to.verifyStore();
        if (!after.broken().isEmpty()
                || !after.lines().isEmpty()
                || !after.head().equals(end)
                || after.files().keySet().stream()
                        .anyMatch(id -> !before.files().containsKey(id))) {
            throw new StoreUnavailable(
                    to.session().shown(),
                    "it does not hold what was copied: " + firstAmiss(after),
                    "let nobody work in either store meanwhile; if it stays so, check the disk");
        }
        return new Copied(end.lines() - begun.lines(), files, after, before.files());
    }

    private static String firstAmiss(StoreCheck check) {
        return check.lines().stream()
                .findFirst()
                .or(() -> check.broken().entrySet().stream()
                        .findFirst()
                        .map(e -> "case '" + e.getKey() + "': " + e.getValue().why()))
                .or(() -> check.files().entrySet().stream()
                        .findFirst()
                        .map(e -> "case '" + e.getKey() + "': " + e.getValue().get(0)))
                .orElse("it ends with entry " + check.head().lines() + " of all");
    }

    private void refuseStranger(StoreHead end) {
        boolean known = from.session().read(sql -> new StoreLines(sql).holds(end));
        if (!known) {
            throw new StoreUnavailable(
                    to.session().shown(),
                    "it holds entries that " + from.session().shown() + " does not: it ends with entry " + end.lines()
                            + " of all, hash " + end.hash(),
                    "copy to an empty store, or to one that was copied from this one and not worked in since");
        }
    }

    private StoreHead copyLines(StoreHead begun) {
        StoreHead at = begun;
        long next = System.nanoTime() + BETWEEN_TELLING;
        for (List<StoreLine> heap = after(at); !heap.isEmpty(); heap = after(at)) {
            heap.forEach(this::copyFile);
            to.session().takeOver(from.session().shown(), at, heap);
            StoreLine last = heap.get(heap.size() - 1);
            at = new StoreHead(last.number(), last.hash());
            if (System.nanoTime() > next) {
                told.accept(at.lines(), from.head().lines());
                next = System.nanoTime() + BETWEEN_TELLING;
            }
        }
        return at;
    }

    private List<StoreLine> after(StoreHead at) {
        return from.session().read(sql -> new StoreLines(sql).after(at));
    }

    /** The bytes come first, so that no copied entry names a file that is not there. */
    private void copyFile(StoreLine line) {
        Change change = line.row().entry().change();
        if (change instanceof CorrectedAfterSignOff correction) {
            change = correction.change();
        }
        if (change instanceof AttachmentAdded added) {
            copyFile(new CaseId(line.caseId()), added.attachment());
        }
    }

    private void copyFile(CaseId id, Attachment attachment) {
        if (from.attachments().fault(id, attachment).isEmpty()
                && to.attachments().fault(id, attachment).isPresent()) {
            to.attachments().keep(id, attachment.sha256(), from.attachments().read(id, attachment));
            files++;
        }
    }

    /** Files of entries that an earlier copy has taken over, which were missing then and are there again. */
    private void copyFilesLeft(StoreHead begun) {
        if (begun.lines() > 0) {
            to.eachCase(id -> to.read(id).present().attachments().forEach(file -> copyFile(id, file)));
        }
    }
}
