/**
 * A buyer's payment advice becomes matches to the claims that the ledger expects money for.
 *
 * <p>Nothing is matched on a guess: below the sure level the candidates are told and a person
 * decides. Deliberately absent: files but the advice, the clock, and the printing of results.
 */
package paperbark.settle;
