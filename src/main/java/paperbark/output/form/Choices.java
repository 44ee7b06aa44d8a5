package paperbark.output.form;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSString;
import org.apache.pdfbox.pdmodel.interactive.form.PDChoice;
import org.apache.pdfbox.pdmodel.interactive.form.PDComboBox;

/** Lists to choose from. */
final class Choices {
    private Choices() {}

    /**
     * One choice.
     *
     * @param stored what the form hands on
     * @param shown what stands on the page
     */
    record Choice(String stored, String shown) {
        private boolean isMeantBy(String said) {
            return stored.equalsIgnoreCase(said) || shown.equalsIgnoreCase(said);
        }
    }

    /** What can be chosen, in the order of the form. */
    static List<Choice> of(PDChoice field) {
        List<Choice> all = new ArrayList<>();
        COSBase options = field.getCOSObject().getDictionaryObject(COSName.OPT);
        if (options instanceof COSArray array) {
            for (int i = 0; i < array.size(); i++) {
                COSBase option = array.getObject(i);
                if (option instanceof COSString text) {
                    all.add(new Choice(text.getString(), text.getString()));
                } else if (option instanceof COSArray pair
                        && pair.size() == 2
                        && pair.getObject(0) instanceof COSString stored
                        && pair.getObject(1) instanceof COSString shown) {
                    all.add(new Choice(stored.getString(), shown.getString()));
                }
            }
        }
        return all;
    }

    /**
     * The choices that a value means, one a line; a value of one's own where the field lets people
     * type one. Empty when a line means none of them.
     */
    static Optional<List<Choice>> meant(PDChoice field, String value) {
        List<Choice> all = of(field);
        List<Choice> meant = new ArrayList<>();
        for (String line : value.isEmpty() ? new String[0] : value.split("\\R")) {
            String said = line.strip();
            Optional<Choice> found = all.stream().filter(c -> c.isMeantBy(said)).findFirst();
            boolean typed = field instanceof PDComboBox combo && combo.isEdit();
            if (found.isEmpty() && !typed) {
                return Optional.empty();
            }
            meant.add(found.orElse(new Choice(said, said)));
        }
        return meant.size() > 1 && !field.isMultiSelect() ? Optional.empty() : Optional.of(meant);
    }

    /** Stores what was chosen. */
    static void set(PDChoice field, List<Choice> chosen) {
        field.getCOSObject().removeItem(COSName.I);
        if (chosen.size() == 1) {
            field.getCOSObject().setString(COSName.V, chosen.get(0).stored());
            return;
        }
        COSArray values = new COSArray();
        chosen.forEach(c -> values.add(new COSString(c.stored())));
        field.getCOSObject().setItem(COSName.V, values);
    }
}
