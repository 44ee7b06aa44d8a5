package paperbark.job;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import paperbark.finding.FindingCode;
import paperbark.firm.FirmTables;
import paperbark.firm.Maker;
import paperbark.firm.Product;
import paperbark.value.Serial;

/** Reads what a row says of the heater that was installed: maker, model, serials, size. */
final class HeaterReader {
    private HeaterReader() {}

    /** The heater of a row; maker and model as the tables know them, where they do. */
    static Heater of(RowFacts facts, FirmTables tables) {
        Optional<String> makerName = facts.text(Field.MAKER);
        Optional<String> model = facts.text(Field.MODEL);
        Optional<Maker> maker =
                facts.named(
                        Field.MAKER,
                        FindingCode.MAKER_UNKNOWN,
                        tables::maker,
                        () -> tables.makers().stream().map(Maker::name).toList());
        return new Heater(
                makerName,
                model,
                maker,
                maker.map(Maker::name).flatMap(name -> product(facts, name, tables)),
                facts.value(Field.TANK_SERIAL, FindingCode.SERIAL_WRONG, Serial::parse),
                serials(facts),
                facts.value(Field.HEAT_PUMP_SERIAL, FindingCode.SERIAL_WRONG, Serial::parse),
                !facts.yesNo(Field.NEW_SYSTEM).orElse(true),
                facts.yesNo(Field.COMPLETE_SYSTEM).orElse(true),
                facts.day(Field.DECLARATIONS_DATE),
                facts.whole(Field.LITRES),
                facts.whole(Field.COLLECTORS));
    }

    private static Optional<Product> product(RowFacts facts, String maker, FirmTables tables) {
        return facts.named(
                Field.MODEL,
                FindingCode.MODEL_UNKNOWN,
                m -> tables.product(maker, m),
                () ->
                        tables.products().stream()
                                .filter(p -> p.maker().equalsIgnoreCase(maker))
                                .map(Product::model)
                                .distinct()
                                .toList());
    }

    private static List<Serial> serials(RowFacts facts) {
        List<Serial> serials = new ArrayList<>();
        facts.text(Field.COLLECTOR_SERIALS)
                .ifPresent(
                        text ->
                                Arrays.stream(split(text))
                                        .filter(part -> !part.isBlank())
                                        .forEach(
                                                part ->
                                                        facts.value(
                                                                        Field.COLLECTOR_SERIALS,
                                                                        FindingCode.SERIAL_WRONG,
                                                                        t -> Serial.parse(part))
                                                                .ifPresent(serials::add)));
        return serials;
    }

    /**
     * By comma or semicolon; by spaces where every part looks like a serial, as from lines within a
     * cell.
     */
    private static String[] split(String text) {
        String[] words = text.split(" ");
        boolean eachASerial =
                words.length > 1
                        && Arrays.stream(words)
                                .allMatch(w -> w.length() >= 5 && w.matches(".*[0-9].*"));
        return eachASerial && !text.matches(".*[,;].*") ? words : text.split("[,;]");
    }
}
