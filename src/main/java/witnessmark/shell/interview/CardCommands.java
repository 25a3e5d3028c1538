package witnessmark.shell.interview;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import org.springframework.stereotype.Component;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.Vehicle;
import witnessmark.casefile.history.Change;
import witnessmark.casefile.history.Opened;
import witnessmark.gearbox.Layout;
import witnessmark.gearbox.Unit;
import witnessmark.jobcard.CardReading;
import witnessmark.jobcard.Proposal;
import witnessmark.jobcard.Sureness;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.language.Language;
import witnessmark.language.Texts;
import witnessmark.shell.cases.Cases;
import witnessmark.shell.knowledge.AnswerJson;
import witnessmark.shell.print.Format;
import witnessmark.shell.print.OptionText;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.Refused;
import witnessmark.shell.print.Terminal;
import witnessmark.shell.settings.ShopSettings;

/** The command that takes a job card's own sentences into a case. */
@Component
class CardCommands {
    private static final String NEW = "new";
    private static final String STANDARD_INPUT = "-";
    private static final int LONGEST = 20_000;

    private final ObjectProvider<Cases> cases;
    private final ObjectProvider<KnowledgeBase> knowledge;
    private final ObjectProvider<org.jline.terminal.Terminal> terminal;
    private final ShopSettings shop;
    private final UnderstandSpeech words;
    private final AnswerJson json;

    CardCommands(
            ObjectProvider<Cases> cases,
            ObjectProvider<KnowledgeBase> knowledge,
            ObjectProvider<org.jline.terminal.Terminal> terminal,
            ShopSettings shop,
            UnderstandSpeech words,
            AnswerJson json) {
        this.json = json;
        this.shop = shop;
        this.words = words;
        this.cases = cases;
        this.knowledge = knowledge;
        this.terminal = terminal;
    }

    @Command(
            name = "case read",
            group = "Case entries",
            description = "Read a job card's own sentences, English or Spanish, into findings and values",
            help = "CASE|new [FILE|-]; each is accepted, changed or dropped at the terminal; --accept-sure takes "
                    + "what can hardly mean anything else and lists the rest; what is not understood becomes a note",
            completionProvider = "completeCase",
            exitStatusExceptionMapper = "refusals")
    void read(
            CommandContext context,
            @Argument(index = 0, description = "new, or the id of a case") String name,
            @Argument(index = 1, description = "text file, or - for standard input", defaultValue = "") String file,
            @Option(longName = "accept-sure", defaultValue = "false", description = "take what is sure, list the rest")
                    Boolean acceptSure,
            @Option(longName = "language", defaultValue = "", description = OptionText.LANGUAGE) Language language,
            @Option(longName = "reason", defaultValue = "", description = OptionText.REASON) String reason,
            @Option(longName = "format", defaultValue = "text", description = OptionText.FORMAT) Format format) {
        boolean asks = Terminal.canAsk() && !acceptSure && format == Format.TEXT && !file.equals(STANDARD_INPUT);
        Texts wording = Texts.of("interview", language);
        KnowledgeBase spoken = knowledge.getObject().in(wording.language());
        Page page = new Page(context.outputWriter());
        CaseFile now = name.equals(NEW)
                ? new CaseSheet(new CaseId(NEW)).toCaseFile()
                : cases.getObject().stored(name);
        try (Asker asker =
                asks ? new TerminalAsker(terminal.getObject(), context.outputWriter(), wording) : new NobodyAnswers()) {
            String card = card(file, asker, page, wording);
            CardReading reading = words.reader(knowledge.getObject())
                    .read(card, now.gearbox(), page.units().shown(Unit.KILOMETRE));
            CardEntries entries = new CardEntries(knowledge.getObject(), now);
            Optional<CardDialog.Accepted> taken = asks
                    ? new CardDialog(spoken, words.search(knowledge.getObject()), asker, page, wording)
                            .confirmed(reading, new LimitDialog(spoken, asker, page, wording), entries)
                    : acceptSure ? Optional.of(accepted(sure(reading, now), entries)) : Optional.empty();
            Optional<String> stored = taken.map(accepted -> store(name, card, reading, accepted, entries, reason));
            List<Proposal> kept = taken.map(CardDialog.Accepted::proposals).orElse(List.of());
            if (format == Format.JSON) {
                context.outputWriter().println(json.of(CardJson.of(stored, reading, kept)));
            } else {
                tell(page, wording, stored, reading, kept, now, asks);
            }
        }
    }

    private static CardDialog.Accepted accepted(List<Proposal> proposals, CardEntries entries) {
        return new CardDialog.Accepted(
                proposals, proposals.stream().map(entries::of).toList());
    }

