package paperbark.output.journal;

/**
 * An earlier entry that a journal takes back.
 *
 * @param batch whose journal has it
 * @param entry the entry as it stands there
 */
public record TakenBack(String batch, Booked entry) {}
