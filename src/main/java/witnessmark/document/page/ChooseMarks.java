package witnessmark.document.page;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import witnessmark.casefile.FindingState;
import witnessmark.diagnosis.EvidenceMatrix;
import witnessmark.diagnosis.NextCheck;
import witnessmark.document.Dossier;
import witnessmark.document.drawing.DrawGearbox;
import witnessmark.document.drawing.Mark;
import witnessmark.gearbox.Word;
import witnessmark.language.Texts;

/** Chooses the parts to be marked in the drawing: numbers for what was found, letters for what to look at next. */
final class ChooseMarks {
    private static final int MOST_NEXT = 8;
    /** Findings that say a part is in order; marking it as a place of damage would mislead. */
    private static final Pattern SOUND = Pattern.compile("\\b(sound|good|clean)\\b");

    private final Dossier dossier;

    ChooseMarks(Dossier dossier) {
        this.dossier = dossier;
    }

    /** The parts on which something was found, or may have been. */
    List<Mark> found() {
        Map<String, List<String>> present = new LinkedHashMap<>();
        Map<String, List<String>> unsure = new LinkedHashMap<>();
        for (EvidenceMatrix.Row row : dossier.matrix().rows()) {
            Map<String, List<String>> into = row.state() == FindingState.PRESENT ? present : unsure;
            if (row.state() != FindingState.ABSENT
                    && !SOUND.matcher(row.finding()).find()) {
                into.computeIfAbsent(part(row.finding()), p -> new ArrayList<>())
                        .add(row.title());
            }
        }
        List<Mark> marks = new ArrayList<>();
        present.forEach((part, texts) -> add(marks, part, Mark.Kind.FOUND, texts));
        unsure.keySet().removeAll(present.keySet());
        unsure.forEach((part, texts) -> add(marks, part, Mark.Kind.UNSURE, texts));
        return marks;
    }

    /** The parts to look at next, those already marked left out. */
    List<Mark> next(List<NextCheck> checks, List<Mark> found) {
        Map<String, List<String>> parts = new LinkedHashMap<>();
        for (NextCheck check : checks) {
            parts.computeIfAbsent(part(check.finding()), p -> new ArrayList<>()).add(check.title());
        }
        List<Mark> marks = new ArrayList<>();
        parts.forEach((part, texts) -> {
            boolean marked = found.stream().anyMatch(m -> m.part().equals(part));
            if (!marked
                    && marks.size() < MOST_NEXT
                    && DrawGearbox.shows(dossier.file().gearbox(), part)) {
                marks.add(mark(String.valueOf((char) ('A' + marks.size())), part, Mark.Kind.LOOK_NEXT, texts));
            }
        });
        return marks;
    }

    private void add(List<Mark> marks, String part, Mark.Kind kind, List<String> texts) {
        if (DrawGearbox.shows(dossier.file().gearbox(), part)) {
            marks.add(mark(String.valueOf(marks.size() + 1), part, kind, texts));
        }
    }

    private Mark mark(String label, String part, Mark.Kind kind, List<String> texts) {
        Texts words = dossier.texts();
        return new Mark(label, part, words.text("part." + part), kind, words.text("mark." + Word.of(kind)), texts);
    }

    private String part(String finding) {
        return dossier.knowledge().findings().get(finding).part();
    }
}
