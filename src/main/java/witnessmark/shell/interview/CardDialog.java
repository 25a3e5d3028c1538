package witnessmark.shell.interview;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import witnessmark.casefile.CaseRefused;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.history.Change;
import witnessmark.gearbox.Unit;
import witnessmark.interview.NotAnAnswer;
import witnessmark.jobcard.CardReading;
import witnessmark.jobcard.Proposal;
import witnessmark.jobcard.Sureness;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.Measure;
import witnessmark.knowledge.search.FindEntries;
import witnessmark.knowledge.search.Hit;
import witnessmark.language.Texts;
import witnessmark.shell.print.Page;

/** Has each thing that a job card was taken to say accepted, changed or dropped, one key each. */
final class CardDialog {
    private static final List<String> FINDING_KEYS = List.of("a", "y", "n", "u", "o", "d", "b", "q");
    private static final List<String> MEASURE_KEYS = List.of("a", "c", "d", "b", "q");
    private static final List<String> ODOMETER_KEYS = List.of("a", "d", "b", "q");
    private static final int OTHERS_SHOWN = 6;

    private final KnowledgeBase knowledge;
    private final FindEntries search;
    private final Asker asker;
    private final Page page;
    private final Texts wording;
    private final CardText text;

    CardDialog(KnowledgeBase knowledge, FindEntries search, Asker asker, Page page, Texts wording) {
        this.knowledge = knowledge;
        this.search = search;
        this.asker = asker;
        this.page = page;
        this.wording = wording;
        this.text = new CardText(knowledge, page, wording);
    }

    /** What was accepted, as it stands after the changes, with its entries. */
    record Accepted(List<Proposal> proposals, List<Change> changes) {}

    /** What was accepted, once the limits of its values were asked too; empty if whoever answers has gone. */
    Optional<Accepted> confirmed(CardReading reading, LimitDialog limits, CardEntries entries) {
        List<Optional<Proposal>> decided = new ArrayList<>();
        page.indented("", "", wording.text("card.keys"));
        while (decide(reading.proposals(), decided)) {
            List<Proposal> accepted = decided.stream().flatMap(Optional::stream).toList();
            LimitDialog.Entries asked = limits.entries(accepted, entries);
            if (asked instanceof LimitDialog.Entries.Made made) {
                return Optional.of(new Accepted(accepted, made.changes()));
            }
            if (asked.equals(new LimitDialog.Entries.Left(LimitDialog.Answer.Left.STOP))) {
                return Optional.empty();
            }
            takeBack(decided);
        }
        return Optional.empty();
    }

    /** Has the rest of them decided; false if whoever answers has gone. */
    private boolean decide(List<Proposal> proposals, List<Optional<Proposal>> decided) {
        while (decided.size() < proposals.size()) {
            Proposal proposal = proposals.get(decided.size());
            page.blank();
            text.print(wording.text("card.number", decided.size() + 1, proposals.size()), proposal);
            Answer answer = ask(proposal);
            switch (answer.what()) {
                case DECIDED -> decided.add(answer.proposal());
                case BACK -> takeBack(decided);
                case GONE -> {
                    return false;
                }
            }
        }
        return true;
    }

    private static void takeBack(List<Optional<Proposal>> decided) {
        if (!decided.isEmpty()) {
            decided.remove(decided.size() - 1);
        }
    }

    private enum What {
        DECIDED,
        BACK,
        GONE
    }

    private record Answer(What what, Optional<Proposal> proposal) {
        static Answer take(Proposal proposal) {
            return new Answer(What.DECIDED, Optional.of(proposal));
        }

        static final Answer DROP = new Answer(What.DECIDED, Optional.empty());
        static final Answer BACK = new Answer(What.BACK, Optional.empty());
        static final Answer GONE = new Answer(What.GONE, Optional.empty());
    }

    private Answer ask(Proposal proposal) {
        while (true) {
            Optional<String> key = pressed(proposal);
            if (key.isEmpty() || key.get().equals("q")) {
                return Answer.GONE;
            }
            Optional<Answer> answer = proposal instanceof Proposal.OfFinding said
                    ? said(key.get(), said)
                    : proposal instanceof Proposal.OfMeasure read
                            ? measured(key.get(), read)
                            : plain(key.get(), proposal);
            if (answer.isPresent()) {
                return answer.get();
            }
        }
    }

    private Optional<String> pressed(Proposal proposal) {
        if (proposal instanceof Proposal.OfFinding) {
            return asker.press("card.proposal", wording.text("card.prompt") + " ", FINDING_KEYS);
        }
        return proposal instanceof Proposal.OfMeasure
                ? asker.press("card.proposal", wording.text("card.prompt-measure") + " ", MEASURE_KEYS)
                : asker.press("card.proposal", wording.text("card.prompt-odometer") + " ", ODOMETER_KEYS);
    }

