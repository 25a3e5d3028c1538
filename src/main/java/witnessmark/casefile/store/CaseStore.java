package witnessmark.casefile.store;

import java.time.Clock;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseRefused;
import witnessmark.casefile.DamagedFile;
import witnessmark.casefile.history.AttachmentAdded;
import witnessmark.casefile.history.CanonicalText;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.ChainCheck;
import witnessmark.casefile.history.Change;
import witnessmark.casefile.history.NoteAdded;
import witnessmark.casefile.history.Opened;
import witnessmark.casefile.history.SignedOff;
import witnessmark.casefile.history.Stamp;
import witnessmark.casefile.yaml.CaseDocument;

/**
 * Cases kept on disk. What a method has returned from is written and synced; several shells may use one store at once.
 *
 * <p>The database is opened at first use. Every method throws {@link StoreUnavailable} if it cannot be used, and
 * {@link CaseRefused} for a case that is not there, or a change that the case does not take.
 */
public final class CaseStore implements AutoCloseable {
    /** Version of the tables that this program writes in a folder. */
    public static final int SCHEMA = Schema.VERSION;

    /** The same on a server that several shops share. */
    public static final int SHARED_SCHEMA = Schema.SHARED_VERSION;

    private static final int LARGEST_ATTACHMENT = 50_000_000;

    private final StoreLocation location;
    private final Clock clock;
    private final Session session;
    private final AttachmentBytes attachments;
    private final InterviewPlaces interviews;
    private final Histories histories;

    /** A store at the location; nothing is opened or made yet. */
    public CaseStore(StoreLocation location, Clock clock) {
        this(location, clock, new Disk());
    }

    CaseStore(StoreLocation location, Clock clock, Disk disk) {
        this.location = location;
        this.clock = clock;
        this.session = new Session(location, disk);
        this.attachments = location.folder()
                .<AttachmentBytes>map(AttachmentFolder::new)
                .orElseGet(() -> new AttachmentRows(session, location.shown()));
        this.interviews = location.folder()
                .<InterviewPlaces>map(InterviewFolder::new)
                .orElseGet(() -> new InterviewRows(session));
        this.histories = new Histories(location);
    }

    /** Opens a new case; refused if there is one of that id. */
    public CaseHistory open(Opened opened, String who) {
        CaseHistory history = CaseHistory.open(opened, stamp(who));
        put(List.of(history));
        return history;
    }

    /**
     * Keeps a case from outside: with its own history if it has one, else as entered now.
     * Refused if there is one of that id: see {@link #importAs}.
     */
    public CaseHistory importCase(CaseDocument document, String who) {
        return importAll(List.of(document), who).get(0);
    }

    /**
     * Keeps a case from outside with the bytes of its files. The bytes come first: should it end in the middle, the same
     * import can be made again. A case that is there already with the same last entry only gets the files it lacks.
     *
     * @param contents bytes by SHA-256; files of the case that are not among them stay missing
     */
    public CaseHistory importCase(CaseDocument document, Map<String, byte[]> contents, String who) {
        CaseHistory history = document.history().orElseGet(() -> CaseHistory.leadingTo(document.present(), stamp(who)));
        return putWithFiles(history, contents);
    }

    private CaseHistory putWithFiles(CaseHistory history, Map<String, byte[]> contents) {
        Optional<CaseRows.Head> there = session.read(sql -> new CaseRows(sql).head(history.id()));
        boolean same = there.isPresent()
                && there.get().lastHash().equals(history.last().hash());
        if (there.isPresent() && !same) {
            throw alreadyThere(history);
        }
        history.present().attachments().forEach(attachment -> {
            byte[] bytes = contents.get(attachment.sha256());
            if (bytes != null) {
                attachments.keep(history.id(), attachment.sha256(), bounded(attachment.name(), bytes));
            }
        });
        if (!same) {
            put(List.of(history));
        }
        return history;
    }

    private static CaseRefused alreadyThere(CaseHistory history) {
        return new CaseRefused("case '" + history.id() + "' is in the store already", "give it another id");
    }

    /** Keeps many new cases in one transaction: all of them or, if one is refused, none. */
    public List<CaseHistory> importAll(List<CaseDocument> documents, String who) {
        Stamp stamp = stamp(who);
        List<CaseHistory> all = documents.stream()
                .map(d -> d.history().orElseGet(() -> CaseHistory.leadingTo(d.present(), stamp)))
                .toList();
        put(all);
        return all;
    }

