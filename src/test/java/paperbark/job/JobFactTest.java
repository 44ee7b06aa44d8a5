package paperbark.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.reflect.Constructor;
import java.lang.reflect.RecordComponent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.BiConsumer;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import paperbark.value.Address;
import paperbark.value.SchemeName;

/**
 * {@code src/test/resources/job/printed-facts.txt} says of every component of a job under which
 * names it is printed into a ledger, or why it is left out. The names are what ledgers store: a
 * component may be renamed, and the line with it, but a name stays what it is.
 */
class JobFactTest {
    private static final Path LIST = Path.of("src/test/resources/job/printed-facts.txt");

    /** Every column of a register, filled. */
    private static final Job FULL =
            Register.job(
                    """
                    Job,Stage,Crew,Visit order,Visit date,Installed on,Assignment signed on,Corrects,Owner,Second owner,Owner's contact,\
                    Owner's ABN,Owner registered for GST,Owner's phone,Owner's e-mail,Postal street,Postal suburb,\
                    Postal state,Postal postcode,Position on site,Business premises,Tank serial,Collector serials,\
                    Heat pump serial,Litres,Tubes or panels,New,Complete system,Large-system declarations on,Plumber,\
                    Electrician,Seller,Plumbing certificate,Plumbing certificate date,Electrical certificate,\
                    Electrical certificate date,Old heater,Old maker,Old model,Old serial,Old heater disabled how,\
                    Old heater disposal,Old heater removed on,Claim STCs,STC buyer,STC zone,STC count,STC benefit,\
                    Claim VEECs,VEEC buyer,VEEC count,VEEC benefit,Full price,Co-payment,Benefit form,Account name,BSB,\
                    Account number,Office note
                    T-1,installed,Red,2,16/11/2026,16/11/2026,16/11/2026,the serial,Ada Amberwood,Abe Amberwood,Bea Boxthorn,\
                    99 000 000 000,no,0491 570 006,ada@example.com,7 Kettle Row,Ballarat,VIC,3350,roof,no,\
                    2610040004512101,C-101; C-102,HP-771,270,22,yes,yes,16/11/2026,Wanda Wattle,Tilly Teatree,\
                    Mudlark Merchants,DEMO-1,17/11/2026,DEMO-E1,16/11/2026,gas storage,Oldmake,OM-250,OS-1,drained,\
                    scrap yard,15/11/2026,yes,Kestrel Certificates,4,21,504.00,yes,Pipit and Wren,12,300.00,4620.00,\
                    350.00,payment to the owner,Ada Amberwood,000-000,12345678,ring first
                    """);

    private static final String LEFT_OUT = "- ";

    @Test
    void everyComponentOfAJobIsPrintedUnderItsNamesOrLeftOutOnPurpose() throws IOException {
        Map<String, String> listed = new TreeMap<>();
        for (String line : Files.readAllLines(LIST)) {
            if (!line.startsWith("#") && !line.isBlank()) {
                String[] both = line.split(": ", 2);
                listed.put(both[0], both[1].startsWith(LEFT_OUT) ? "" : both[1]);
            }
        }
        assertThat(changes()).isEqualTo(listed);
    }

    @Test
    void bankDetailsContactDataAndAbnAreLeftOut() throws IOException {
        assertThat(changes())
                .containsEntry("payment.bsb", "")
                .containsEntry("payment.account", "")
                .containsEntry("payment.accountName", "")
                .containsEntry("owner.phone", "")
                .containsEntry("owner.email", "")
                .containsEntry("owner.contact", "")
                .containsEntry("owner.abn", "");
    }

    @Test
    void noTwoFactsShareAName() {
        assertThat(JobFact.ALL).extracting(JobFact::name).doesNotHaveDuplicates();
    }

    @Test
    void aFactIsCalledAsTheFirmsRegisterCallsIt() {
        Job job = Register.job("TANK SERIAL\n2610040004512101\n");
        JobFact serial = JobFact.of(Field.TANK_SERIAL).iterator().next();
        assertThat(serial.heading(job)).isEqualTo("TANK SERIAL");
        assertThat(serial.name()).isEqualTo("tank-serial");
        assertThat(JobFact.of(Field.CREW).iterator().next().heading(job)).isEqualTo("Crew");
    }

