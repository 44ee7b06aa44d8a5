package paperbark.value;

import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A postal or site address as far as it is known.
 *
 * @param street number and street, or what stands in its place (lot number, property name)
 * @param suburb suburb, town or locality
 * @param state state or territory
 * @param postcode four digits
 */
public record Address(
        Optional<String> street,
        Optional<String> suburb,
        Optional<State> state,
        Optional<Postcode> postcode) {
    /** Nothing known. */
    public static final Address UNKNOWN =
            new Address(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

    /** Whether nothing at all is known. */
    public boolean isUnknown() {
        return equals(UNKNOWN);
    }

    /** Whether street, suburb, state and postcode are all known. */
    public boolean isComplete() {
        return street.isPresent()
                && suburb.isPresent()
                && state.isPresent()
                && postcode.isPresent();
    }

    /**
     * Suburb, state and postcode as the second line of an address; empty text where none is known.
     */
    public String locality() {
        return Stream.of(suburb, state.map(State::name), postcode.map(Postcode::digits))
                .flatMap(Optional::stream)
                .collect(Collectors.joining(" "));
    }

    /** On one line: {@code 4 Heron Lane, Ballan VIC 3342}. */
    @Override
    public String toString() {
        return Stream.of(street.orElse(""), locality())
                .filter(s -> !s.isEmpty())
                .collect(Collectors.joining(", "));
    }
}
