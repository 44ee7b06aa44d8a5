package paperbark.firm;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import paperbark.value.State;
import paperbark.value.Trade;

/**
 * All of the firm's tables as read.
 *
 * @param firm who the firm is
 * @param people who installs
 * @param makers whose heaters
 * @param products which models
 * @param sellers who sells
 * @param buyers who takes certificates
 * @param offers at what price
 * @param statePapers which compliance certificates
 * @param accounts names of the accounts of the firm's books; empty where it wants no journal
 */
public record FirmTables(
        Firm firm,
        List<Person> people,
        List<Maker> makers,
        List<Product> products,
        List<Seller> sellers,
        List<Buyer> buyers,
        List<Offer> offers,
        List<StatePaper> statePapers,
        Map<AccountRole, String> accounts) {

    /** Keeps the lists from being changed. */
    public FirmTables {
        people = List.copyOf(people);
        makers = List.copyOf(makers);
        products = List.copyOf(products);
        sellers = List.copyOf(sellers);
        buyers = List.copyOf(buyers);
        offers = List.copyOf(offers);
        statePapers = List.copyOf(statePapers);
        accounts = Map.copyOf(accounts);
    }

    /** The person of that name, whatever the case and spacing. */
    public Optional<Person> person(String name) {
        return named(people, Person::name, name);
    }

    /** The maker of that name. */
    public Optional<Maker> maker(String name) {
        return named(makers, Maker::name, name);
    }

    /** The product of that maker and model. */
    public Optional<Product> product(String maker, String model) {
        return named(products, p -> p.maker() + "|" + p.model(), maker + "|" + model);
    }

    /** The seller of that name. */
    public Optional<Seller> seller(String name) {
        return named(sellers, Seller::name, name);
    }

    /** The buyer of that name. */
    public Optional<Buyer> buyer(String name) {
        return named(buyers, Buyer::name, name);
    }

    /** The certificate that a state asks of a trade. */
    public Optional<StatePaper> statePaper(State state, Trade trade) {
        return statePapers.stream()
                .filter(p -> p.state() == state && p.trade() == trade)
                .findFirst();
    }

    private static <T> Optional<T> named(List<T> all, Function<T, String> name, String wanted) {
        String key = Names.key(wanted);
        return all.stream().filter(t -> Names.key(name.apply(t)).equals(key)).findFirst();
    }
}
