package paperbark.job;

import java.util.Optional;
import paperbark.firm.Licence;
import paperbark.firm.Person;
import paperbark.firm.Seller;

/**
 * Who worked and who sold.
 *
 * @param plumber the installing plumber
 * @param plumberLicence the plumber's licence for the site's state on the day
 * @param electrician who wired the heater
 * @param electricianLicence the electrician's licence for the site's state on the day
 * @param seller who sold the heater
 */
public record Trades(
        Optional<Person> plumber,
        Optional<Licence> plumberLicence,
        Optional<Person> electrician,
        Optional<Licence> electricianLicence,
        Optional<Seller> seller) {}