    /** Keeps a case from outside under another id, as entered now, with a note of where it came from. */
    public CaseHistory importAs(CaseId id, CaseDocument document, String who) {
        return importAs(id, document, Map.of(), who);
    }

    /** The same with the bytes of its files, by SHA-256; the bytes come first. */
    public CaseHistory importAs(CaseId id, CaseDocument document, Map<String, byte[]> contents, String who) {
        CaseFile present = document.present();
        String entry = document.history()
                .map(h -> ", entry " + h.last().number() + ", hash " + h.last().hash())
                .orElse("");
        NoteAdded origin = new NoteAdded("Taken over from case '" + present.id() + "'" + entry);
        CaseHistory history = CaseHistory.leadingTo(present.as(id), stamp(who)).with(origin, stamp(who));
        return putWithFiles(history, contents);
    }

    private void put(List<CaseHistory> all) {
        AtomicBoolean again = new AtomicBoolean();
        session.write(rows -> {
            boolean mayBeOurs = again.getAndSet(true);
            List<CaseHistory> missing = new ArrayList<>();
            for (CaseHistory history : all) {
                Optional<CaseRows.Head> head = rows.head(history.id());
                if (head.isEmpty()) {
                    missing.add(history);
                } else if (!mayBeOurs
                        || !head.get().lastHash().equals(history.last().hash())) {
                    throw alreadyThere(history);
                }
            }
            rows.insertAll(missing);
            return missing.size();
        });
    }

    /** Adds a change to the case as it stands, whoever changed it meanwhile. */
    public CaseHistory append(CaseId id, Change change, String who) {
        return appendAll(id, List.of(change), who);
    }

    /** Adds changes to the case as it stands: all of them or, if one is refused, none. */
    public CaseHistory appendAll(CaseId id, List<? extends Change> changes, String who) {
        return append(id, changes, who, now -> {});
    }

    /** Adds changes only if nobody has changed the case since it was read; {@link CaseChangedMeanwhile} otherwise. */
    public CaseHistory appendAfter(CaseHistory seen, List<? extends Change> changes, String who) {
        return append(seen.id(), changes, who, now -> {
            if (!now.last().equals(seen.last())) {
                throw new CaseChangedMeanwhile(
                        seen.id(), seen.last().number(), now.last().number());
            }
        });
    }

    private CaseHistory append(CaseId id, List<? extends Change> changes, String who, Consumer<CaseHistory> allowed) {
        refuseUnfit(read(id), changes);
        Stamp stamp = stamp(who);
        AtomicReference<@Nullable CaseHistory> tried = new AtomicReference<>();
        return session.write(rows -> {
            CaseRows.Head head = Histories.known(id, rows.lockedHead(id));
            CaseHistory now = histories.read(rows, id, head);
            CaseHistory before = tried.get();
            if (before != null && now.contains(before.last())) {
                return now;
            }
            refuseBroken(now);
            allowed.accept(now);
            CaseHistory next = now.with(changes, stamp);
            tried.set(next);
            rows.extend(head, next);
            return histories.remember(next);
        });
    }

    /** Nobody signs for photographs that are not there, or not those that were put in. */
    private void refuseUnfit(CaseHistory now, List<? extends Change> changes) {
        List<DamagedFile> damaged =
                changes.stream().anyMatch(SignedOff.class::isInstance) ? damagedFiles(now) : List.of();
        if (!damaged.isEmpty()) {
            throw new CaseRefused(
                    "case '" + now.id() + "' is not signed off while its files are not as they were put in: "
                            + DamagedFile.sentence(damaged),
                    DamagedFile.mend(now.id()));
        }
    }

    /** What is added to a broken chain would look as good as what was there before. */
    private static void refuseBroken(CaseHistory now) {
        if (now.verify() instanceof ChainCheck.Broken broken) {
            throw new CaseRefused(
                    "case '" + now.id() + "': the chain of entries is broken at entry " + broken.number() + ": "
                            + broken.why(),
                    "bring the store back from a copy, or carry on in a new case with: case fork " + now.id()
                            + " NEW-ID --reason TEXT");
        }
    }

