package paperbark.output.journal;

import java.util.List;

/**
 * The journal of a withdrawal: the sales of its jobs are taken back as they were booked, and
 * nothing is booked in their place.
 *
 * @param withdrawal name of the entry in the ledger
 * @param sales what earlier journals booked
 */
public record CalledOff(String withdrawal, List<TakenBack> sales) {

    /** Keeps the list from being changed. */
    public CalledOff {
        sales = List.copyOf(sales);
    }

    private List<Booked> booked() {
        return sales.stream().flatMap(then -> then.back().stream()).toList();
    }

    /** As CSV, with the columns of a batch's journal. */
    public byte[] csv() {
        return JournalText.csv(booked());
    }

    /** The same as plain text that double-entry programs read. */
    public byte[] plainText() {
        JournalText text =
                new JournalText(
                        "Sales called off by " + withdrawal,
                        "Jobs that were cancelled or withdrawn after a batch had booked them.",
                        booked());
        sales.forEach(text::takenBack);
        return text.bytes();
    }
}