    private Optional<Answer> plain(String key, Proposal proposal) {
        return switch (key) {
            case "a", "" -> Optional.of(Answer.take(proposal));
            case "d" -> Optional.of(Answer.DROP);
            case "b" -> Optional.of(Answer.BACK);
            default -> {
                asker.refused(wording.text("card.no-key", key));
                yield Optional.empty();
            }
        };
    }

    private Optional<Answer> said(String key, Proposal.OfFinding said) {
        return switch (key) {
            case "a", "" -> Optional.of(Answer.take(said));
            case "y" -> Optional.of(Answer.take(in(said, FindingState.PRESENT)));
            case "n" -> Optional.of(Answer.take(in(said, FindingState.ABSENT)));
            case "u" -> Optional.of(Answer.take(in(said, FindingState.UNSURE)));
            case "o" -> another(said).map(Answer::take);
            case "d" -> Optional.of(Answer.DROP);
            case "b" -> Optional.of(Answer.BACK);
            default -> {
                asker.refused(wording.text("card.no-key", key));
                yield Optional.empty();
            }
        };
    }

    private Optional<Answer> measured(String key, Proposal.OfMeasure read) {
        return switch (key) {
            case "a", "" -> {
                if (read.belief() == Measure.Belief.IMPOSSIBLE) {
                    asker.refused(wording.text("card.cannot-be"));
                    yield Optional.empty();
                }
                yield Optional.of(Answer.take(read));
            }
            case "c" -> otherValue(read).map(Answer::take);
            case "d" -> Optional.of(Answer.DROP);
            case "b" -> Optional.of(Answer.BACK);
            default -> {
                asker.refused(wording.text("card.no-key", key));
                yield Optional.empty();
            }
        };
    }

    private static Proposal.OfFinding in(Proposal.OfFinding said, FindingState state) {
        return new Proposal.OfFinding(said.id(), state, said.words(), Sureness.SURE, said.saidBy(), said.when());
    }

    private Optional<Proposal> otherValue(Proposal.OfMeasure read) {
        Measure measure = knowledge.measures().get(read.id());
        Unit unit = page.units().shown(measure.unit());
        String typed = asker.ask("card.value", wording.text("card.value", unit.symbol()) + " ", List.of())
                .orElse("");
        try {
            AnswerLine line = AnswerLine.of(typed, Optional.of(unit));
            if (line.request() == AnswerLine.Request.VALUE && line.unit() != null) {
                Proposal.OfMeasure given = new Proposal.OfMeasure(
                        read.id(),
                        line.value(),
                        line.unit(),
                        measure.belief(line.value(), line.unit()),
                        read.words(),
                        Sureness.SURE);
                return isPossible(given) ? Optional.of(given) : Optional.empty();
            }
        } catch (CaseRefused | NotAnAnswer e) {
            asker.refused(NotAnAnswer.told(e, wording));
        }
        return Optional.empty();
    }

    private boolean isPossible(Proposal.OfMeasure read) {
        if (read.belief() == Measure.Belief.IMPOSSIBLE) {
            asker.refused(wording.text("card.cannot-be"));
            return false;
        }
        return true;
    }

    /** Another finding for the same words, from those that the words come nearest to. */
    private Optional<Proposal> another(Proposal.OfFinding said) {
        String words = asker.ask("card.other", wording.text("card.other") + " ", List.of())
                .orElse("")
                .strip();
        List<Finding> near = search.find(words.isEmpty() ? said.words() : words, 4 * OTHERS_SHOWN).stream()
                .filter(hit -> hit.kind() == Hit.Kind.FINDING && !hit.id().equals(said.id()))
                .map(hit -> knowledge.findings().get(hit.id()))
                .limit(OTHERS_SHOWN)
                .toList();
        IntStream.range(0, near.size())
                .forEach(i -> page.indented(
                        "     " + (i + 1) + "  ", "        ", near.get(i).title()));
        String number = near.isEmpty()
                ? ""
                : asker.ask("card.which", wording.text("card.which") + " ", List.of())
                        .orElse("")
                        .strip();
        if (!number.matches("\\d") || Integer.parseInt(number) < 1 || Integer.parseInt(number) > near.size()) {
            page.indented("     ", "     ", wording.text("card.none"));
            return Optional.empty();
        }
        return Optional.of(new Proposal.OfFinding(
                near.get(Integer.parseInt(number) - 1).id(),
                said.state(),
                said.words(),
                Sureness.SURE,
                said.saidBy(),
                said.when()));
    }
}
