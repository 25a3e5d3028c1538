package witnessmark;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.methods;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import com.tngtech.archunit.library.dependencies.SliceAssignment;
import com.tngtech.archunit.library.dependencies.SliceIdentifier;
import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.shell.core.command.annotation.Command;

/** The arrows between the packages, as DEVELOPERS.md draws them. */
@AnalyzeClasses(packages = "witnessmark", importOptions = ImportOption.DoNotIncludeTests.class)
class ArrowsTest {
    private static final String[] JDK = {"java..", "org.jspecify.."};

    private static final SliceAssignment EACH_PACKAGE = new SliceAssignment() {
        @Override
        public SliceIdentifier getIdentifierOf(JavaClass javaClass) {
            return SliceIdentifier.of(javaClass.getPackageName());
        }

        @Override
        public String getDescription() {
            return "each package";
        }
    };

    @ArchTest
    static final ArchRule inference_is_pure_mathematics = classes()
            .that()
            .resideInAPackage("witnessmark.inference..")
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage(with("witnessmark.inference..", "witnessmark.refusal.."));

    @ArchTest
    static final ArchRule the_gearbox_knows_only_machines = classes()
            .that()
            .resideInAPackage("witnessmark.gearbox..")
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage(with("witnessmark.gearbox..", "witnessmark.refusal.."));

