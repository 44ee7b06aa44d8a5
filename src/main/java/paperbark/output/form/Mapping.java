package paperbark.output.form;

import java.util.List;

/**
 * What goes where on a form.
 *
 * @param file name of the mapping table
 * @param fields values for named fields, in order; empty for a form that is stamped
 * @param stamps texts at places of a page, in order
 * @param flatten whether the filled fields become part of the page
 * @param marked whether the pack's scan mark is drawn onto the form
 */
record Mapping(
        String file, List<FieldRow> fields, List<Stamp> stamps, boolean flatten, boolean marked) {

    /** Keeps the lists from being changed. */
    Mapping {
        fields = List.copyOf(fields);
        stamps = List.copyOf(stamps);
    }

    /**
     * A value for a field.
     *
     * @param row line of the table, from 1
     * @param field full name of the field
     * @param value in the language of templates
     */
    record FieldRow(int row, String field, String value) {}

    /** Where the text of a stamp begins, ends or has its middle. */
    enum Align {
        LEFT,
        CENTRE,
        RIGHT
    }

    /**
     * A text at a place.
     *
     * @param row line of the table, from 1
     * @param page from 1
     * @param x left end in millimetres from the left edge of the page
     * @param y the line that the text stands on, in millimetres from the top edge
     * @param width room for the text in millimetres
     * @param align where in that room it stands
     * @param size in points
     * @param value in the language of templates
     */
    record Stamp(
            int row,
            int page,
            float x,
            float y,
            float width,
            Align align,
            float size,
            String value) {}
}
