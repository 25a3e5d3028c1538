package witnessmark.document.write;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.casefile.ClaimField;
import witnessmark.casefile.MadeWith;
import witnessmark.document.DocumentRefused;
import witnessmark.document.Dossier;
import witnessmark.document.Form;
import witnessmark.document.Kind;
import witnessmark.document.Paper;
import witnessmark.document.Shop;
import witnessmark.document.page.BenchPage;
import witnessmark.document.page.ClaimPage;
import witnessmark.document.page.CoachingPage;
import witnessmark.document.page.EvidencePage;
import witnessmark.document.page.ExplanationPage;
import witnessmark.document.page.Glossary;
import witnessmark.document.page.Head;
import witnessmark.document.page.Judged;
import witnessmark.document.page.TowingPage;
import witnessmark.document.print.PrintPdf;
import witnessmark.document.template.FillTemplate;
import witnessmark.document.template.TemplateFolder;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.speed.SpeedUnits;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.TowWay;
import witnessmark.language.Language;
import witnessmark.language.Texts;

/** Writes the documents of cases, from the shipped templates or a shop's own. */
public final class WriteDocument {
    private static final List<Kind> PACKET =
            List.of(Kind.EXPLANATION, Kind.BENCH, Kind.EVIDENCE, Kind.COACHING, Kind.TOWING);

    /** Classes by which a page tells the printer what belongs on one sheet: must, or as far as it fits. */
    private static final String ONE_SHEET = "one-sheet";

    private static final String FITTED = "fitted";

    private static final String FOOT = "<div class=\"foot\">";

    private final TemplateFolder templates;
    private final Paper paper;
    private final Optional<TowWay> tow;

    public WriteDocument(TemplateFolder templates, Paper paper) {
        this(templates, paper, Optional.empty());
    }

    /** @param tow how the truck will be towed, for the towing sheet; empty where it is open */
    public WriteDocument(TemplateFolder templates, Paper paper, Optional<TowWay> tow) {
        this.templates = templates;
        this.paper = paper;
        this.tow = tow;
    }

    /** One document in the language of the dossier; {@link DocumentRefused} where a template does not fit. */
    public byte[] write(Dossier dossier, Kind kind, Form form) {
        Language language = dossier.language();
        return switch (form) {
            case MARKDOWN -> markdown(dossier, kind, language).getBytes(StandardCharsets.UTF_8);
            case HTML -> ("<!DOCTYPE html>\n" + html(dossier, kind, language)).getBytes(StandardCharsets.UTF_8);
            case PDF -> pdf(dossier, kind, language);
        };
    }

    /** The driver's card of a truck, without a case. */
    public byte[] card(
            TruckProfile truck, KnowledgeBase knowledge, MadeWith madeWith, Shop shop, Form form, Language language) {
        Map<String, String> words = words(language);
        Object page = CoachingPage.of(truck, knowledge, SpeedUnits.of(shop.units()), language);
        Map<String, Object> around = new LinkedHashMap<>();
        String made = Judged.made(madeWith, Texts.of("document", language));
        around.put("head", Map.of("chainCode", "", "chainHead", "", "judged", Map.of("made", made)));
        around.put("logo", logo(shop));
        around.put("shop", shop.name().isEmpty() ? words.getOrDefault("shop", "") : shop.name());
        around.put("words", words);
        if (form == Form.MARKDOWN) {
            return FillTemplate.markdown(templates)
                    .fill(Kind.COACHING.word(), page, around)
                    .getBytes(StandardCharsets.UTF_8);
        }
        FillTemplate fill = FillTemplate.html(templates);
        Part card = part(Kind.COACHING, language);
        String body = withFoot(fill, fill.fill(Kind.COACHING.word(), page, around), around);
        String html = fill.fill(
                "page",
                sheet(
                        card.title() + ": " + truck.titleIn(language.tag()),
                        language,
                        List.of(piece(card, body, ONE_SHEET))),
                around);
        return form == Form.PDF
                ? new PrintPdf(paper, Optional.empty()).print(html)
                : ("<!DOCTYPE html>\n" + html).getBytes(StandardCharsets.UTF_8);
    }

    private byte[] pdf(Dossier dossier, Kind kind, Language language) {
        return new PrintPdf(paper, dossier.asOf()).print(html(dossier, kind, language));
    }

    private String markdown(Dossier dossier, Kind kind, Language language) {
        FillTemplate fill = FillTemplate.markdown(templates);
        StringBuilder text = new StringBuilder();
        for (Part part : parts(dossier, kind)) {
            text.append(text.isEmpty() ? "" : "\n---\n\n").append(body(fill, dossier, part));
        }
        return text.toString();
    }

