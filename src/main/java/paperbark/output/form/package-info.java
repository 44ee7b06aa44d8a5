/**
 * Buyers' and makers' own PDF forms, filled in by a mapping table: fields, or text at places of the
 * page where a form has no fields.
 *
 * <p>A {@link paperbark.output.CaseFile} and the template folder enter; finished pages and findings
 * leave. Deliberately absent: the scripts of a form, which are never run, only read for the form of
 * a date; writing files; any file outside the template folder; and the other papers of a pack.
 */
package paperbark.output.form;
