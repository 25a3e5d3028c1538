package witnessmark.shell.cases;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.ChainCheck;
import witnessmark.casefile.history.ClockDoubts;
import witnessmark.casefile.history.HeadMark;
import witnessmark.casefile.history.SignedHead;
import witnessmark.casefile.store.CaseStore;
import witnessmark.casefile.store.StoreCheck;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.Refused;
import witnessmark.shell.run.GivenFile;

/** Says whether cases lie in the store as they were written, and what that does not prove. */
final class VerifyText {
    private static final String OUTSIDE =
            "Whoever can write to all files of the store could have made them anew. Only a"
                    + " number and hash noted outside, on paper or with somebody else, shows that: note these, or check a"
                    + " printed document with --head.";

    private static final int LARGEST_HEAD = 10_000;

    private final CaseStore store;
    private final Page page;

    VerifyText(CaseStore store, Page page) {
        this.store = store;
        this.page = page;
    }

    /** The case, or the whole store; {@link Refused} with a line for each thing amiss. */
    void print(@Nullable CaseId id, String head) {
        if (id == null) {
            all();
        } else {
            if (!head.isEmpty()) {
                noted(id, head);
            }
            one(id);
        }
        if (!head.isEmpty()) {
            page.line("The entry that was noted stands as it was"
                    + signed(head)
                            .map(s -> ", signed with key " + s.fingerprint()
                                    + "; compare it with the one the shop gave you")
                            .orElse("")
                    + ".");
        }
        page.line(OUTSIDE);
        page.flush();
    }

    private void one(CaseId id) {
        ChainCheck check = store.verify(id);
        if (check instanceof ChainCheck.Broken cut) {
            throw new Refused(broken(id, cut));
        }
        List<String> files = store.verifyFiles(id);
        if (!files.isEmpty()) {
            throw new Refused(String.join("\n", damaged(id, files)));
        }
        CaseHistory history = store.read(id);
        int attachments = history.present().attachments().size();
        page.line("Case " + id + ": the chain of " + number(history.entries().size(), "entry", "entries") + " is whole"
                + (attachments == 0 ? "" : ", " + number(attachments, "file", "files") + " as put in")
                + "; it ends with entry " + history.last().number() + ", hash "
                + history.last().hash() + ".");
        ClockDoubts.of(history).forEach(page::line);
    }

    /** What was noted outside tells a store replaced by an older copy, which is whole in itself. */
    private void noted(CaseId id, String head) {
        HeadMark mark = signed(head)
                .map(SignedHead::mark)
                .or(() -> HeadMark.parse(head))
                .orElseThrow(
                        () -> new Refused(
                                "--head '" + head + "' is not the end of a chain",
                                "it reads"
                                        + " witnessmark:CASE:NUMBER:HASH and stands at the foot of every document of the case"));
        CaseHistory history = store.read(id);
        if (!mark.isIn(history)) {
            throw new Refused(
                    "case " + id + ": it does not hold the entry that was noted, entry " + mark.entry() + " of case "
                            + mark.id(),
                    "it ends with entry " + history.last().number()
                            + ". It was cut, changed or replaced by an older copy; bring back the"
                            + " store in which that entry stands");
        }
    }

    /** What a file that {@code case head} wrote says, its signature checked; empty where no such file is meant. */
    private static Optional<SignedHead> signed(String head) {
        if (!head.startsWith("witnessmark:")) {
            String text = new String(GivenFile.read(Path.of(head), LARGEST_HEAD), StandardCharsets.UTF_8);
            Optional<SignedHead> signed = SignedHead.parse(text);
            if (signed.isEmpty() && HeadMark.parse(text).isPresent()) {
                throw new Refused("'" + head + "' is not signed", "give its text to --head itself");
            }
            signed.filter(s -> !s.isTrue()).ifPresent(s -> {
                throw new Refused(
                        "'" + head + "': the signature is not that of key " + s.fingerprint(),
                        "it was changed, get it anew from the shop that signed");
            });
            return signed;
        }
        return Optional.empty();
    }

    private void all() {
        StoreCheck check = store.verifyStore();
        if (!check.isWhole()) {
            List<String> amiss = new ArrayList<>(check.lines());
            check.broken().forEach((id, cut) -> amiss.add(broken(id, cut)));
            check.files().forEach((id, files) -> amiss.addAll(damaged(id, files)));
            throw new Refused(String.join("\n", amiss));
        }
        page.line("Every case's chain of entries is whole: " + number(check.cases(), "case", "cases") + ", "
                + number(check.head().lines(), "entry", "entries") + ", "
                + number(check.attachments(), "file", "files") + " as put in. The store ends with entry "
                + check.head().lines() + ", hash "
                + check.head().hash() + ".");
    }

    private static String number(long count, String one, String several) {
        return count + " " + (count == 1 ? one : several);
    }

    private static String broken(CaseId id, ChainCheck.Broken cut) {
        return "case " + id + ": the chain breaks at entry " + cut.number() + ": " + cut.why()
                + "; it was changed outside the program, keep the store as it is and restore a copy";
    }

    private static List<String> damaged(CaseId id, List<String> files) {
        return files.stream()
                .map(file -> "case " + id + ": " + file + "; put the same file in again")
                .toList();
    }
}