    /**
     * The case for those who only look at it: as {@link #read}, but where the chain is broken the entries as they are
     * kept, and {@link CaseHistory#verify} says where it is; it knows which of its files are damaged.
     * {@link StoreUnavailable} if the entries do not come to a case.
     */
    public CaseHistory readToShow(CaseId id) {
        KeptCase kept = lookAtEntries(id);
        return withFiles(
                kept.chain() instanceof ChainCheck.Broken broken
                        ? readAsKept(id).foundBroken(broken)
                        : kept.history().orElseThrow());
    }

    /** The same case, looked over for files that are not kept as they were put in. */
    public CaseHistory withFiles(CaseHistory history) {
        return history.foundDamaged(damagedFiles(history));
    }

    /** The files of the case that are missing or not as they were put in; none if all are whole. */
    public List<DamagedFile> damagedFiles(CaseHistory history) {
        return history.present().attachments().stream()
                .flatMap(file ->
                        attachments.fault(history.id(), file).map(fault -> new DamagedFile(file, fault)).stream())
                .toList();
    }

    /** The entries as they are kept, true or not; for what is to be saved of a broken case. */
    public CaseHistory readAsKept(CaseId id) {
        return session.read(sql -> {
            CaseRows rows = new CaseRows(sql);
            return histories.readAsKept(rows, id, Histories.known(id, rows.head(id)));
        });
    }

    /**
     * Whether the entries kept of the case follow from one another and are all there; quicker than {@link #verify}, which
     * reads the journal whatever the tables say.
     */
    public ChainCheck verifyEntries(CaseId id) {
        return lookAtEntries(id).chain();
    }

    /** The same with the case, read once for both, and with the files of it that are damaged. */
    public KeptCase look(CaseId id) {
        KeptCase kept = lookAtEntries(id);
        return new KeptCase(kept.chain(), kept.history().map(this::withFiles));
    }

    private KeptCase lookAtEntries(CaseId id) {
        return sureOf(() -> lookNow(id));
    }

    private KeptCase lookNow(CaseId id) {
        return stillWhole(
                session.read(sql -> {
                    KeptCase kept = StoredChain.look(new CaseRows(sql), id);
                    kept.history().ifPresent(histories::remember);
                    return kept;
                }),
                this::lost);
    }

    /** The same, broken after its last entry where that is what shows. */
    private static KeptCase stillWhole(KeptCase kept, Function<CaseHistory, Optional<String>> shows) {
        return kept.history()
                .flatMap(now -> shows.apply(now)
                        .map(why -> new ChainCheck.Broken(now.entries().size() + 1L, why)))
                .map(KeptCase::broken)
                .orElse(kept);
    }

    /** The case with its history; {@link StoreUnavailable} if its entries are not all there, or not those once kept. */
    public CaseHistory read(CaseId id) {
        return readWhole(id)
                .orElseGet(() -> session.whileNobodyWrites(() -> {
                    CaseHistory again = readNow(id);
                    lost(again).ifPresent(why -> {
                        throw histories.lost(id, why);
                    });
                    return again;
                }));
    }

    /** Empty where another shell may have added between two looks at the tables, or something is lost. */
    private Optional<CaseHistory> readWhole(CaseId id) {
        try {
            return Optional.of(readNow(id)).filter(now -> lost(now).isEmpty());
        } catch (StoreUnavailable e) {
            return Optional.empty();
        }
    }

    private CaseHistory readNow(CaseId id) {
        return session.read(sql -> {
            CaseRows rows = new CaseRows(sql);
            CaseRows.Head head = Histories.known(id, rows.head(id));
            CaseHistory now = histories.read(rows, id, head);
            // A change would write these tables anew, and so take away what shows that somebody was at them.
            if (!rows.saysTheSame(head.caseNo(), now)) {
                throw histories.lost(id, StoredChain.TABLES_DIFFER);
            }
            return now;
        });
    }