    @ArchTest
    static final ArchRule the_core_knows_no_spring_rules_database_or_terminal = noClasses()
            .that()
            .resideInAnyPackage("witnessmark.gearbox..", "witnessmark.inference..", "witnessmark.triplog..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("org.springframework..", "org.drools..", "org.kie..", "java.sql..", "org.jline..");

    @ArchTest
    static final ArchRule knowledge_knows_no_case = noClasses()
            .that()
            .resideInAPackage("witnessmark.knowledge..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(
                    "witnessmark.casefile..",
                    "witnessmark.diagnosis..",
                    "witnessmark.inference..",
                    "witnessmark.shell..");

    @ArchTest
    static final ArchRule the_case_file_knows_no_judgement = noClasses()
            .that()
            .resideInAPackage("witnessmark.casefile..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(
                    "witnessmark.knowledge..",
                    "witnessmark.diagnosis..",
                    "witnessmark.inference..",
                    "witnessmark.shell..",
                    "org.drools..");

    @ArchTest
    static final ArchRule the_judgement_knows_no_sql_and_no_terminal = noClasses()
            .that()
            .resideInAPackage("witnessmark.diagnosis..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("java.sql..", "org.springframework..", "org.jline..", "witnessmark.casefile.store..");

    @ArchTest
    static final ArchRule nothing_depends_on_the_shell = noClasses()
            .that()
            .resideOutsideOfPackages("witnessmark.shell..", "witnessmark")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("witnessmark.shell..");

    @ArchTest
    static final ArchRule no_package_at_any_depth_is_in_a_circle =
            slices().assignedFrom(EACH_PACKAGE).should().beFreeOfCycles();

    @ArchTest
    static void every_arrow_stands_in_the_table(JavaClasses classes) {
        Map<String, Set<String>> table = RoomTable.read(Path.of("DEVELOPERS.md"));
        Set<String> arrows = new TreeSet<>();
        for (JavaClass from : classes) {
            for (Dependency dependency : from.getDirectDependenciesFromSelf()) {
                String to = RoomTable.room(dependency.getTargetClass().getPackageName(), table.keySet());
                String own = RoomTable.room(from.getPackageName(), table.keySet());
                if (!to.isEmpty() && !to.equals(own) && !RoomTable.allows(table, own, to)) {
                    arrows.add((own.isEmpty() ? from.getPackageName() : own) + " -> " + to + ", in "
                            + from.getSimpleName());
                }
            }
        }
        assertThat(arrows)
                .as("arrows that the table of DEVELOPERS.md does not draw")
                .isEmpty();
    }

    @ArchTest
    static void every_arrow_in_the_table_is_used(JavaClasses classes) throws IOException {
        Map<String, Set<String>> table = RoomTable.read(Path.of("DEVELOPERS.md"));
        Set<String> drawn = new TreeSet<>();
        table.forEach((from, to) -> to.forEach(room -> drawn.add(from + " -> " + room)));
        for (JavaClass from : classes) {
            from.getDirectDependenciesFromSelf()
                    .forEach(d -> drawn.remove(
                            arrow(from.getPackageName(), d.getTargetClass().getPackageName(), table)));
        }
        Path root = Path.of("src/main/java");
        try (Stream<Path> sources = Files.walk(root)) {
            sources.filter(p -> p.toString().endsWith(".java")).forEach(source -> {
                String own = root.relativize(source.getParent()).toString().replace(File.separatorChar, '.');
                importsOf(source).forEach(used -> drawn.remove(arrow(own, used, table)));
            });
        }
        assertThat(drawn)
                .as("arrows of DEVELOPERS.md's table that no class needs")
                .isEmpty();
    }

    @ArchTest
    static void every_package_has_a_row_and_every_row_a_package(JavaClasses classes) {
        Map<String, Set<String>> table = RoomTable.read(Path.of("DEVELOPERS.md"));
        Set<String> rooms = new TreeSet<>();
        classes.forEach(c -> rooms.add(RoomTable.room(c.getPackageName(), table.keySet())));
        rooms.remove("");
        assertThat(rooms).isEqualTo(new TreeSet<>(table.keySet()));
        Set<String> homeless = new TreeSet<>();
        classes.stream()
                .map(JavaClass::getPackageName)
                .filter(name -> !name.equals("witnessmark")
                        && RoomTable.room(name, table.keySet()).isEmpty())
                .forEach(homeless::add);
        assertThat(homeless).as("packages without a row").isEmpty();
    }

    @ArchTest
    static final ArchRule one_room_reads_and_writes_yaml = noClasses()
            .that()
            .resideOutsideOfPackage("witnessmark.yaml..")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("org.snakeyaml..");

    @ArchTest
    static final ArchRule fields_are_not_injected = fields().should().notBeAnnotatedWith(Autowired.class);

    @ArchTest
    static final ArchRule only_the_shell_prints = noClasses()
            .that()
            .resideOutsideOfPackages("witnessmark.shell..", "witnessmark")
            .should()
            .accessField(System.class, "out")
            .orShould()
            .accessField(System.class, "err");

    @ArchTest
    static final ArchRule every_command_has_a_description_a_group_and_the_mapper = methods()
            .that()
            .areAnnotatedWith(Command.class)
            .should(new ArchCondition<>("say its description, group and mapper") {
                @Override
                public void check(JavaMethod method, ConditionEvents events) {
                    Command command = method.getAnnotationOfType(Command.class);
                    boolean whole = !command.description().isEmpty()
                            && !command.group().isEmpty()
                            && command.exitStatusExceptionMapper().equals("refusals");
                    events.add(new SimpleConditionEvent(method, whole, method.getFullName()));
                }
            });

    @ArchTest
    static final ArchRule every_package_is_null_marked = classes()
            .that()
            .haveSimpleName("package-info")
            .should()
            .beAnnotatedWith(org.jspecify.annotations.NullMarked.class);

    private static String arrow(String from, String to, Map<String, Set<String>> table) {
        return RoomTable.room(from, table.keySet()) + " -> " + RoomTable.room(to, table.keySet());
    }

    /** What a source names: also what is only caught, which a class does not show. */
    private static Stream<String> importsOf(Path source) {
        try {
            return Files.readAllLines(source).stream()
                    .filter(line -> line.startsWith("import witnessmark."))
                    .map(line -> line.replaceFirst("import (.*)\\.[A-Z].*", "$1"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String[] with(String own, String beside) {
        return new String[] {JDK[0], JDK[1], own, beside};
    }
}
