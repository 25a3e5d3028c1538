package witnessmark.shell.interview;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import witnessmark.casefile.CaseRefused;
import witnessmark.casefile.FindingState;
import witnessmark.gearbox.Unit;
import witnessmark.interview.Complaints;
import witnessmark.interview.Interview;
import witnessmark.interview.NotAnAnswer;
import witnessmark.interview.Stage;
import witnessmark.jobcard.Proposal;
import witnessmark.jobcard.Sayer;
import witnessmark.jobcard.Sureness;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.Measure;
import witnessmark.language.Texts;
import witnessmark.shell.print.Page;
import witnessmark.yaml.Nearest;

/** Asks for truck, gearbox and complaint, and has the words of the complaint matched to findings and confirmed. */
final class IntakeDialog {
    private static final String NOT_KNOWN =
            "p|pass|s|skip|u|unsure|n/a|not known|unknown|no idea|dunno|don'?t know|no (lo )?s[eé]|ni idea";

    private static final int MOST_SHOWN = 8;
    private static final Set<String> LIST = Set.of("list", "lista");
    private static final Set<Finding.Kind> DRIVER_TELLS = Set.of(Finding.Kind.SYMPTOM, Finding.Kind.ACCOUNT);

    private final Interview interview;
    private final KnowledgeBase knowledge;
    private final UnderstandSpeech words;
    private final Asker asker;
    private final Page page;
    private final Texts wording;
    private final LimitDialog limits;
    /** Whether the list of what was meant was left to say it in other words. */
    private boolean saysItAnew;

    IntakeDialog(
            Interview interview,
            KnowledgeBase knowledge,
            UnderstandSpeech words,
            Asker asker,
            Page page,
            Texts wording) {
        this.interview = interview;
        this.knowledge = knowledge;
        this.words = words;
        this.asker = asker;
        this.page = page;
        this.wording = wording;
        this.limits = new LimitDialog(knowledge, asker, page, wording);
    }

    /** Asks the question of the stage; false if whoever answers has gone. */
    boolean ask() {
        Stage stage = interview.stage();
        String key = stage.name().toLowerCase(Locale.ROOT).replace('_', '-');
        page.blank();
        page.line(wording.text("intake." + key, distance().symbol()));
        List<String> choices = stage.choices();
        offer(stage);
        List<String> words = Stream.concat(
                        choices.stream(),
                        TabWords.at(stage == Stage.COMPLAINT ? "complaint" : "intake", wording).stream())
                .toList();
        Optional<String> answer = stage == Stage.COMPLAINT || stage == Stage.ACCOUNT
                ? asker.askLines("intake." + key, "> ", words, IntakeDialog::asksForSomething)
                : asker.ask("intake." + key, "> ", words);
        String last = answer.map(IntakeDialog::lastLine).orElse("");
        if (answer.isEmpty() || asksFor(last, AnswerLine.Request.STOP)) {
            return false;
        }
        try {
            String said = asksFor(last, AnswerLine.Request.BACK) ? last : answer.get();
            return take(stage, chosen(said.strip(), choices));
        } catch (CaseRefused | NotAnAnswer e) {
            asker.refused(NotAnAnswer.told(e, wording));
            return true;
        }
    }

    private void offer(Stage stage) {
        String key = stage.name().toLowerCase(Locale.ROOT).replace('_', '-');
        for (int i = 0; i < stage.choices().size(); i++) {
            page.indented(
                    "  " + (i + 1) + "  ",
                    "     ",
                    wording.text("choice." + key + "." + stage.choices().get(i)));
        }
    }

    private static boolean asksForSomething(String line) {
        String word = word(line);
        return AnswerLine.request(word)
                        .filter(r -> r != AnswerLine.Request.SKIP)
                        .isPresent()
                || LIST.contains(word)
                || word.matches(NOT_KNOWN);
    }

    private static boolean asksFor(String line, AnswerLine.Request what) {
        return AnswerLine.request(word(line)).filter(what::equals).isPresent();
    }

