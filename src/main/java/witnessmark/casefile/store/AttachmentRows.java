package witnessmark.casefile.store;

import java.util.List;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CaseId;

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
    public byte[] read(CaseId id, Attachment attachment) {
        List<byte[]> kept = session.read(sql -> sql.query(
                "select bytes from case_attachment where case_id = ? and sha256 = ?",
                (row, n) -> row.getBytes(1),
                id.text(),
                attachment.sha256()));
        if (kept.isEmpty()) {
            throw AttachmentBytes.damaged(where, attachment, "is missing");
        }
        if (!AttachmentBytes.areOf(attachment, kept.get(0))) {
            throw AttachmentBytes.damaged(where, attachment, "is not as it was put in");
        }
        return kept.get(0);
    }

    @Override
    public boolean hasSome(CaseId id, Attachment attachment) {
        return !session.read(sql -> sql.queryForList(
                        "select case_id from case_attachment where case_id = ? and sha256 = ?",
                        String.class,
                        id.text(),
                        attachment.sha256()))
                .isEmpty();
    }
}
