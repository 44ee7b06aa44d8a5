package paperbark.sheet;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;
import java.util.List;

/** An OpenDocument spreadsheet with any rows is read or refused with a reason. */
class OdsFuzz {
    private static final String HEADINGS =
            "<table:table-row><table:table-cell office:value-type=\"string\"><text:p>Job</text:p></table:table-cell>"
                    + "<table:table-cell office:value-type=\"string\"><text:p>Owner</text:p></table:table-cell></table:table-row>";

    private static final List<String> WORDS =
            List.of(
                    "<table:table-row>",
                    "<table:table-row table:number-rows-repeated=\"3\" table:visibility=\"filter\">",
                    "</table:table-row>",
                    "<table:table-cell>",
                    "<table:table-cell office:value-type=\"string\">",
                    "<table:table-cell office:value-type=\"float\" office:value=\"7\">",
                    "<table:table-cell office:value-type=\"date\" office:date-value=\"2026-11-20\">",
                    "<table:table-cell office:value-type=\"time\" office:time-value=\"PT10H\">",
                    "<table:table-cell office:value-type=\"boolean\" office:boolean-value=\"true\">",
                    "<table:table-cell table:number-columns-spanned=\"2\" table:number-rows-spanned=\"2\" office:value-type=\"string\">",
                    "<table:table-cell table:formula=\"of:=[.A1]\" office:value-type=\"string\">",
                    "<table:table-cell table:number-columns-repeated=\"900\"/>",
                    "</table:table-cell>",
                    "<table:covered-table-cell/>",
                    "<text:p>",
                    "</text:p>",
                    "<text:s text:c=\"3\"/>",
                    "<text:span>",
                    "</text:span>",
                    "<office:annotation><text:p>",
                    "</text:p></office:annotation>",
                    "</table:table><table:table table:name=\"B\">",
                    "<table:table-row-group>",
                    "</table:table-row-group>",
                    "office:date-value=\"31\"",
                    "&amp;");

    @FuzzTest(maxDuration = "10m")
    void anOpenSheetIsReadOrRefused(byte[] content) throws IOException {
        String rows = FuzzedFile.spelled(content, WORDS);
        byte[] book = Books.zip(OpenSheetTest.parts(HEADINGS + rows));
        FuzzedFile.with(".ods", book, FuzzedFile::readOrRefused);
    }
}