    private String html(Dossier dossier, Kind kind, Language language) {
        FillTemplate fill = FillTemplate.html(templates);
        List<Part> parts = parts(dossier, kind);
        List<Map<String, String>> bodies = new ArrayList<>();
        String onOneSheet = parts.size() > 1 ? FITTED : ONE_SHEET;
        for (Part part : parts) {
            String body = withFoot(fill, body(fill, dossier, part), around(dossier, part.language()));
            bodies.add(piece(part, body, part.kind().isOnePage() ? onOneSheet : ""));
        }
        String title = title(kind, language) + ": " + dossier.file().id().text();
        return fill.fill("page", sheet(title, language, bodies), around(dossier, language));
    }

    /** A shop's own template may leave out the end of the chain; no document does. */
    private static String withFoot(FillTemplate fill, String body, Map<String, Object> around) {
        return body.contains(FOOT) ? body : body + fill.fill("foot", Map.of(), around);
    }

    private static Map<String, String> piece(Part part, String body, String length) {
        return Map.of(
                "anchor",
                part.kind().word() + "-" + part.language().tag(),
                "length",
                length,
                "bodyLanguage",
                part.language().tag(),
                "bodyTitle",
                part.title(),
                "body",
                body);
    }

    private Map<String, Object> sheet(String title, Language language, List<Map<String, String>> bodies) {
        Map<String, Object> page = new LinkedHashMap<>();
        page.put("pageTitle", title);
        page.put("language", language.tag());
        page.put("style", templates.text("style.css"));
        page.put("isPacket", bodies.size() > 1);
        page.put("bodies", bodies);
        return page;
    }

    private record Part(Kind kind, Language language, String title) {}

    /** What the document of this kind is called on paper. */
    public String title(Kind kind, Language language) {
        boolean loose = kind == Kind.TOWING && tow.equals(Optional.of(TowWay.LOOSE));
        return words(language).get(loose ? "looseTitle" : kind.word() + "Title");
    }

    /** A packet holds what the driver and the tow operator take along in both languages. */
    private List<Part> parts(Dossier dossier, Kind kind) {
        if (kind != Kind.PACKET) {
            return List.of(part(kind, dossier.language()));
        }
        List<Part> parts = new ArrayList<>();
        for (Kind one : PACKET) {
            for (Language each : Language.values()) {
                if (each == dossier.language() || one == Kind.COACHING || one == Kind.TOWING) {
                    parts.add(part(one, each));
                }
            }
        }
        return parts;
    }

    private Part part(Kind kind, Language language) {
        return new Part(kind, language, title(kind, language));
    }

    private String body(FillTemplate fill, Dossier dossier, Part part) {
        return fill.fill(part.kind().word(), page(dossier, part), around(dossier, part.language()));
    }

    private Object page(Dossier dossier, Part part) {
        return switch (part.kind()) {
            case BENCH -> BenchPage.of(dossier);
            case EXPLANATION -> ExplanationPage.of(
                    dossier,
                    Glossary.parse(
                            templates.text("glossary." + dossier.language().tag() + ".txt")));
            case CLAIM -> Map.of("claim", ClaimPage.of(dossier));
            case EVIDENCE -> EvidencePage.of(dossier);
            case COACHING -> CoachingPage.of(dossier, part.language(), words(part.language()));
            case TOWING -> TowingPage.of(dossier, part.language(), tow);
            case PACKET -> throw new IllegalArgumentException("a packet is made of its parts");
        };
    }

    private Map<String, Object> around(Dossier dossier, Language language) {
        Map<String, Object> around = new LinkedHashMap<>();
        around.put("head", Head.of(dossier));
        around.put("logo", logo(dossier.shop()));
        around.put("shop", shop(dossier, language));
        around.put("words", words(language));
        return around;
    }

    /** The words that stand in templates: the shipped ones, with the shop's own laid on top. */
    private Map<String, String> words(Language language) {
        String file = "words." + language.tag() + ".txt";
        try {
            return Texts.parse(file, language, TemplateFolder.shipped().text(file))
                    .with(Texts.parse(file, language, templates.text(file)))
                    .all();
        } catch (IllegalArgumentException e) {
            throw new DocumentRefused(file + " cannot be read", "write 'name = words' a line");
        }
    }

    /** The name of the shop: the case's own, else the setting, else what the templates say. */
    private String shop(Dossier dossier, Language language) {
        String ofCase = dossier.file().claim().fact(ClaimField.SHOP);
        String named = ofCase.isEmpty() ? dossier.shop().name() : ofCase;
        return named.isEmpty() ? words(language).getOrDefault("shop", "") : named;
    }

    /** The shop's logo as a data address, from its settings or its templates; empty without one. */
    private String logo(Shop shop) {
        return shop.logo()
                .or(() -> templates.bytes("logo.png"))
                .or(() -> templates.bytes("logo.jpg"))
                .map(bytes -> "data:image/" + pictureType(bytes) + ";base64,"
                        + Base64.getEncoder().encodeToString(bytes))
                .orElse("");
    }

    private static String pictureType(byte[] bytes) {
        int first = bytes.length == 0 ? 0 : bytes[0] & 0xff;
        return first == 0x89 ? "png" : first == 0xff ? "jpeg" : "svg+xml";
    }
}
