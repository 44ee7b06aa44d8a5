package paperbark.firm;

import java.util.List;
import java.util.Map;
import java.util.Optional;
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
 * @param words what the firm calls things
 * @param accounts names of the accounts of the firm's books; empty where it wants no journal
 */
public record FirmTables(
        Firm firm,
        ByName<Person> people,
        ByName<Maker> makers,
        ByName<Product> products,
        ByName<Seller> sellers,
        ByName<Buyer> buyers,
        List<Offer> offers,
        List<StatePaper> statePapers,
        Words words,
        Map<AccountRole, String> accounts) {

    /** Keeps the lists from being changed. */
    public FirmTables {
        offers = List.copyOf(offers);
        statePapers = List.copyOf(statePapers);
        accounts = Map.copyOf(accounts);
    }

    /** The person of that name, whatever the case and spacing. */
    public Optional<Person> person(String name) {
        return people.named(name);
    }

    /** The maker of that name. */
    public Optional<Maker> maker(String name) {
        return makers.named(name);
    }

    /** The product of that maker and model. */
    public Optional<Product> product(String maker, String model) {
        return products.named(TakenNames.model(maker, model));
    }

    /** The seller of that name. */
    public Optional<Seller> seller(String name) {
        return sellers.named(name);
    }

    /** The buyer of that name. */
    public Optional<Buyer> buyer(String name) {
        return buyers.named(name);
    }

    /** The certificate that a state asks of a trade. */
    public Optional<StatePaper> statePaper(State state, Trade trade) {
        return statePapers.stream()
                .filter(p -> p.state() == state && p.trade() == trade)
                .findFirst();
    }
}
