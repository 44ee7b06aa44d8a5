package paperbark.offer;

import paperbark.value.Money;

/**
 * Who gets a buyer's payment, and what the tax office gets of it. GST that the buyer pays on top
 * belongs to the owner's invoice: an owner who is paid has it, otherwise it is nobody's here, and
 * never the firm's.
 *
 * @param toOwner paid to the owner's account
 * @param ofTop how much of that comes out of the GST paid on top
 * @param toFirm paid to the firm's account; below zero where the owner was promised more than the
 *     buyer pays, so that the firm must add it
 * @param benefit what the owner has of the assignment: the discount given, or what is paid to them
 * @param beyond what the firm gets beyond the discount that it gave; below zero where it gets less
 * @param firmGst GST that the firm owes on what it gets beyond the discount
 * @param ownerGst GST that an owner registered and in business owes on the assignment
 */
public record Split(
        Money toOwner,
        Money ofTop,
        Money toFirm,
        Money benefit,
        Money beyond,
        Money firmGst,
        Money ownerGst) {

    /** What stays with the firm of the payment, before the cost of waiting. */
    public Money netToFirm() {
        return toFirm.minus(firmGst);
    }

    /** What stays with the owner of the assignment. */
    public Money netToOwner() {
        return benefit.minus(ownerGst);
    }
}