    private static String lastLine(String lines) {
        return lines.strip().lines().reduce("", (before, line) -> line);
    }

    private static String word(String line) {
        return line.strip().toLowerCase(Locale.ROOT);
    }

    private boolean take(Stage stage, String said) {
        Optional<AnswerLine.Request> request = said.isEmpty() ? Optional.empty() : AnswerLine.request(word(said));
        switch (request.orElse(AnswerLine.Request.SAID)) {
            case BACK -> page.line(wording.text(interview.back() ? "back" : "back.none"));
            case HELP, WHERE -> note("intake.help");
            case WHY -> note(stage.isOfTheGearbox() ? "intake.why-parts" : "intake.why");
            default -> {
                return tell(stage, word(said).matches(NOT_KNOWN) ? "" : said);
            }
        }
        return true;
    }

    private void note(String key) {
        page.indented("  ", "  ", wording.text(key));
    }

    private boolean tell(Stage stage, String answer) {
        if (stage != Stage.COMPLAINT && stage != Stage.ACCOUNT) {
            boolean bare = stage == Stage.KILOMETRES && answer.matches("[\\d., ]*\\d(\\s*k)?");
            interview.tell(bare ? answer + " " + distance().symbol() : answer);
            return true;
        }
        saysItAnew = false;
        return (stage == Stage.COMPLAINT ? tellComplaint(answer) : tellAccount(answer)) || saysItAnew;
    }

    /** The list may be asked for below the words too: they stay the complaint. */
    private boolean tellComplaint(String typed) {
        List<String> lines = typed.lines().toList();
        boolean endsWithList = lines.size() > 1 && LIST.contains(word(lines.get(lines.size() - 1)));
        String answer = endsWithList
                ? String.join("\n", lines.subList(0, lines.size() - 1)).strip()
                : typed;
        boolean wantsList = endsWithList || answer.isEmpty() || LIST.contains(word(answer));
        Complaints complaints = new Complaints(
                knowledge, words.search(knowledge), interview.present().gearbox());
        List<Proposal> meantBy = wantsList ? List.of() : meantBy(answer, complaints);
        if (!wantsList && meantBy.isEmpty()) {
            page.line(wording.text("meant.none"));
        }
        Optional<List<Proposal>> meant = meantBy.isEmpty()
                ? confirmed(usual(complaints), "meant.list")
                : confirmedSigns(meantBy, usual(complaints));
        // The list adds signs; words given before stay the complaint.
        return meant.isPresent()
                && told(
                        endsWithList || !wantsList
                                ? answer
                                : interview.present().complaint().isEmpty() ? said(meant.get()) : "",
                        meant.get())
                && askWhereItLiesOpen();
    }

    /** Keeps the words and what was meant by them, once the limits of its values were asked; false if that was left. */
    private boolean told(String words, List<Proposal> meant) {
        LimitDialog.Entries entries = limits.entries(meant, new CardEntries(knowledge, interview.present()));
        if (entries instanceof LimitDialog.Entries.Made made) {
            interview.tellMeant(words, made.changes());
            return true;
        }
        saysItAnew = entries.equals(new LimitDialog.Entries.Left(LimitDialog.Answer.Left.BACK));
        return false;
    }

    /** What was seen inside the box before anything was opened here: the unit lies open, or others saw it. */
    private boolean askWhereItLiesOpen() {
        Optional<Finding> seen = interview.seenInside();
        if (seen.isEmpty()) {
            return true;
        }
        List<String> choices = Stage.UNIT_STATE.choices();
        List<String> words = Stream.concat(choices.stream(), TabWords.at("left", wording).stream())
                .toList();
        page.blank();
        page.line(wording.text("intake.seen-inside", seen.get().title()));
        offer(Stage.UNIT_STATE);
        while (true) {
            Optional<String> answer = asker.ask("intake.seen-inside", "> ", words);
            if (answer.isEmpty() || asksFor(answer.get(), AnswerLine.Request.STOP)) {
                return false;
            }
            if (asksFor(answer.get(), AnswerLine.Request.BACK)) {
                page.line(wording.text(interview.back() ? "back" : "back.none"));
                return true;
            }
            try {
                String said = answer.get().strip();
                interview.unitStands(said.toLowerCase(Locale.ROOT).matches(NOT_KNOWN) ? "" : chosen(said, choices));
                return true;
            } catch (CaseRefused | NotAnAnswer e) {
                asker.refused(NotAnAnswer.told(e, wording));
            }
        }
    }