    @Test
    void howASerialWasWrittenDoesNotCount() {
        JobFact serial = JobFact.of(Field.TANK_SERIAL).iterator().next();
        assertThat(serial.in(Register.job("Tank serial\n26-1004 0004512101\n")))
                .isEqualTo(serial.in(Register.job("Tank serial\n2610040004512101\n")));
    }

    /** By component, the names of the facts that differ once it is emptied or turned round. */
    private static Map<String, String> changes() {
        Job booked = (Job) with(FULL, "stage", stage -> Stage.BOOKED);
        Map<String, String> changes = new TreeMap<>();
        for (Job job : List.of(FULL, booked)) {
            each(
                    "",
                    job,
                    (path, changed) -> {
                        String names =
                                JobFact.ALL.stream()
                                        .filter(f -> !f.in(job).equals(f.in((Job) changed)))
                                        .map(JobFact::name)
                                        .map(JobFactTest::withoutScheme)
                                        .collect(Collectors.joining(", "));
                        changes.merge(path, names, (one, other) -> one.isEmpty() ? other : one);
                    });
        }
        return changes;
    }

    private static String withoutScheme(String name) {
        return Arrays.stream(SchemeName.values())
                .filter(scheme -> name.startsWith(scheme.key() + "-"))
                .map(scheme -> name.replaceFirst(scheme.key(), "SCHEME"))
                .findFirst()
                .orElse(name);
    }

    /** Each component with the record as it is without it, at any depth. */
    private static void each(String before, Record record, BiConsumer<String, Record> take) {
        for (RecordComponent component : record.getClass().getRecordComponents()) {
            String path = before + component.getName();
            Object value = value(component, record);
            Object inner = value instanceof Optional<?> maybe ? maybe.orElse(null) : value;
            if (inner instanceof Map<?, ?> claims) {
                claims.forEach(
                        (scheme, claim) ->
                                each(
                                        path + ".SCHEME.",
                                        (Record) claim,
                                        (deeper, changed) ->
                                                take.accept(
                                                        deeper,
                                                        with(
                                                                record,
                                                                component.getName(),
                                                                old ->
                                                                        put(
                                                                                old, scheme,
                                                                                changed)))));
            } else if (inner instanceof Record part && isOfJob(part)) {
                each(
                        path + ".",
                        part,
                        (deeper, changed) ->
                                take.accept(
                                        deeper,
                                        with(
                                                record,
                                                component.getName(),
                                                old ->
                                                        old instanceof Optional<?>
                                                                ? Optional.of(changed)
                                                                : changed)));
            } else {
                assertThat(path.endsWith(".declaredZone") || !Optional.empty().equals(value))
                        .as(path + " must be filled for this test")
                        .isTrue();
                take.accept(path, with(record, component.getName(), JobFactTest::other));
            }
        }
    }

    private static Object put(Object claims, Object scheme, Record claim) {
        Map<SchemeName, Claim> changed = new EnumMap<>(SchemeName.class);
        ((Map<?, ?>) claims).forEach((key, value) -> changed.put((SchemeName) key, (Claim) value));
        changed.put((SchemeName) scheme, (Claim) claim);
        return changed;
    }

    private static boolean isOfJob(Record record) {
        return record instanceof Address
                || record.getClass().getPackage() == Job.class.getPackage()
                        && !(record instanceof Origin);
    }

    private static Object other(Object value) {
        if (value instanceof Optional<?>) {
            return Optional.empty();
        }
        if (value instanceof List<?>) {
            return List.of();
        }
        if (value instanceof Boolean yes) {
            return !yes;
        }
        if (value instanceof String text) {
            return text + "x";
        }
        if (value instanceof Enum<?> one) {
            Object[] all = one.getDeclaringClass().getEnumConstants();
            return all[(one.ordinal() + 1) % all.length];
        }
        // Where it was read and what could not be: of no fact.
        return value;
    }

    private static Record with(Record record, String name, UnaryOperator<Object> change) {
        RecordComponent[] components = record.getClass().getRecordComponents();
        Object[] values =
                Arrays.stream(components)
                        .map(
                                c ->
                                        c.getName().equals(name)
                                                ? change.apply(value(c, record))
                                                : value(c, record))
                        .toArray();
        try {
            Constructor<? extends Record> made =
                    record.getClass()
                            .getDeclaredConstructor(
                                    Stream.of(components)
                                            .map(RecordComponent::getType)
                                            .toArray(Class[]::new));
            return made.newInstance(values);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Object value(RecordComponent component, Record record) {
        try {
            return component.getAccessor().invoke(record);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }
}
