package witnessmark.document.print;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TimeZone;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.CRC32;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.w3c.dom.Document;
import org.xml.sax.ErrorHandler;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import org.xml.sax.SAXParseException;
import witnessmark.document.DocumentRefused;
import witnessmark.document.Paper;
import witnessmark.document.ShippedFont;

/**
 * Prints a page of well-formed HTML as PDF with the shipped fonts. The same page gives the same bytes: time and
 * identity in the file come from what is printed. Nothing outside the page is loaded.
 */
public final class PrintPdf {
    private static final String FONTS = "shipped:";

    private final Paper paper;
    private final Instant dated;

    /** @param dated the time the file bears; where there is none, the first second of 1970 */
    public PrintPdf(Paper paper, Optional<Instant> dated) {
        this.paper = paper;
        this.dated = dated.orElse(Instant.EPOCH);
    }

    /**
     * The page as a PDF file, the letters of each piece of it so sized that it lies well on its sheets;
     * {@link DocumentRefused} if the page is not well formed, or what must stand on one sheet does not fit it.
     */
    public byte[] print(String html) {
        List<Piece> pieces = Piece.of(parsed(html));
        Map<Piece, Fitting> fittings = new LinkedHashMap<>();
        try {
            Optional<byte[]> pdf = Optional.empty();
            while (pdf.isEmpty()) {
                pdf = printed(html, pieces, fittings);
            }
            return pdf.get();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The page laid out once; a file where no piece asks for another size. */
    private Optional<byte[]> printed(String html, List<Piece> pieces, Map<Piece, Fitting> fittings) throws IOException {
        String sized =
                withFonts(html, fittings.values().stream().map(Fitting::rule).collect(Collectors.joining()));
        try (PdfBoxRenderer renderer = renderer(sized)) {
            renderer.layout();
            Sheets sheets = Sheets.of(renderer);
            // What stands within another piece is settled first: how that lies follows from it.
            if (anyGoesOn(sheets, pieces.stream().filter(Piece::isWithinAnother), fittings)
                    || anyGoesOn(sheets, pieces.stream().filter(p -> !p.isWithinAnother()), fittings)) {
                return Optional.empty();
            }
            renderer.createPDFWithoutClosing();
            return Optional.of(saved(renderer.getPdfDocument(), html));
        }
    }

    private boolean anyGoesOn(Sheets sheets, Stream<Piece> pieces, Map<Piece, Fitting> fittings) {
        boolean goesOn = false;
        for (Piece piece : pieces.toList()) {
            Extent extent = sheets.extent(piece);
            Fitting known = fittings.get(piece);
            if (known == null) {
                fittings.put(piece, new Fitting(piece, extent));
                goesOn |= !fittings.get(piece).rule().isEmpty();
            } else {
                goesOn |= known.goesOn(extent);
                refuse(known.isRefused(extent) && !goesOn);
            }
        }
        return goesOn;
    }

    private void refuse(boolean tooLong) {
        if (tooLong) {
            throw new DocumentRefused(
                    "the page does not fit one sheet of " + paper.word() + " in readable letters",
                    "shorten the shop's own template or letterhead");
        }
    }

    private PdfBoxRenderer renderer(String html) {
        XRLog.setLoggingEnabled(false);
        ShippedFontsOnly.use();
        PdfRendererBuilder builder = new PdfRendererBuilder();
        builder.useFastMode();
        builder.useDefaultPageSize(
                (float) paper.widthMm(), (float) paper.heightMm(), BaseRendererBuilder.PageSizeUnits.MM);
        builder.useSVGDrawer(new BatikSVGDrawer());
        builder.useUriResolver((base, uri) -> uri.startsWith("data:image/") || uri.startsWith(FONTS) ? uri : null);
        builder.useUnicodeLineBreaker(new UnbrokenNumbers());
        builder.useProtocolsStreamImplementation(ShippedStream::new, "shipped");
        builder.withProducer("witnessmark");
        builder.withW3cDocument(parsed(html), "");
        return builder.buildPdfRenderer();
    }

    private byte[] saved(PDDocument pdf, String html) throws IOException {
        Calendar time =
                GregorianCalendar.from(dated.atZone(TimeZone.getTimeZone("UTC").toZoneId()));
        pdf.getDocumentInformation().setCreationDate(time);
        pdf.getDocumentInformation().setModificationDate(time);
        CRC32 identity = new CRC32();
        identity.update(html.getBytes(StandardCharsets.UTF_8));
        pdf.setDocumentId(identity.getValue());
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        pdf.save(out);
        return out.toByteArray();
    }

    private static String withFonts(String html, String sizes) {
        StringBuilder rules = new StringBuilder("<style>");
        for (ShippedFont font : ShippedFont.values()) {
            rules.append(String.format(
                    Locale.ROOT,
                    "@font-face{font-family:'%s';font-weight:%d;src:url(%s%s);-fs-font-subset:subset}",
                    ShippedFont.FAMILY,
                    font.weight(),
                    FONTS,
                    font.file()));
        }
        rules.append("body{font-size:9.5pt}").append(sizes).append("</style></head>");
        return UnshownSigns.named(html).replaceFirst("</head>", rules.toString());
    }

    private static Document parsed(String html) {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setNamespaceAware(true);
            factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
            factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
            var builder = factory.newDocumentBuilder();
            builder.setErrorHandler(new Strict());
            return builder.parse(new InputSource(new StringReader(html)));
        } catch (SAXParseException e) {
            throw new DocumentRefused(
                    "the page is not well-formed XHTML at line " + e.getLineNumber() + ": " + e.getMessage(),
                    "close every tag in the shop's own templates, or take them away");
        } catch (SAXException e) {
            throw new DocumentRefused(
                    "the page is not well-formed XHTML",
                    "leave document types and entities out of the shop's own templates, and close every tag");
        } catch (IOException | ParserConfigurationException e) {
            throw new IllegalStateException("this Java cannot read XML", e);
        }
    }

    /** Says nothing by itself; what is wrong is thrown. */
    private static final class Strict implements ErrorHandler {
        @Override
        public void warning(SAXParseException e) {
            // Nothing that could be wrong with a page is only a warning.
        }

        @Override
        public void error(SAXParseException e) throws SAXException {
            throw e;
        }

        @Override
        public void fatalError(SAXParseException e) throws SAXException {
            throw e;
        }
    }

    /** Opens the shipped fonts by name, and nothing else. */
    private static final class ShippedStream implements com.openhtmltopdf.extend.FSStream {
        private final String uri;

        ShippedStream(String uri) {
            this.uri = uri;
        }

        @Override
        public InputStream getStream() {
            for (ShippedFont font : ShippedFont.values()) {
                if (uri.equals(FONTS + font.file())) {
                    return LooseLetters.of(font);
                }
            }
            return new ByteArrayInputStream(new byte[0]);
        }

        @Override
        public java.io.Reader getReader() {
            return new java.io.InputStreamReader(getStream(), StandardCharsets.UTF_8);
        }
    }
}
