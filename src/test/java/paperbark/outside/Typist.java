package paperbark.outside;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * LibreOffice with somebody at the keyboard: a workbook is opened, typed into cell by cell as a
 * person types, with the rules of its cells, and saved in its own form.
 */
public final class Typist {
    private static final String MODULE =
            """
            <?xml version="1.0" encoding="UTF-8"?>
            <!DOCTYPE script:module PUBLIC "-//OpenOffice.org//DTD OfficeDocument 1.0//EN" "module.dtd">
            <script:module xmlns:script="http://openoffice.org/2000/script" script:name="Module1" script:language="StarBasic">%s</script:module>
            """;
    private static final String WORK =
            """
            Sub Typed(document, cell As String, text As String)
              Dim place(0) As New com.sun.star.beans.PropertyValue
              place(0).Name = "ToPoint"
              place(0).Value = cell
              Dim said(0) As New com.sun.star.beans.PropertyValue
              said(0).Name = "StringName"
              said(0).Value = text
              helper = createUnoService("com.sun.star.frame.DispatchHelper")
              frame = document.CurrentController.Frame
              helper.executeDispatch(frame, ".uno:GoToCell", "", 0, place())
              helper.executeDispatch(frame, ".uno:EnterString", "", 0, said())
            End Sub

            Sub Work(book As String, target As String)
              Dim hidden(0) As New com.sun.star.beans.PropertyValue
              hidden(0).Name = "Hidden"
              hidden(0).Value = True
              Dim kind(0) As New com.sun.star.beans.PropertyValue
              kind(0).Name = "FilterName"
              kind(0).Value = "%s"
              document = StarDesktop.loadComponentFromURL(book, "_blank", 0, hidden())
            %s  document.storeToURL(target, kind())
              document.close(True)
            End Sub
            """;

    private final Path folder;

    /** Somebody whose settings lie in the folder. */
    public Typist(Path folder) {
        this.folder = folder;
        if (!Files.isDirectory(folder.resolve("profile/user"))) {
            office("--terminate_after_init");
        }
    }

    /**
     * Types into a workbook and saves it.
     *
     * @param cells what is typed, by its place such as {@code $offers.$E$3}
     */
    public void type(Path workbook, Map<String, String> cells) throws IOException {
        typeAndSave(workbook, cells, workbook);
    }

    /** The same, saved under another name whose ending says in which form. */
    public void typeAndSave(Path workbook, Map<String, String> cells, Path target)
            throws IOException {
        String typed =
                cells.entrySet().stream()
                        .map(
                                e ->
                                        "  Typed(document, %s, %s)\n"
                                                .formatted(
                                                        quoted(e.getKey()), quoted(e.getValue())))
                        .collect(Collectors.joining());
        String form = target.toString().endsWith(".xls") ? "MS Excel 97" : "Calc MS Excel 2007 XML";
        Path basic = Files.createDirectories(folder.resolve("profile/user/basic/Standard"));
        Files.writeString(
                basic.resolve("Module1.xba"),
                MODULE.formatted(
                        WORK.formatted(form, typed)
                                .replace("&", "&amp;")
                                .replace("\"", "&quot;")
                                .replace("<", "&lt;")));
        office("macro:///Standard.Module1.Work(%s,%s)".formatted(workbook.toUri(), target.toUri()));
    }

    private static String quoted(String text) {
        return '"' + text.replace("\"", "\"\"") + '"';
    }

    private void office(String word) {
        Outside.Result result =
                Outside.run(
                        folder,
                        "soffice",
                        "-env:UserInstallation=" + folder.resolve("profile").toUri(),
                        "--headless",
                        word);
        if (result.exitCode() != 0) {
            throw new AssertionError(result.err());
        }
    }
}
