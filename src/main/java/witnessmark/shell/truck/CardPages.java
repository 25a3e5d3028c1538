package witnessmark.shell.truck;

import java.nio.file.Path;
import java.util.List;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.context.annotation.Lazy;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.stereotype.Component;
import witnessmark.casefile.MadeWith;
import witnessmark.document.Form;
import witnessmark.document.Paper;
import witnessmark.document.template.TemplateFolder;
import witnessmark.document.write.WriteDocument;
import witnessmark.gearbox.TruckProfile;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.language.Language;
import witnessmark.shell.print.FileForm;
import witnessmark.shell.print.GivenPath;
import witnessmark.shell.print.NewFile;
import witnessmark.shell.print.Terminal;
import witnessmark.shell.print.WrongUsage;
import witnessmark.shell.settings.ShopSettings;

/** Writes the driver's card of a truck as a page to hand over. */
@Component
@Lazy
class CardPages {
    private static final List<String> FORMS = List.of("pdf", "html", "md");

    private final ObjectProvider<KnowledgeBase> knowledge;
    private final ObjectProvider<MadeWith> made;
    private final ShopSettings shop;

    CardPages(ObjectProvider<KnowledgeBase> knowledge, ObjectProvider<MadeWith> made, ShopSettings shop) {
        this.knowledge = knowledge;
        this.made = made;
        this.shop = shop;
    }

    /** @param as the form, as it was typed; empty where the file's ending says it */
    record Order(String as, GivenPath out, boolean replace, Paper paper, Language language) {}

    void write(CommandContext context, TruckProfile truck, Order order) {
        String ending = FileForm.of(order.as(), order.out().typed(), FORMS, FORMS.get(0));
        Form form = Form.parse(ending)
                .orElseThrow(() -> WrongUsage.unknown("--as", ending, "one of " + String.join(", ", FORMS)));
        Language language = order.language();
        byte[] page = new WriteDocument(TemplateFolder.shipped(), order.paper())
                .card(truck, knowledge.getObject(), made.getObject(), shop.onPaper(), form, language);
        Path target = order.out().isEmpty()
                ? Path.of(truck.id() + "-card-" + language.tag() + "." + form.extension())
                : order.out().path();
        NewFile.write(target, page, NewFile.Older.of(order.replace()));
        Terminal.line(context.outputWriter(), "Coaching card written: " + target + " (" + page.length + " bytes)");
        context.outputWriter().flush();
    }
}