    /**
     * What shows that the last entries of a case were taken away, or entries and their hashes written anew. The journal is
     * read only if the tables hold fewer entries than were numbered; a shared store is too large to count on each look.
     */
    private Optional<String> lost(CaseHistory now) {
        long unchained = session.read(sql -> new StoreLines(sql)
                .firstUnchained(
                        Histories.known(now.id(), new CaseRows(sql).head(now.id()))
                                .caseNo(),
                        now.id().text()));
        if (unchained > 0) {
            return Optional.of("entry " + unchained + " is not the one that was kept");
        }
        return hasGap()
                ? session.compareCase(now.id(), now.last().number(), now.last().hash())
                : Optional.empty();
    }

    private boolean hasGap() {
        return location.folder().isPresent() && !session.read(sql -> new StoreLines(sql).isWithoutGap());
    }

    /** What shows that a case which is not in the tables once was; empty if nothing does. */
    public Optional<String> takenOut(CaseId id) {
        return takenOutNow(id).flatMap(why -> session.whileNobodyWrites(() -> takenOutNow(id)));
    }

    private Optional<String> takenOutNow(CaseId id) {
        boolean there = session.read(sql -> new CaseRows(sql).head(id)).isPresent();
        return !there && hasGap() ? session.compareCase(id, 0, "") : Optional.empty();
    }

    /** The case as a document with its history, to be written to a file. */
    public CaseDocument export(CaseId id) {
        return CaseDocument.of(read(id));
    }

    /** The cases asked for, those opened last first; none if there are none. */
    public List<CaseSummary> list(CaseQuery query) {
        return session.read(sql -> new CaseSearch(sql).list(query));
    }

    /** How many cases the query finds, whatever its limit and offset. */
    public long count(CaseQuery query) {
        return session.read(sql -> new CaseSearch(sql).count(query));
    }

    /** The same, but no more than the most that are worth counting. */
    public long countUpTo(long most, CaseQuery query) {
        return session.read(sql -> new CaseSearch(sql).countUpTo(most, query));
    }

    /** Ids that begin so, in order, for completion. */
    public List<CaseId> ids(String prefix, int limit) {
        return session.read(sql -> new CaseSearch(sql).ids(prefix, limit));
    }

    /**
     * Whether the case lies in the store as it was written, read anew from the disk's tables, and as the journal has it.
     */
    public ChainCheck verify(CaseId id) {
        return sureOf(() -> verifiedNow(id)).chain();
    }

    /** What seems amiss may be what another shell added between two looks: then it is not while nobody may. */
    private KeptCase sureOf(Supplier<KeptCase> look) {
        KeptCase seen = look.get();
        return seen.history().isEmpty() ? session.whileNobodyWrites(look) : seen;
    }

    private KeptCase verifiedNow(CaseId id) {
        if (session.read(sql -> new CaseRows(sql).head(id)).isEmpty()) {
            Optional<String> journalled = session.compareCase(id, 0, "");
            if (journalled.isPresent()) {
                return KeptCase.broken(new ChainCheck.Broken(1, journalled.get()));
            }
        }
        return stillWhole(
                lookNow(id),
                now -> session.compareCase(id, now.entries().size(), now.last().hash()));
    }

    /** The files of the case that are missing or not as they were put in, a sentence each; none if all are whole. */
    public List<String> verifyFiles(CaseId id) {
        return damagedFiles(read(id)).stream()
                .map(damaged -> "attachment " + damaged.sentence())
                .toList();
    }

    /** Looks over the whole store: every case, its files, and the entries of all cases together. */
    public StoreCheck verifyStore() {
        Map<CaseId, ChainCheck.Broken> broken = verifyAll();
        Map<CaseId, List<String>> files = new LinkedHashMap<>();
        long[] count = new long[2];
        eachCase(id -> {
            count[0]++;
            if (!broken.containsKey(id)) {
                count[1] += read(id).present().attachments().size();
                List<String> amiss = verifyFiles(id);
                if (!amiss.isEmpty()) {
                    files.put(id, amiss);
                }
            }
        });
        List<String> lines = session.compareLines();
        return new StoreCheck(count[0], head(), count[1], broken, files, lines);
    }

    /** Where the chain over all entries of the store ends. */
    public StoreHead head() {
        return session.read(sql -> new StoreLines(sql).head().orElse(StoreHead.NONE));
    }

    /** Every case whose entries do not lie in the database as they were written; empty if all do. */
    public Map<CaseId, ChainCheck.Broken> verifyAll() {
        Map<CaseId, ChainCheck.Broken> broken = new LinkedHashMap<>();
        eachCase(id -> {
            if (verifyEntries(id) instanceof ChainCheck.Broken at) {
                broken.put(id, at);
            }
        });
        return broken;
    }

