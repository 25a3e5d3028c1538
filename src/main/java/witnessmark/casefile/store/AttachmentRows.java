package witnessmark.casefile.store;

import java.util.List;
import java.util.Optional;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.DamagedFile.Fault;

/** The bytes of attachments in a table of the shared database, which lets none be kept under a hash not its own. */
final class AttachmentRows implements AttachmentBytes {
    private final Session session;
    private final String where;

    AttachmentRows(Session session, String where) {
        this.session = session;
        this.where = where;
    }

    @Override
    public void keep(CaseId id, String sha256, byte[] bytes) {
        session.writeTables(sql -> sql.update(
                "insert into case_attachment (case_id, sha256, bytes) values (?, ?, ?)"
                        + " on conflict (case_id, sha256) do update set bytes = excluded.bytes",
                id.text(),
                sha256,
                bytes));
    }

    @Override
    public Optional<byte[]> kept(CaseId id, Attachment attachment) {
        return session
                .read(sql -> sql.query(
                        "select bytes from case_attachment where case_id = ? and sha256 = ?",
                        (row, n) -> row.getBytes(1),
                        id.text(),
                        attachment.sha256()))
                .stream()
                .findFirst();
    }

    /** Asked of the server, so that a look at many cases does not bring all their pictures over the line. */
    @Override
    public Optional<Fault> fault(CaseId id, Attachment attachment) {
        List<Boolean> same = session.read(sql -> sql.queryForList(
                "select octet_length(bytes) = ? and encode(sha256(bytes), 'hex') = ? from case_attachment"
                        + " where case_id = ? and sha256 = ?",
                Boolean.class,
                attachment.size(),
                attachment.sha256(),
                id.text(),
                attachment.sha256()));
        if (same.isEmpty()) {
            return Optional.of(Fault.MISSING);
        }
        return same.get(0) ? Optional.empty() : Optional.of(Fault.CHANGED);
    }

    @Override
    public String where(CaseId id, Attachment attachment) {
        return where;
    }
}
