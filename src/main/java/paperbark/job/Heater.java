package paperbark.job;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import paperbark.firm.Maker;
import paperbark.firm.Product;
import paperbark.value.Serial;

/**
 * The new water heater.
 *
 * @param makerName maker as the register says
 * @param model model as the register says
 * @param maker the maker's row of the makers table
 * @param product the model's row of the products table
 * @param tankSerial serial of the tank, or of an all-in-one heat pump
 * @param collectorSerials serials of collectors
 * @param heatPumpSerial serial of a heat pump standing apart
 * @param secondHand whether it was used before
 * @param completeSystem whether a whole system was installed and not just a tank or collector
 * @param declarationsOn day of the declarations for a solar heater above the size limit
 * @param litresSaid litres that the register names, to be compared with the product table
 * @param collectorsSaid tubes or panels that the register names
 */
@RecordBuilder
public record Heater(
        Optional<String> makerName,
        Optional<String> model,
        Optional<Maker> maker,
        Optional<Product> product,
        Optional<Serial> tankSerial,
        List<Serial> collectorSerials,
        Optional<Serial> heatPumpSerial,
        boolean secondHand,
        boolean completeSystem,
        Optional<LocalDate> declarationsOn,
        Optional<Integer> litresSaid,
        Optional<Integer> collectorsSaid) {

    /** Keeps the serials from being changed. */
    public Heater {
        collectorSerials = List.copyOf(collectorSerials);
    }

    /** The serials of all parts, the tank's first. */
    public List<Serial> serials() {
        return Stream.of(tankSerial.stream(), heatPumpSerial.stream(), collectorSerials.stream())
                .flatMap(s -> s)
                .toList();
    }
}
