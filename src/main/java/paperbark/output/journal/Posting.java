package paperbark.output.journal;

import paperbark.firm.AccountRole;
import paperbark.value.Money;

/**
 * One line of an entry.
 *
 * @param account which account
 * @param amount a debit, or below zero a credit
 * @param remark whose or what for; may be empty
 */
record Posting(AccountRole account, Money amount, String remark) {}
