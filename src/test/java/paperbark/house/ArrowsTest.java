package paperbark.house;

import static com.tngtech.archunit.base.DescribedPredicate.anyElementThat;
import static com.tngtech.archunit.core.domain.JavaAccess.Predicates.target;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideOutsideOfPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.type;
import static com.tngtech.archunit.core.domain.properties.HasName.Predicates.nameMatching;
import static com.tngtech.archunit.core.domain.properties.HasOwner.Predicates.With.owner;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noCodeUnits;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noFields;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.properties.HasName;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.io.File;
import java.io.FileOutputStream;
import java.io.FileWriter;
import java.io.RandomAccessFile;
import java.math.BigDecimal;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.UUID;
import java.util.random.RandomGenerator;
import org.apache.commons.io.FileUtils;
import org.apache.commons.io.file.PathUtils;

/** The arrows between the rooms, and what may enter each. */
@AnalyzeClasses(packages = "paperbark", importOptions = ImportOption.DoNotIncludeTests.class)
class ArrowsTest {

    private static final DescribedPredicate<JavaClass> FLOATING =
            DescribedPredicate.describe(
                    "double or float",
                    c ->
                            c.getBaseComponentType().isEquivalentTo(double.class)
                                    || c.getBaseComponentType().isEquivalentTo(float.class));

    private static final DescribedPredicate<HasName> CHANGES =
            nameMatching(
                    "write.*|copy|move|delete.*|create.*|set.*|new(OutputStream|BufferedWriter)");

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
    static final ArchRule ledgers =
            room("ledger", "fault", "disk", "job", "firm", "value", "finding");

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

    @ArchTest static final ArchRule scanning = room("scan", "batch", "output");

    @ArchTest
    static final ArchRule offices =
            room(
                    "office",
                    "scan",
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
                    "cli",
                    "office",
                    "settle",
                    "answer",
                    "batch",
                    "ledger",
                    "disk",
                    "offer",
                    "entitlement",
                    "rules",
                    "sheet",
                    "value",
                    "finding");

    @ArchTest static final ArchRule faults = room("fault");

    @ArchTest
    static final ArchRule sistersDoNotSeeEachOther =
            slices().matching(
                            "paperbark.output.(paper|form|workbook|journal|index|calendar|mail)..")
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
                    .callMethod(Path.class, "toAbsolutePath")
                    .orShould()
                    .callMethod(File.class, "getAbsolutePath")
                    .orShould()
                    .callMethod(File.class, "getAbsoluteFile")
                    .orShould()
                    .dependOnClassesThat()
                    .areAssignableTo(Clock.class)
                    .because("a run must be repeatable from its arguments alone");

    @ArchTest
    static final ArchRule onlyWhatTheLedgerKeepsIsRandom =
            noClasses()
                    .that()
                    .resideOutsideOfPackage("paperbark.ledger..")
                    .and()
                    .haveNameNotMatching("paperbark\\.batch\\.(Books|OutputFolder)")
                    .should()
                    .callMethod(UUID.class, "randomUUID")
                    .orShould()
                    .callMethod(Math.class, "random")
                    .orShould()
                    .dependOnClassesThat()
                    .areAssignableTo(RandomGenerator.class)
                    .because("two runs give the same bytes but for ids and salts");

    @ArchTest
    static final ArchRule onlyTheseRoomsWriteFiles =
            noClasses()
                    .that()
                    .resideOutsideOfPackages(
                            "paperbark.disk..",
                            "paperbark.ledger..",
                            "paperbark.office..",
                            "paperbark.fault..")
                    .should()
                    .callMethodWhere(target(owner(type(Files.class))).and(target(CHANGES)))
                    .orShould()
                    .dependOnClassesThat()
                    .belongToAnyOf(
                            FileOutputStream.class,
                            FileWriter.class,
                            RandomAccessFile.class,
                            FileChannel.class,
                            PathUtils.class,
                            FileUtils.class)
                    .because("what is written appears whole and survives a cut of power");

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
    static final ArchRule spreadsheetsStayInTheirRooms =
            only("org.apache.poi..", "paperbark.sheet..", "paperbark.output.workbook..");

    @ArchTest
    static final ArchRule streamsOfXmlStayInTheirRoom =
            only("com.fasterxml.aalto..", "paperbark.sheet..");

    @ArchTest
    static final ArchRule portableDocumentsStayInTheirRooms =
            only(
                    "org.apache.pdfbox..",
                    "paperbark.output",
                    "paperbark.output.(paper|form|pdf)..",
                    "paperbark.scan..");

    @ArchTest
    static final ArchRule marksStayInTheirRooms =
            only("com.google.zxing..", "paperbark.output.paper..", "paperbark.scan..");

    @ArchTest
    static final ArchRule whatCamerasWroteStaysInTheOffice =
            only("com.drew..", "paperbark.office..");

    @ArchTest
    static final ArchRule objectsAndBytesKnowNoPaper =
            noClasses()
                    .that()
                    .resideInAPackage("paperbark.output.pdf..")
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage(
                            "paperbark.output.(paper|form|workbook|journal|index|table)..",
                            "paperbark.job..")
                    .because("what a page means does not change how it is written");

    @ArchTest
    static final ArchRule templatesStayInTheirRoom = only("freemarker..", "paperbark.output");

    @ArchTest
    static final ArchRule calendarsStayInTheirRoom =
            only("biweekly..", "paperbark.output.calendar..");

    @ArchTest
    static final ArchRule mailStaysInItsRoom = only("jakarta.mail..", "paperbark.output.mail..");

    @ArchTest
    static final ArchRule wordsOfTheCommandStayAtTheDoor = only("picocli..", "paperbark.cli..");

    private static ArchRule only(String library, String... rooms) {
        return noClasses()
                .that()
                .resideOutsideOfPackages(rooms)
                .should()
                .dependOnClassesThat()
                .resideInAPackage(library)
                .because("a library is one room's business");
    }

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

    private static final String[] TRADE = {
        "paperbark.value..",
        "paperbark.rules..",
        "paperbark.firm..",
        "paperbark.job..",
        "paperbark.entitlement..",
        "paperbark.offer..",
        "paperbark.ledger..",
        "paperbark.settle.."
    };

    @ArchTest
    static final ArchRule noFloatingPointForTheTrade =
            noClasses()
                    .that()
                    .resideInAnyPackage(TRADE)
                    .should()
                    .dependOnClassesThat()
                    .belongToAnyOf(Double.class, Float.class)
                    .orShould()
                    .callMethod(BigDecimal.class, "doubleValue")
                    .orShould()
                    .callMethod(BigDecimal.class, "floatValue")
                    .because("money and certificates are counted, not measured");

    @ArchTest
    static final ArchRule noFloatingFieldForTheTrade =
            noFields()
                    .that()
                    .areDeclaredInClassesThat()
                    .resideInAnyPackage(TRADE)
                    .should()
                    .haveRawType(FLOATING)
                    .allowEmptyShould(true)
                    .because("money and certificates are counted, not measured");

    @ArchTest
    static final ArchRule noFloatingParameterOrResultForTheTrade =
            noCodeUnits()
                    .that()
                    .areDeclaredInClassesThat()
                    .resideInAnyPackage(TRADE)
                    .should()
                    .haveRawReturnType(FLOATING)
                    .orShould()
                    .haveRawParameterTypes(anyElementThat(FLOATING))
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
