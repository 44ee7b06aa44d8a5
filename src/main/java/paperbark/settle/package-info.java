/**
 * A buyer's payment advice becomes matches to the claims that the ledger expects money for: from
 * the file to the ledger and back to people.
 *
 * <p>Nothing is matched on a guess: below the sure level the candidates are told and a person
 * decides. Deliberately absent: the clock and the terminal.
 */
package paperbark.settle;
