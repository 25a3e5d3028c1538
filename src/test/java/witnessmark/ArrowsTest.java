package witnessmark;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.methods;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.shell.core.command.annotation.Command;

/** The arrows between the packages, as DEVELOPERS.md draws them. */
@AnalyzeClasses(packages = "witnessmark", importOptions = ImportOption.DoNotIncludeTests.class)
class ArrowsTest {
    private static final String[] JDK = {"java..", "org.jspecify.."};

    @ArchTest
    static final ArchRule inference_is_pure_mathematics = classes()
            .that()
            .resideInAPackage("witnessmark.inference..")
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage(with("witnessmark.inference.."));

    @ArchTest
    static final ArchRule the_gearbox_knows_only_machines = classes()
            .that()
            .resideInAPackage("witnessmark.gearbox..")
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage(with("witnessmark.gearbox.."));

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
    static final ArchRule features_have_no_cycles =
            slices().matching("witnessmark.(*)..").should().beFreeOfCycles();

    @ArchTest
    static final ArchRule rooms_of_the_shell_have_no_cycles =
            slices().matching("witnessmark.shell.(*)..").should().beFreeOfCycles();

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
    static final ArchRule every_command_has_help_a_group_and_the_mapper = methods()
            .that()
            .areAnnotatedWith(Command.class)
            .should(new ArchCondition<>("say its help, group and mapper") {
                @Override
                public void check(JavaMethod method, ConditionEvents events) {
                    Command command = method.getAnnotationOfType(Command.class);
                    boolean whole = !command.help().isEmpty()
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

    private static String[] with(String own) {
        return new String[] {JDK[0], JDK[1], own};
    }
}