    /** Without any sign that is there nothing tells what to ask first: then the others are offered, and the usual ones. */
    private Optional<List<Proposal>> confirmedSigns(List<Proposal> meantBy, List<Proposal> usual) {
        Optional<List<Proposal>> picked = confirmed(meantBy, "meant");
        List<Proposal> taken = new ArrayList<>(picked.orElse(List.of()));
        List<Proposal> others = taken.isEmpty()
                ? List.of()
                : meantBy.stream().filter(p -> !taken.contains(p)).toList();
        if (picked.isPresent() && !saysWhatIsWrong(taken) && !others.isEmpty()) {
            page.line(wording.text("meant.nothing-wrong"));
            picked = confirmed(others, "meant");
            taken.addAll(picked.orElse(List.of()));
        }
        if (picked.isPresent() && !saysWhatIsWrong(taken)) {
            page.line(wording.text("meant.none-of-these"));
            picked = confirmed(usual, "meant.list");
            taken.addAll(picked.orElse(List.of()));
        }
        return picked.map(last -> List.copyOf(taken));
    }

    private static boolean saysWhatIsWrong(List<Proposal> taken) {
        return taken.stream().anyMatch(p -> !(p instanceof Proposal.OfFinding f) || f.state() == FindingState.PRESENT);
    }

    /** What the driver is understood to say is told by him, whatever of it is confirmed. */
    private boolean tellAccount(String answer) {
        List<Proposal> said = answer.isEmpty() ? List.of() : saidByTheDriver(answer);
        Optional<List<Proposal>> meant = said.isEmpty() ? Optional.of(List.of()) : confirmed(said, "meant.account");
        return meant.isPresent() && told(answer, meant.get());
    }

    /** How it behaves and what happened, which whoever drives can tell; what a look would show is not taken from a tale. */
    private List<Proposal> saidByTheDriver(String answer) {
        return words.reader(knowledge).read(answer, interview.present().gearbox(), distance()).proposals().stream()
                .filter(p -> p instanceof Proposal.OfFinding)
                .map(p -> ((Proposal.OfFinding) p).told(Sayer.DRIVER))
                .filter(p ->
                        DRIVER_TELLS.contains(knowledge.findings().get(p.id()).kind()))
                .filter(p -> !interview.present().findings().containsKey(p.id()))
                .sorted(Comparator.comparing(Proposal::sureness))
                .map(p -> (Proposal) p)
                .toList();
    }

    /** What the words say outright, as a job card is read, and then what they come near to. */
    private List<Proposal> meantBy(String answer, Complaints complaints) {
        List<Proposal> read =
                words.reader(knowledge).read(answer, interview.present().gearbox(), distance()).proposals().stream()
                        .filter(p ->
                                !(p instanceof Proposal.OfMeasure value) || value.belief() != Measure.Belief.IMPOSSIBLE)
                        .sorted(Comparator.comparing(Proposal::sureness))
                        .toList();
        List<Proposal> meant = new ArrayList<>(read);
        meant.removeIf(p -> p.sureness() == Sureness.DOUBTFUL);
        complaints.meantBy(answer).stream()
                .filter(id -> meant.stream().noneMatch(p -> p.id().equals(id)))
                .limit(Math.max(0, MOST_SHOWN - meant.size()))
                .forEach(id -> meant.add(present(id, answer)));
        read.stream()
                .filter(p -> meant.stream().noneMatch(m -> m.id().equals(p.id())))
                .forEach(meant::add);
        return meant;
    }

    /** The unit of an odometer that is given without one. */
    private Unit distance() {
        return page.units().shown(Unit.KILOMETRE);
    }

