package paperbark.job;

import java.util.Optional;
import paperbark.value.Address;

/**
 * Where the heater stands.
 *
 * @param address street address that an officer can find
 * @param position where on the property, where several heaters share an address
 * @param business whether the premises are used for business; empty where not said
 */
public record Site(Address address, Optional<String> position, Optional<Boolean> business) {}
