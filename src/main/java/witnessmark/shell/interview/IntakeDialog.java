package witnessmark.shell.interview;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import witnessmark.casefile.CaseRefused;
import witnessmark.interview.Complaints;
import witnessmark.interview.Interview;
import witnessmark.interview.Stage;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.search.FindWords;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.Texts;

/** Asks for truck, gearbox and complaint, and has the words of the complaint matched to findings and confirmed. */
final class IntakeDialog {
    private static final String NOT_KNOWN = "p|pass|s|skip|u|unsure|n/a|not known|unknown|no idea|dunno|don'?t know";

    private final Interview interview;
    private final KnowledgeBase knowledge;
    private final FindWords search;
    private final Asker asker;
    private final Page page;
    private final Texts wording;

    IntakeDialog(
            Interview interview, KnowledgeBase knowledge, FindWords search, Asker asker, Page page, Texts wording) {
        this.interview = interview;
        this.knowledge = knowledge;
        this.search = search;
        this.asker = asker;
        this.page = page;
        this.wording = wording;
    }

    /** Asks the question of the stage; false if whoever answers has gone. */
    boolean ask() {
        Stage stage = interview.stage();
        String key = stage.name().toLowerCase(Locale.ROOT).replace('_', '-');
        page.blank();
        page.line(wording.text("intake." + key));
        List<String> choices = stage.choices();
        for (int i = 0; i < choices.size(); i++) {
            page.indented("  " + (i + 1) + "  ", "     ", wording.text("choice." + key + "." + choices.get(i)));
        }
        Optional<String> answer = asker.ask("intake." + key, "> ", choices);
        if (answer.isEmpty() || answer.get().strip().matches("q|stop|quit")) {
            return false;
        }
        try {
            return take(stage, chosen(answer.get().strip(), choices));
        } catch (CaseRefused e) {
            asker.refused(e.getMessage());
            return true;
        }
    }

    private boolean take(Stage stage, String said) {
        switch (said.toLowerCase(Locale.ROOT)) {
            case "b", "back" -> page.line(wording.text(interview.back() ? "back" : "back.none"));
            case "?", "help", "v", "where", "stand" -> note("intake.help");
            case "w", "why" -> note(stage.isOfTheGearbox() ? "intake.why-parts" : "intake.why");
            default -> {
                return tell(stage, said.toLowerCase(Locale.ROOT).matches(NOT_KNOWN) ? "" : said);
            }
        }
        return true;
    }

    private void note(String key) {
        page.indented("  ", "  ", wording.text(key));
    }

    private boolean tell(Stage stage, String answer) {
        if (stage != Stage.COMPLAINT) {
            interview.tell(answer);
            return true;
        }
        boolean wantsList = answer.isEmpty() || answer.equals("list");
        Complaints complaints =
                new Complaints(knowledge, search, interview.present().gearbox());
        List<String> meantBy = wantsList ? List.of() : complaints.meantBy(answer);
        if (!wantsList && meantBy.isEmpty()) {
            page.line(wording.text("meant.none"));
        }
        Optional<List<String>> meant = confirmed(meantBy.isEmpty() ? complaints.usual() : meantBy, meantBy.isEmpty());
        meant.ifPresent(findings -> interview.tell(wantsList ? said(findings) : answer, findings));
        return meant.isPresent();
    }

    private String said(List<String> findings) {
        return String.join(
                ". ",
                findings.stream().map(f -> knowledge.findings().get(f).title()).toList());
    }

    /** The number of a choice stands for the choice. */
    private static String chosen(String answer, List<String> choices) {
        if (!choices.isEmpty()
                && answer.matches("\\d")
                && Integer.parseInt(answer) >= 1
                && Integer.parseInt(answer) <= choices.size()) {
            return choices.get(Integer.parseInt(answer) - 1);
        }
        return answer;
    }

    /** Has the technician pick from a list; empty if he has gone. */
    private Optional<List<String>> confirmed(List<String> candidates, boolean fromList) {
        if (candidates.isEmpty()) {
            page.line(wording.text("meant.none"));
            return Optional.of(List.of());
        }
        page.line(wording.text(fromList ? "meant.list" : "meant"));
        for (int i = 0; i < candidates.size(); i++) {
            Finding f = knowledge.findings().get(candidates.get(i));
            page.indented(String.format("%3d  ", i + 1), "     ", f.title() + ". " + f.ask());
        }
        while (true) {
            Optional<String> answer = asker.ask("intake.meant", wording.text("meant.prompt") + " ", List.of("none"));
            if (answer.isEmpty()) {
                return Optional.empty();
            }
            try {
                return Optional.of(picked(answer.get(), candidates));
            } catch (CaseRefused e) {
                asker.refused(e.getMessage());
            }
        }
    }

    private static List<String> picked(String answer, List<String> candidates) {
        Set<String> picked = new LinkedHashSet<>();
        for (String word : answer.strip().split("[ ,]+")) {
            if (word.isEmpty() || word.equals("none") || word.equals("0")) {
                continue;
            }
            if (!word.matches("\\d{1,2}") || Integer.parseInt(word) < 1 || Integer.parseInt(word) > candidates.size()) {
                throw new CaseRefused(
                        "'" + word + "' is not on the list",
                        "give numbers from 1 to " + candidates.size() + " with blanks between, or Enter for none");
            }
            picked.add(candidates.get(Integer.parseInt(word) - 1));
        }
        return List.copyOf(picked);
    }
}
