package witnessmark.shell.cases;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.springframework.beans.factory.DisposableBean;
import org.springframework.context.annotation.Lazy;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.Change;
import witnessmark.casefile.history.CorrectedAfterSignOff;
import witnessmark.casefile.store.CaseStore;
import witnessmark.casefile.store.StoreLocation;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.casefile.yaml.CaseReader;
import witnessmark.shell.print.Refused;
import witnessmark.shell.print.Terminal;
import witnessmark.shell.settings.ShopSettings;
import witnessmark.yaml.Nearest;

/** Where commands find cases: a YAML file on disk, or the store, which is opened when first needed. */
@Component
@Lazy
public class Cases implements DisposableBean {
    private static final int MOST_COMPARED = 2000;

    private final CaseStore store;
    private final ShopSettings shop;

    Cases(Environment environment, ShopSettings shop) {
        store = new CaseStore(location(environment), Clock.systemUTC());
        this.shop = shop;
        store.login().ifPresent(login -> refuseOther(login, shop));
    }

    private static void refuseOther(String login, ShopSettings shop) {
        shop.named().filter(name -> !name.equals(login)).ifPresent(name -> {
            throw new Refused(
                    "the entries of a shared store bear the name of the database login, '" + login + "', not '"
                            + Terminal.harmless(name) + "'",
                    "leave out --who, WITNESSMARK_WHO and the setting who");
        });
    }

    public CaseStore store() {
        return store;
    }

    /** Who makes the entries of this run; on a shared store the login, whatever is set. */
    public String who() {
        return store.login().orElseGet(shop::who);
    }

    /** Adds entries in this run's name; with a reason each is a correction of a case that was signed off. */
    public CaseHistory enter(String id, List<Change> changes, String reason) {
        return enter(new CaseId(id), changes, reason);
    }

    CaseHistory enter(CaseId id, List<Change> changes, String reason) {
        alarm(store.read(known(id)));
        return store.appendAll(known(id), corrections(changes, reason), who());
    }

    /** The same, refused where somebody has changed the case since it was read. */
    CaseHistory enterAfter(CaseHistory seen, List<Change> changes, String reason) {
        return store.appendAfter(seen, corrections(changes, reason), who());
    }

    private static List<? extends Change> corrections(List<Change> changes, String reason) {
        return reason.isEmpty()
                ? changes
                : changes.stream()
                        .map(c -> new CorrectedAfterSignOff(reason, c))
                        .toList();
    }

    /** A stored case with its entries; an id that is not stored is refused with the nearest that are. */
    public CaseHistory history(String id) {
        return history(new CaseId(id));
    }

    CaseHistory history(CaseId id) {
        return store.read(known(id));
    }

    /** A stored case as it stands; an id that is not stored is refused with the nearest that are. */
    public CaseFile stored(String id) {
        return stored(new CaseId(id));
    }

    CaseFile stored(CaseId id) {
        return store.read(known(id)).present();
    }

    /** The id, if a case is stored under it; else it is refused with the nearest that are. */
    public CaseId known(String id) {
        return known(new CaseId(id));
    }

    CaseId known(CaseId id) {
        if (store.ids(id.text(), 1).contains(id)) {
            return id;
        }
        store.takenOut(id).ifPresent(why -> {
            throw new Refused("case '" + id + "' WAS TAKEN OUT OF THE STORE outside the program: " + why
                    + "; bring the store back from a copy, or make the database anew from its journal with:"
                    + " store rebuild");
        });
        List<String> near = Nearest.some(id.text(), someIds(id.text()), 3);
        throw new Refused("case '" + id + "' is not in the store"
                + (near.isEmpty() ? "; see: case list" : "; did you mean " + String.join(", ", near) + "?"));
    }

    /** Ids that a mistyped one may mean: those with its first letter, else the first of all. */
    private List<String> someIds(String id) {
        List<CaseId> ids = new ArrayList<>(store.ids(id.substring(0, 1), MOST_COMPARED));
        ids.addAll(store.ids("", MOST_COMPARED));
        return ids.stream().map(CaseId::text).distinct().toList();
    }

    /** The day and a number that is free, with the one before it taken; a day of many cases is not walked through. */
    public CaseId freeId() {
        String day = LocalDate.now().toString();
        int taken = 0;
        int free = 1;
        while (isTaken(ofDay(day, free))) {
            taken = free;
            free = Math.multiplyExact(free, 2);
        }
        while (free - taken > 1) {
            int middle = taken + (free - taken) / 2;
            if (isTaken(ofDay(day, middle))) {
                taken = middle;
            } else {
                free = middle;
            }
        }
        return ofDay(day, free);
    }

    private static CaseId ofDay(String day, int number) {
        return new CaseId(day + "-" + number);
    }

    private boolean isTaken(CaseId id) {
        return store.ids(id.text(), 1).contains(id);
    }

    /** The case; a name that ends in .yaml or .yml, or has a path in it, means a file. */
    public CaseDocument find(String name) {
        if (!isFile(name)) {
            return CaseDocument.of(toShow(known(name)));
        }
        return read(Path.of(name));
    }

    /** A stored case to look at; where its chain is broken or a file of it damaged, that is said first. */
    CaseHistory toShow(CaseId id) {
        CaseHistory history = store.readToShow(id);
        CaseAlarm.of(history).sound();
        return history;
    }

    /** Says first that files of a case, which was read as whole, are damaged, if any are. */
    public CaseHistory alarm(CaseHistory whole) {
        CaseHistory history = store.withFiles(whole);
        CaseAlarm.of(history).sound();
        return history;
    }

    static CaseDocument read(Path file) {
        if (!Files.isRegularFile(file)) {
            throw new Refused(
                    "no case file '" + file + "'",
                    "give the path of a YAML case file, or the id of a stored" + " case (see: case list)");
        }
        return new CaseReader().read(file);
    }

    public static boolean isFile(String name) {
        return name.endsWith(".yaml") || name.endsWith(".yml") || name.contains("/") || name.contains("\\");
    }

    @Override
    public void destroy() {
        store.close();
    }

    /** The folder that holds all that the shop keeps. */
    public static Path folder(Environment environment) {
        return Path.of(environment.getProperty("witnessmark.store", System.getProperty("user.home") + "/.witnessmark"));
    }

    private static StoreLocation location(Environment environment) {
        String database = environment.getProperty("witnessmark.database", "");
        return database.isEmpty() ? StoreLocation.in(folder(environment)) : StoreLocation.shared(Path.of(database));
    }
}
