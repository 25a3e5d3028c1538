package witnessmark.document.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import witnessmark.casefile.Evidence;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.PlainNumber;
import witnessmark.casefile.Reckoned;
import witnessmark.casefile.logged.LoggedEvidence;
import witnessmark.diagnosis.Sentences;
import witnessmark.document.Dossier;
import witnessmark.gearbox.EnumWord;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Unit;
import witnessmark.language.Language;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.evidence.LogEvidence;
import witnessmark.triplog.evidence.LogRecord;

/**
 * A computed or logged result in the reader's language and the shop's units, from the figures kept with it. The words
 * kept with it are English; on other papers they stand beside, marked as kept.
 */
final class SayResult {
    private static final double FEW_TIMES = 10;

    /** Parts of inputs as they are kept: what an assumption rests on, and of what a share is. */
    private static final String ASSUMED = ", assumed: ";

    private static final String SHARE = " % of ";
    private static final String SHARE_SIGN = " % ";

    private final Dossier dossier;
    private final SayOnPaper words;
    private final Sentences say;

    SayResult(Dossier dossier) {
        this.dossier = dossier;
        this.words = new SayOnPaper(dossier);
        this.say = new Sentences(dossier.texts().language());
    }

    /** Whether the words kept with results are in the language of this paper. */
    private boolean keptAreRead() {
        return dossier.texts().language() == Language.ENGLISH;
    }

    /** The result as the paper says it. */
    String result(Evidence evidence) {
        return keptAreRead() ? evidence.summary() : ofFigures(evidence);
    }

    /** How it was found, as far as that can be said in the language of the paper. */
    String method(Evidence evidence) {
        if (keptAreRead()) {
            return evidence.formula();
        }
        return evidence.kind() == Evidence.Kind.LOGGED ? words.say("logged-method") : "";
    }

    /** The words kept with the result, for a paper in another language; empty where they are its own. */
    String kept(Evidence evidence) {
        if (keptAreRead()) {
            return "";
        }
        List<String> kept = new ArrayList<>(List.of(evidence.summary()));
        if (evidence.kind() != Evidence.Kind.LOGGED && !evidence.formula().isEmpty()) {
            kept.add(evidence.formula());
        }
        evidence.inputs().entrySet().stream()
                .filter(e -> e.getValue().contains(ASSUMED))
                .map(e -> e.getKey().replace('-', ' ') + ": " + e.getValue())
                .forEach(kept::add);
        return String.join("\n", kept);
    }

    /** What went in, without the words kept with it; why it was assumed stands with those. */
    String value(String kept) {
        if (keptAreRead()) {
            return kept;
        }
        int assumed = kept.indexOf(ASSUMED);
        if (assumed >= 0) {
            return kept.substring(0, assumed) + ", " + words.say("input-assumed");
        }
        int share = kept.indexOf(SHARE);
        String of = share < 0 ? "" : kept.substring(share + SHARE.length());
        String whole = words.orElse(key(kept), kept);
        return of.isEmpty() ? whole : kept.substring(0, share) + SHARE_SIGN + words.orElse(key(of), of);
    }

    private static String key(String kept) {
        return "input-value-" + kept.replace(' ', '-');
    }

    /** The name of what went in. */
    String input(String name) {
        String gear = "ratio-of-gear-";
        if (name.startsWith(gear)) {
            return words.say("input-ratio-of-gear", name.substring(gear.length()));
        }
        return words.orElse("input-" + name, name.replace('-', ' '));
    }

    /** The result in short, from its figures; where none were kept, from the findings that follow. */
    String ofFigures(Evidence evidence) {
        if (evidence.record().isPresent()) {
            return logs(evidence.record().get());
        }
        if (!evidence.reckoned().isEmpty()) {
            return evidence.reckoned().entrySet().stream()
                    .map(e -> reckoned(
                            e.getKey(), e.getValue(), evidence.findings().get(e.getKey())))
                    .collect(Collectors.joining(" "));
        }
        return evidence.findings().isEmpty() ? words.say("result-open") : following(evidence) + ".";
    }

