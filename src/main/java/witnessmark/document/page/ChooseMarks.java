package witnessmark.document.page;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import witnessmark.casefile.FindingState;
import witnessmark.diagnosis.EvidenceMatrix;
import witnessmark.diagnosis.NextCheck;
import witnessmark.document.Dossier;
import witnessmark.document.drawing.DrawGearbox;
import witnessmark.document.drawing.GearboxPlan;
import witnessmark.document.drawing.Mark;
import witnessmark.gearbox.EnumWord;
import witnessmark.knowledge.Finding;
import witnessmark.language.Texts;

/** Chooses the parts to be marked in the drawing: numbers for what was found, letters for what to look at next. */
final class ChooseMarks {
    private static final int MOST_NEXT = 8;

    private final Dossier dossier;
    private final GearboxPlan plan;

    ChooseMarks(Dossier dossier) {
        this.dossier = dossier;
        this.plan =
                new GearboxPlan(dossier.file().gearbox(), dossier.knowledge().parts());
    }

    /** The drawing of the case's gearbox with the marks in it. */
    String drawn(List<Mark> marks) {
        return DrawGearbox.draw(plan, marks, dossier.texts());
    }

    /** The parts on which something was found, or may have been. */
    List<Mark> found() {
        Map<String, List<String>> present = new LinkedHashMap<>();
        Map<String, List<String>> unsure = new LinkedHashMap<>();
        for (EvidenceMatrix.Row row : dossier.matrix().rows()) {
            Map<String, List<String>> into = row.state() == FindingState.PRESENT ? present : unsure;
            if (row.state() != FindingState.ABSENT && !known(row.finding()).inOrder()) {
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
            if (!marked && marks.size() < MOST_NEXT && plan.shows(part)) {
                marks.add(mark(String.valueOf((char) ('A' + marks.size())), part, Mark.Kind.LOOK_NEXT, texts));
            }
        });
        return marks;
    }

    private void add(List<Mark> marks, String part, Mark.Kind kind, List<String> texts) {
        if (plan.shows(part)) {
            marks.add(mark(String.valueOf(marks.size() + 1), part, kind, texts));
        }
    }

    private Mark mark(String label, String part, Mark.Kind kind, List<String> texts) {
        Texts words = dossier.texts();
        String name = dossier.knowledge().parts().get(part).in(dossier.language());
        return new Mark(label, part, name, kind, words.text("mark." + EnumWord.of(kind)), texts);
    }

    private String part(String finding) {
        return known(finding).part();
    }

    private Finding known(String finding) {
        return dossier.knowledge().findings().get(finding);
    }
}
