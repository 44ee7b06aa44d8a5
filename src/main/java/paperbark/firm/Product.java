package paperbark.firm;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import paperbark.value.Boost;
import paperbark.value.HeaterKind;

/**
 * A water heater model.
 *
 * @param maker as registered
 * @param model as registered
 * @param kind technology and build
 * @param boost what heats when sun or air do not suffice
 * @param litres volumetric capacity
 * @param collectors number of tubes or panels; 0 for heat pumps
 * @param listings what the federal register says, by period
 * @param veec what the Victorian register says
 * @param serialPattern the form of the maker's tank serials
 * @param tankWarrantyYears maker's warranty on the tank
 * @param collectorWarrantyYears maker's warranty on collectors or heat pump
 * @param partsWarrantyYears maker's warranty on other parts
 */
@RecordBuilder
public record Product(
        String maker,
        String model,
        HeaterKind kind,
        Boost boost,
        int litres,
        int collectors,
        List<Listing> listings,
        Optional<VeecInputs> veec,
        Optional<Pattern> serialPattern,
        Optional<Integer> tankWarrantyYears,
        Optional<Integer> collectorWarrantyYears,
        Optional<Integer> partsWarrantyYears) {

    /** Keeps the listings from being changed. */
    public Product {
        listings = List.copyOf(listings);
    }

    /** Whether it is heated by the sun; otherwise it is an air-source heat pump. */
    public boolean isSolar() {
        return kind.isSolar();
    }

    /** Whether its collectors are flat panels; else tubes, or none. */
    public boolean isFlatPlate() {
        return kind == HeaterKind.SOLAR_FLAT;
    }

    /** What it is in words, with what heats when the sun does not suffice. */
    public String inWords() {
        return isSolar() && boost != Boost.NONE
                ? kind.word() + ", " + boost.word() + " boost"
                : kind.word();
    }

    /** Whether a gas burner is part of it. */
    public boolean isGasBoosted() {
        return boost == Boost.GAS;
    }

    /** How many signs a tank serial has, where the form of the maker's serials tells. */
    public Optional<Integer> serialLength() {
        return serialPattern.flatMap(SerialLength::of);
    }

    /** The shortest warranty that the maker gives on any part. */
    public Optional<Integer> shortestWarrantyYears() {
        return Stream.of(tankWarrantyYears, collectorWarrantyYears, partsWarrantyYears)
                .flatMap(Optional::stream)
                .min(Comparator.naturalOrder());
    }

    /** The listing that covers the day of installation. */
    public Optional<Listing> listing(LocalDate day) {
        return listings.stream().filter(l -> l.eligible().contains(day)).findFirst();
    }
}