    private List<Proposal> usual(Complaints complaints) {
        return complaints.usual().stream().map(id -> present(id, "")).toList();
    }

    private static Proposal present(String id, String words) {
        return new Proposal.OfFinding(id, FindingState.PRESENT, words, Sureness.DOUBTFUL, Optional.empty(), "");
    }

    private String said(List<Proposal> chosen) {
        return String.join(
                ". ",
                chosen.stream()
                        .map(p -> knowledge.findings().get(p.id()).title())
                        .toList());
    }

    /** The number of a choice stands for the choice, and so does its beginning or its name with one slip. */
    private static String chosen(String answer, List<String> choices) {
        if (!choices.isEmpty()
                && answer.matches("\\d")
                && Integer.parseInt(answer) >= 1
                && Integer.parseInt(answer) <= choices.size()) {
            return choices.get(Integer.parseInt(answer) - 1);
        }
        String said = answer.toLowerCase(Locale.ROOT).replace(' ', '-');
        List<String> meant = said.length() < 2 || choices.contains(said)
                ? List.of()
                : choices.stream()
                        .filter(c -> c.startsWith(said) || said.startsWith(c + "-"))
                        .toList();
        List<String> near = meant.isEmpty() && said.length() > 3 ? Nearest.some(said, choices, 1) : meant;
        return near.size() == 1 ? near.get(0) : answer;
    }

    /** Has the technician pick from a list; empty if he has gone, or goes back to say it in other words. */
    private Optional<List<Proposal>> confirmed(List<Proposal> candidates, String heading) {
        if (candidates.isEmpty()) {
            page.line(wording.text("meant.none"));
            return Optional.of(List.of());
        }
        page.line(wording.text(heading));
        List<Proposal> outright =
                candidates.stream().filter(p -> p.sureness() == Sureness.SURE).toList();
        for (int i = 0; i < candidates.size(); i++) {
            String mark = outright.contains(candidates.get(i)) ? "*" : " ";
            page.indented(String.format("%3d%s ", i + 1, mark), "     ", asked(candidates.get(i)));
        }
        String prompt = wording.text(outright.isEmpty() ? "meant.prompt" : "meant.prompt-marked");
        while (true) {
            Optional<String> answer = asker.ask("intake.meant", prompt + " ", TabWords.at("meant", wording));
            if (answer.isEmpty() || asksFor(answer.get(), AnswerLine.Request.STOP)) {
                return Optional.empty();
            }
            if (asksFor(answer.get(), AnswerLine.Request.BACK)) {
                saysItAnew = true;
                return Optional.empty();
            }
            try {
                return Optional.of(answer.get().isBlank() ? outright : picked(answer.get(), candidates));
            } catch (CaseRefused | NotAnAnswer e) {
                asker.refused(NotAnAnswer.told(e, wording));
            }
        }
    }

    private String asked(Proposal candidate) {
        if (candidate instanceof Proposal.OfFinding said && said.state() == FindingState.PRESENT) {
            Finding f = knowledge.findings().get(candidate.id());
            return f.title() + ". " + f.ask();
        }
        return new CardText(knowledge, page, wording).meant(candidate);
    }

    private static List<Proposal> picked(String answer, List<Proposal> candidates) {
        if (answer.strip().toLowerCase(Locale.ROOT).matches("all|todos|todas")) {
            return candidates;
        }
        Set<Proposal> picked = new LinkedHashSet<>();
        for (String word : answer.strip().split("[ ,]+")) {
            if (word.isEmpty() || word.toLowerCase(Locale.ROOT).matches("none|ninguno|ninguna|0")) {
                continue;
            }
            if (!word.matches("\\d{1,2}") || Integer.parseInt(word) < 1 || Integer.parseInt(word) > candidates.size()) {
                throw new NotAnAnswer("refused.not-on-list", word, candidates.size());
            }
            picked.add(candidates.get(Integer.parseInt(word) - 1));
        }
        return List.copyOf(picked);
    }
}