    void eachCase(Consumer<CaseId> use) {
        String last = "";
        List<CaseId> page;
        do {
            String after = last;
            page = session.read(sql -> new CaseSearch(sql).idsAfter(after, 500));
            page.forEach(use);
            last = page.isEmpty() ? last : page.get(page.size() - 1).text();
        } while (!page.isEmpty());
    }

    /**
     * Keeps the bytes of a file for the case and adds it, unless it is on the case already: then only its bytes are
     * brought back.
     */
    public Attachment attach(CaseId id, String name, String mediaType, byte[] bytes, String who) {
        Attachment attachment = keepBytes(id, name, mediaType, bytes);
        boolean there = read(id).present().attachments().stream()
                .anyMatch(a -> a.sha256().equals(attachment.sha256()));
        if (!there) {
            append(id, new AttachmentAdded(attachment), who);
        }
        return attachment;
    }

    /** Keeps the bytes without adding the attachment to the case, which is then for the caller to do. */
    public Attachment keepBytes(CaseId id, String name, String mediaType, byte[] bytes) {
        bounded(name, bytes);
        Attachment attachment = new Attachment(name, mediaType, CanonicalText.sha256(bytes), bytes.length);
        CaseId known = read(id).id();
        attachments.keep(known, attachment.sha256(), bytes);
        return attachment;
    }

    private static byte[] bounded(String name, byte[] bytes) {
        if (bytes.length > LARGEST_ATTACHMENT) {
            throw new CaseRefused(
                    "attachment '" + name + "': " + bytes.length + " bytes",
                    "keep it to " + LARGEST_ATTACHMENT + " at most");
        }
        return bytes;
    }

    /** The bytes as they were put in; {@link StoreUnavailable} if they are missing or not the same. */
    public byte[] readAttachment(CaseId id, Attachment attachment) {
        return attachments.read(id, attachment);
    }

    /** Where the interview of the case goes on, as it was last kept; empty if it was not. */
    public Optional<String> interviewPlace(CaseId id) {
        return interviews.read(id);
    }

    /** Keeps where the interview of the case goes on, beside the case; longer texts than 4,000 characters are refused. */
    public void keepInterviewPlace(CaseId id, String place) {
        if (place.length() > InterviewPlaces.LONGEST) {
            throw new CaseRefused(
                    "case '" + id + "': a place of the interview of " + place.length() + " characters",
                    "ask for the places that were skipped again, with: skipped");
        }
        interviews.keep(id, place);
    }

    /** Makes the database in the folder anew from the journal beside it; all shells must be closed. */
    public Rebuilt rebuild() {
        return session.rebuild();
    }

    /** Begins a new journal from the database as it is; the one that was there is kept aside. */
    public void beginJournal() {
        session.beginJournal();
    }

    /**
     * Makes or completes the tables, and gives the logins of a shared store their rights; {@link StoreUnavailable} for a
     * login that may not. A store in a folder needs it not: that is done when it is opened.
     */
    public void prepare() {
        session.prepare();
    }

    /** The login by which a shared store is reached: every entry made there bears its name. Empty for one in a folder. */
    public Optional<String> login() {
        return location.database().map(Database::user);
    }

    /**
     * Copies to another store every entry that it does not hold yet, with its number and hash, and the files of all
     * cases. The other must be empty, or end with an entry of this one, as after a copy that was cut off; nothing of it
     * is lost otherwise. Both are looked over, this one before and the other afterwards.
     *
     * @param told is told now and then how many entries are copied, of how many
     */
    public Copied copyTo(CaseStore other, BiConsumer<Long, Long> told) {
        return new CopyStore(this, other, told).copy();
    }

    Session session() {
        return session;
    }

    InterviewPlaces interviews() {
        return interviews;
    }

    AttachmentBytes attachments() {
        return attachments;
    }

    private Stamp stamp(String who) {
        return new Stamp(clock.instant(), login().orElse(who));
    }

    /** Closes the database; a later use opens it again. */
    @Override
    public void close() {
        session.close();
    }

    @Override
    public String toString() {
        return "case store " + location.shown();
    }
}
