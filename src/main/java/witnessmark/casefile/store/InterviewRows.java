package witnessmark.casefile.store;

import java.util.Optional;
import java.util.function.BiConsumer;
import witnessmark.casefile.CaseId;

/** The places of interviews in a table of the shared database. */
final class InterviewRows implements InterviewPlaces {
    private final Session session;

    InterviewRows(Session session) {
        this.session = session;
    }

    @Override
    public Optional<String> read(CaseId id) {
        return session.read(sql ->
                sql.queryForList("select place from case_interview where case_id = ?", String.class, id.text()).stream()
                        .findFirst());
    }

    @Override
    public void keep(CaseId id, String place) {
        session.writeTables(sql -> sql.update(
                "insert into case_interview (case_id, place) values (?, ?)"
                        + " on conflict (case_id) do update set place = excluded.place",
                id.text(),
                place));
    }

    @Override
    public void each(BiConsumer<CaseId, String> use) {
        session.read(sql -> sql.query("select case_id, place from case_interview order by case_id", (row, n) ->
                        new String[] {row.getString(1), row.getString(2)}))
                .forEach(row -> use.accept(new CaseId(row[0]), row[1]));
    }
}
