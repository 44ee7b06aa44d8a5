package paperbark.ledger;

/**
 * Who a ledger is; its seals begin with it.
 *
 * @param id made once, at random
 * @param madeAt moment of making, as it was written down
 */
public record LedgerId(String id, String madeAt) {}
