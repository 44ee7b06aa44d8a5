package paperbark.entitlement;

import paperbark.finding.FindingCode;
import paperbark.job.Field;

/** Conditions on the heater itself. */
final class SystemCheck {
    private SystemCheck() {}

    /** A heater that was used before earns nothing, under either scheme. */
    static void secondHand(Working working) {
        // rule: ree-regs-2001 reg 19(2): a unit is installed once only in its life.
        if (working.job().heater().secondHand() && working.couldRead(Field.NEW_SYSTEM)) {
            working.reportForAll(
                    working.at(
                            Field.NEW_SYSTEM,
                            FindingCode.SECOND_HAND,
                            "The register says that the heater is not new.",
                            "Leave the certificates out, or correct the entry."));
        }
    }

    /** A tank or collector alone is not a system. */
    static void complete(Working working) {
        // rule: ree-regs-2001 reg 19: certificates are for a complete system; derived from the
        // regulator's advice of October 2006.
        if (!working.job().heater().completeSystem() && working.couldRead(Field.COMPLETE_SYSTEM)) {
            working.report(
                    working.at(
                            Field.COMPLETE_SYSTEM,
                            FindingCode.SYSTEM_INCOMPLETE,
                            "The register says that only a part of a system is installed.",
                            "Leave the STCs out, or correct the entry."));
        }
    }
}
