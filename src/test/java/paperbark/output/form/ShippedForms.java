package paperbark.output.form;

import java.util.List;

/**
 * Draws the two made-up buyer's forms that are shipped as examples: one with fields and one
 * without. Layout and words are ours.
 */
final class ShippedForms {
    private static final float LEFT = 18;
    private static final float LABEL = 8.5f;

    private ShippedForms() {}

    private static FormSketch sheet(String title, String lead) {
        return new FormSketch()
                .strong(LEFT, 18, 9, "WHIMBREL EXCHANGE")
                .words(LEFT, 22.5f, 8, "5 Abacus Arcade, Sydney NSW 2000 · ABN 42 000 000 003")
                .strong(LEFT, 33, 16, title)
                .words(LEFT, 39, 9.5f, lead)
                .line(LEFT, 42, 174);
    }

    private static void heading(FormSketch form, float y, String text) {
        form.strong(LEFT, y, 10.5f, text);
    }

    private static void label(FormSketch form, float x, float y, String text) {
        form.words(x, y, LABEL, text);
    }

    /** The transfer of STCs, with fields of every kind. */
    static byte[] stc() {
        FormSketch form =
                sheet("Transfer slip: STCs", "Filled in by the installer, signed by the owner.");
        owner(form);
        heater(form);
        deal(form);
        statements(form, 181, "D  What the owner states", STC_STATES);
        signatures(form, 230, "Owner");
        return form.pdf();
    }

    private static void owner(FormSketch form) {
        heading(form, 48, "A  Who gives");
        label(form, LEFT, 55, "Owner");
        form.text("Owner", 42, 50, 74, 7).setRequired(true);
        label(form, 120, 55, "Our reference");
        form.text("Our reference", 146, 50, 46, 7);
        label(form, LEFT, 64, "ABN, if any");
        form.comb("Owner ABN", 42, 59, 5.5f, 11);
        form.tick("GST", 120, 60.5f, "Yes");
        label(form, 126, 64, "registered for GST, heater used in business");
        label(form, LEFT, 73, "Post goes to");
        form.lines("Post", 42, 68, 74, 12);
        label(form, 120, 73, "Phone");
        form.text("Phone", 146, 68, 46, 7);
        label(form, 120, 82, "E-mail");
        form.text("E-mail", 146, 77, 46, 7);
    }

    private static void heater(FormSketch form) {
        heading(form, 91, "B  What was put in, and where");
        label(form, LEFT, 98, "Site");
        form.lines("Site", 42, 93, 74, 12);
        label(form, 120, 98, "Day it worked");
        form.date("Day it worked", 146, 93, 30, "AFDate_FormatEx(\"dd/mm/yyyy\");")
                .setRequired(true);
        label(form, 120, 107, "Zone");
        form.choice("Zone", 146, 102, 16, "1", "2", "3", "4", "5");
        label(form, LEFT, 112, "Maker, model");
        form.text("Heater", 42, 107, 74, 7);
        label(form, LEFT, 121, "Tank serial");
        form.text("Tank serial", 42, 116, 74, 7);
        label(form, 120, 116, "It was");
        form.choice("Kind", 146, 111, 46)
                .setOptions(
                        List.of("solar", "heat pump"), List.of("a solar heater", "a heat pump"));
    }

    private static void deal(FormSketch form) {
        heading(form, 132, "C  What is given, and for what");
        label(form, LEFT, 139, "STCs");
        form.text("STCs", 42, 134, 24, 7).setQ(1);
        label(form, 70, 139, "for");
        form.text("Benefit", 77, 134, 39, 7).setQ(2);
        form.radio("Paid", 120, new float[] {133, 139, 145}, "discount", "payment", "other");
        label(form, 126, 136.2f, "taken off the price of the work");
        label(form, 126, 142.2f, "paid into the account below");
        label(form, 126, 148.2f, "something else, described overleaf");
        label(form, LEFT, 148, "Account name");
        form.text("Account name", 42, 143, 74, 7);
        label(form, LEFT, 157, "BSB");
        form.comb("BSB", 42, 152, 5.5f, 6);
        label(form, 78, 157, "Account");
        form.comb("Account", 92, 152, 5.5f, 9);
        label(form, LEFT, 166, "Installer");
        form.text("Installer", 42, 161, 74, 7);
        label(form, 120, 166, "Licence");
        form.text("Licence", 146, 161, 46, 7);
        label(form, LEFT, 175, "Certificates");
        form.text("Certificates", 42, 170, 150, 7);
    }

    private static final List<String> STC_STATES =
            List.of(
                    "1  I own the heater named above, or may sign for its owner. It works, and I did not sign before it did.",
                    "2  It was new, and nobody has claimed certificates for it before.",
                    "3  I give the right to create these STCs to Whimbrel Exchange for what stands in C, and to nobody else.",
                    "4  Officers may come at a reasonable time, look at the heater and ring me about it.",
                    "5  What stands here may be passed to the regulator, for this claim only.",
                    "6  All of it is true and complete. I know that wrong statements can bring a penalty for each certificate.");

    private static void statements(FormSketch form, float y, String title, List<String> lines) {
        heading(form, y + 3, title);
        float at = y + 9;
        for (String line : lines) {
            form.words(LEFT, at, 9, line);
            at += 5.5f;
        }
    }

    private static void signatures(FormSketch form, float y, String first) {
        for (String who : List.of(first, "Installer: I put in this heater, whole and new")) {
            form.words(LEFT, y, LABEL, who);
            form.box(LEFT, y + 2, 120, 13).box(142, y + 2, 50, 13);
            form.words(LEFT + 1, y + 5, 7, "signature").words(143, y + 5, 7, "date");
            y += 22;
        }
    }

    /** The transfer of VEECs: a form without fields, whose lines are stamped. */
    static byte[] veec() {
        FormSketch form =
                sheet("Transfer slip: VEECs", "Print clearly. Every line belongs to one upgrade.");
        float y = 54;
        for (String line :
                List.of(
                        "Reference",
                        "Consumer",
                        "Phone",
                        "Premises",
                        "",
                        "Taken out",
                        "Put in",
                        "Serial number",
                        "Day of the work",
                        "Activity",
                        "VEECs",
                        "Benefit",
                        "Installer, licence")) {
            label(form, LEFT, y, line);
            form.line(60, y + 1, 132);
            y += 9;
        }
        form.box(60, y - 4, 4, 4).words(66, y - 0.6f, LABEL, "benefit taken off the price");
        form.box(120, y - 4, 4, 4).words(126, y - 0.6f, LABEL, "benefit paid to the consumer");
        statements(form, 182, "What the consumer states", VEEC_STATES);
        signatures(form, 226, "Consumer");
        return form.pdf();
    }

    private static final List<String> VEEC_STATES =
            List.of(
                    "1  I am the consumer at the premises above, or may sign for the consumer. The work is done.",
                    "2  The heater taken out will not be used again. The new one was not used before.",
                    "3  I give the right to create VEECs for this upgrade to Whimbrel Exchange for the benefit above.",
                    "4  I have given this right to nobody else, and officers may visit to look at the upgrade.",
                    "5  All of it is true and complete. I know that false statements can be punished.");
}
