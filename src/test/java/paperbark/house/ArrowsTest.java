package paperbark.house;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideOutsideOfPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.nio.file.Path;
import java.time.Clock;

/** The arrows between the rooms, and what may enter each. */
@AnalyzeClasses(packages = "paperbark", importOptions = ImportOption.DoNotIncludeTests.class)
class ArrowsTest {

    @ArchTest static final ArchRule values = room("value");

    @ArchTest static final ArchRule findings = room("finding", "value");

    @ArchTest static final ArchRule sheets = room("sheet", "finding", "value");

    @ArchTest static final ArchRule rules = room("rules", "sheet", "value", "finding");

    @ArchTest static final ArchRule firm = room("firm", "sheet", "value", "finding");

    @ArchTest
    static final ArchRule jobs = room("job", "firm", "rules", "sheet", "value", "finding");

    @ArchTest
    static final ArchRule entitlements =
            room("entitlement", "job", "firm", "rules", "value", "finding");

    @ArchTest
    static final ArchRule offers =
            room("offer", "entitlement", "job", "firm", "rules", "value", "finding");

    @ArchTest
    static final ArchRule ledgers = room("ledger", "fault", "job", "firm", "value", "finding");

    @ArchTest static final ArchRule disks = room("disk", "fault");

    @ArchTest
    static final ArchRule outputs =
            room("output", "offer", "entitlement", "job", "firm", "sheet", "value", "finding");

    @ArchTest
    static final ArchRule batches =
            room(
                    "batch",
                    "output",
                    "ledger",
                    "disk",
                    "fault",
                    "offer",
                    "entitlement",
                    "job",
                    "firm",
                    "rules",
                    "sheet",
                    "value",
                    "finding");

    @ArchTest
    static final ArchRule answers =
            room(
                    "answer",
                    "batch",
                    "output",
                    "disk",
                    "offer",
                    "entitlement",
                    "job",
                    "rules",
                    "sheet",
                    "value",
                    "finding");

    @ArchTest
    static final ArchRule settling =
            room(
                    "settle", "batch", "output", "ledger", "disk", "firm", "sheet", "value",
                    "finding");

    @ArchTest
    static final ArchRule offices =
            room(
                    "office",
                    "settle",
                    "batch",
                    "output",
                    "ledger",
                    "disk",
                    "fault",
                    "entitlement",
                    "job",
                    "firm",
                    "rules",
                    "sheet",
                    "value",
                    "finding");

    @ArchTest
    static final ArchRule doors =
            room(
                    "cli", "office", "settle", "answer", "batch", "ledger", "disk", "sheet",
                    "value", "finding");

    @ArchTest static final ArchRule faults = room("fault");

    @ArchTest
    static final ArchRule sistersDoNotSeeEachOther =
            slices().matching("paperbark.output.(paper|form|workbook|index)..")
                    .should()
                    .notDependOnEachOther()
                    .because("papers, workbooks and pages change for different reasons");

    @ArchTest
    static final ArchRule noCycles = slices().matching("paperbark.(*)..").should().beFreeOfCycles();

    @ArchTest
    static final ArchRule onlyTheDoorKnowsTheWorld =
            noClasses()
                    .that()
                    .resideOutsideOfPackage("paperbark.cli..")
                    .should()
                    .accessField(System.class, "out")
                    .orShould()
                    .accessField(System.class, "err")
                    .orShould()
                    .callMethod(System.class, "exit", int.class)
                    .orShould()
                    .callMethod(System.class, "currentTimeMillis")
                    .orShould()
                    .callMethod(java.time.LocalDate.class, "now")
                    .orShould()
                    .callMethod(java.time.Instant.class, "now")
                    .orShould()
                    .dependOnClassesThat()
                    .areAssignableTo(Clock.class)
                    .because("a run must be repeatable from its arguments alone");

    @ArchTest
    static final ArchRule pureRoomsTouchNoFiles =
            noClasses()
                    .that()
                    .resideInAnyPackage(
                            "paperbark.value..",
                            "paperbark.finding..",
                            "paperbark.job..",
                            "paperbark.entitlement..",
                            "paperbark.offer..")
                    .should()
                    .dependOnClassesThat()
                    .areAssignableTo(Path.class)
                    .orShould()
                    .dependOnClassesThat()
                    .resideInAnyPackage(
                            "java.io..",
                            "java.nio..",
                            "org.apache.poi..",
                            "org.apache.pdfbox..",
                            "freemarker..")
                    .because("these rooms compute and nothing else");

    @ArchTest
    static final ArchRule onlyTheLedgerKnowsDatabases =
            noClasses()
                    .that()
                    .resideOutsideOfPackage("paperbark.ledger..")
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage(
                            "java.sql..",
                            "org.sqlite..",
                            "org.postgresql..",
                            "org.apache.commons.dbutils..")
                    .because("statements are written once, for a file and for a server");

    @ArchTest
    static final ArchRule noFloatingPointForTheTrade =
            noClasses()
                    .that()
                    .resideInAnyPackage(
                            "paperbark.value..",
                            "paperbark.entitlement..",
                            "paperbark.offer..",
                            "paperbark.rules..")
                    .should()
                    .dependOnClassesThat()
                    .areAssignableTo(Double.class)
                    .orShould()
                    .dependOnClassesThat()
                    .areAssignableTo(Float.class)
                    .orShould()
                    .callMethod(java.math.BigDecimal.class, "doubleValue")
                    .because("money and certificates are counted, not measured");

    @ArchTest
    static final ArchRule namesSayWhatThingsAre =
            noClasses()
                    .should()
                    .haveSimpleNameEndingWith("Util")
                    .orShould()
                    .haveSimpleNameEndingWith("Utils")
                    .orShould()
                    .haveSimpleNameEndingWith("Helper")
                    .orShould()
                    .haveSimpleNameEndingWith("Manager")
                    .orShould()
                    .haveSimpleNameEndingWith("Impl")
                    .because("such names say nothing about the thing");

    private static ArchRule room(String name, String... mayUse) {
        String[] packages = new String[mayUse.length + 1];
        packages[0] = "paperbark." + name + "..";
        for (int i = 0; i < mayUse.length; i++) {
            packages[i + 1] = "paperbark." + mayUse[i] + "..";
        }
        return classes()
                .that()
                .resideInAPackage("paperbark." + name + "..")
                .should()
                .onlyDependOnClassesThat(
                        resideOutsideOfPackage("paperbark..").or(resideInAnyPackage(packages)))
                .because("arrows between rooms go one way");
    }
}