    /** The findings that follow from it, each with its state. */
    String following(Evidence evidence) {
        return SayOnPaper.list(evidence.findings().entrySet().stream()
                .map(e -> FoundRow.title(dossier, e.getKey()) + ": " + words.state(e.getValue()))
                .toList());
    }

    /** All logs of the case as the one witness that they are; empty where there is at most one result from logs. */
    Optional<String> logsTogether() {
        return LoggedEvidence.pooled(dossier.file()).map(this::logs);
    }

    private String reckoned(String finding, Reckoned figures, FindingState state) {
        String said = words.say(
                "reckoned",
                FoundRow.title(dossier, finding),
                words.say("outcome-" + figures.outcome().word()),
                heldAgainst(figures));
        return state == FindingState.UNSURE ? said + " " + words.say("reckoned-guessed") : said;
    }

    /** The figure and the bound it was held against. */
    String heldAgainst(Reckoned figures) {
        return words.say("held-against", value(figures), words.figure(bounding(figures)));
    }

    String value(Reckoned figures) {
        return words.figure(Figure.computed(figures.value(), figures.unit(), ""));
    }

    /** The bound alone, as one that was computed. */
    String bound(Reckoned figures) {
        return words.say("bound-computed", words.figure(bounding(figures)));
    }

    private static Figure bounding(Reckoned figures) {
        return Figure.computed(figures.bound(), figures.boundUnit(), "");
    }

    private String logs(LogRecord record) {
        return logs(record, dossier.weigh().said(record));
    }

    private String logs(LogRecord record, List<LogEvidence> said) {
        List<String> sentences = new ArrayList<>();
        group("logged-for", record, said, e -> e.state() == LogEvidence.State.PRESENT)
                .ifPresent(sentences::add);
        group("logged-thin", record, said, e -> e.state() == LogEvidence.State.UNSURE && e.counts())
                .ifPresent(sentences::add);
        group("logged-against", record, said, e -> e.state() == LogEvidence.State.ABSENT)
                .ifPresent(sentences::add);
        if (sentences.isEmpty()) {
            sentences.add(words.say("logged-nothing"));
        }
        return String.join(" ", sentences);
    }

    private Optional<String> group(
            String lead, LogRecord record, List<LogEvidence> said, Predicate<LogEvidence> which) {
        List<String> list =
                said.stream().filter(which).map(e -> logged(record, e)).toList();
        return list.isEmpty() ? Optional.empty() : Optional.of(words.say(lead, SayOnPaper.list(list)));
    }

    private String logged(LogRecord record, LogEvidence said) {
        double factor = said.factor();
        double times = factor >= 1 ? factor : 1 / factor;
        String fits = words.say(
                factor >= 1 ? "logged-fits-with" : "logged-fits-without",
                PlainNumber.rounded(times, times < FEW_TIMES ? 1 : 0));
        return words.say(
                "logged-one",
                FoundRow.title(dossier, said.finding()),
                counted(record, said),
                fits + said.thin().map(t -> "; " + say.thin(t)).orElse(""));
    }

    /** How often it was seen, and in how much. */
    private String counted(LogRecord record, LogEvidence said) {
        return switch (said.counted()) {
            case COASTS -> words.say("logged-coasts", said.count(), way(record.coastKm()), way(100 * said.chances()));
            case FIT -> words.say("logged-fit", words.percent(record.gearShare()), said.count(), way(record.km()));
            case EVENTS -> words.say("logged-count", said.count(), occasions(said));
        };
    }

    private String occasions(LogEvidence said) {
        if (said.chance() == EventKind.Chance.DISTANCE) {
            return way(100 * said.chances());
        }
        String number = PlainNumber.rounded(said.chances(), 0);
        return words.say("occasion-" + EnumWord.of(said.chance()) + (number.equals("1") ? "-one" : "-many"), number);
    }

    private String way(double km) {
        return words.rounded(km, Unit.KILOMETRE);
    }
}