    /** Only what can hardly mean anything else, and contradicts nothing on record. */
    private static List<Proposal> sure(CardReading reading, CaseFile now) {
        return reading.proposals().stream()
                .filter(p -> p.sureness() == Sureness.SURE)
                .filter(p -> !isOnRecord(p, now))
                .toList();
    }

    private static boolean isOnRecord(Proposal proposal, CaseFile now) {
        return now.findings().containsKey(proposal.id())
                || now.measurements().containsKey(proposal.id())
                || proposal instanceof Proposal.OfOdometer
                        && now.vehicle().odometerKm().isPresent();
    }

    private String card(String file, Asker asker, Page page, Texts wording) {
        if (!file.isEmpty()) {
            return checked(file.equals(STANDARD_INPUT) ? standardInput() : text(file));
        }
        if (asker instanceof NobodyAnswers) {
            throw new Refused("nobody can be asked here", "give the card as a file, or - for standard input");
        }
        page.line(wording.text("card.type"));
        List<String> lines = new ArrayList<>();
        for (String line = asker.ask("card.line", "> ", List.of()).orElse("");
                !line.isBlank();
                line = asker.ask("card.line", "> ", List.of()).orElse("")) {
            lines.add(line);
        }
        return checked(String.join("\n", lines));
    }

    private static String checked(String card) {
        if (card.isBlank()) {
            throw new Refused("the card is empty", "nothing was stored");
        }
        if (card.length() > LONGEST) {
            throw new Refused(
                    "the card has " + card.length() + " characters",
                    "give at most " + LONGEST + ", one truck at a time; nothing was stored");
        }
        return Terminal.harmless(card.strip());
    }

    private static String standardInput() {
        try {
            return decoded("standard input", System.in.readNBytes(4 * LONGEST + 1));
        } catch (IOException e) {
            throw new Refused("standard input cannot be read: " + e.getMessage(), "give the card as a file");
        }
    }

    private static String text(String file) {
        try {
            return decoded("card '" + Terminal.harmless(file) + "'", Files.readAllBytes(Path.of(file)));
        } catch (IOException e) {
            throw new Refused("card '" + Terminal.harmless(file) + "' cannot be read", "give the path of a text file");
        }
    }

    private static String decoded(String what, byte[] bytes) {
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(java.nio.ByteBuffer.wrap(bytes))
                    .toString();
        } catch (java.nio.charset.CharacterCodingException e) {
            throw new Refused(what + " is not UTF-8", "save it anew as UTF-8 text");
        }
    }

    /** Stores what was taken, the card as written, and what was not understood; returns the case. */
    private String store(
            String name,
            String card,
            CardReading reading,
            CardDialog.Accepted taken,
            CardEntries entries,
            String reason) {
        List<Change> changes = new ArrayList<>(taken.changes());
        List<String> rest = new ArrayList<>(reading.notUnderstood());
        reading.proposals().stream()
                .filter(p -> taken.proposals().stream().noneMatch(t -> t.words().equals(p.words())))
                .map(Proposal::words)
                .filter(words -> !rest.contains(words))
                .forEach(rest::add);
        changes.addAll(entries.written(card, rest));
        Cases all = cases.getObject();
        String id = name;
        if (name.equals(NEW)) {
            id = all.freeId().text();
            all.store().open(new Opened(new CaseId(id), "", "", Vehicle.unknown(), Layout.unknown()), all.who());
        }
        all.enter(id, changes, reason);
        return id;
    }

    private void tell(
            Page page,
            Texts wording,
            Optional<String> stored,
            CardReading reading,
            List<Proposal> taken,
            CaseFile now,
            boolean asked) {
        CardText text = new CardText(knowledge.getObject().in(wording.language()), page, wording);
        if (!asked) {
            list(page, wording.text("card.taken"), taken, text);
            Map<Boolean, List<Proposal>> rest = reading.proposals().stream()
                    .filter(p -> !taken.contains(p))
                    .collect(Collectors.partitioningBy(p -> isOnRecord(p, now)));
            list(page, wording.text(stored.isPresent() ? "card.not-sure" : "card.proposed"), rest.get(false), text);
            list(page, wording.text("card.on-record"), rest.get(true), text);
        }
        if (!reading.notUnderstood().isEmpty()) {
            page.heading(wording.text("card.not-understood"));
            reading.notUnderstood().forEach(words -> page.item("\"" + words + "\""));
        }
        page.blank();
        page.line(stored.map(id -> wording.text(
                        "card.stored", taken.size(), reading.proposals().size(), id))
                .orElse(wording.text("card.nothing-stored")));
        page.flush();
    }

    private static void list(Page page, String title, List<Proposal> proposals, CardText text) {
        if (!proposals.isEmpty()) {
            page.heading(title);
            proposals.forEach(p -> text.print("  -", p));
        }
    }
}
