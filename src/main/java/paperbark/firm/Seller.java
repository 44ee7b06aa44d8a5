package paperbark.firm;

import java.util.Optional;
import paperbark.value.Address;
import paperbark.value.Phone;

/**
 * Who sold the heater; makers ask for it on the warranty registration.
 *
 * @param name business name
 * @param address business address
 * @param phone business telephone
 */
public record Seller(String name, Address address, Optional<Phone> phone) {}
