package paperbark.output.workbook;

import java.util.List;
import javax.xml.namespace.QName;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xddf.usermodel.XDDFColor;
import org.apache.poi.xddf.usermodel.XDDFSolidFillProperties;
import org.apache.poi.xddf.usermodel.chart.AxisCrosses;
import org.apache.poi.xddf.usermodel.chart.AxisPosition;
import org.apache.poi.xddf.usermodel.chart.BarDirection;
import org.apache.poi.xddf.usermodel.chart.BarGrouping;
import org.apache.poi.xddf.usermodel.chart.ChartTypes;
import org.apache.poi.xddf.usermodel.chart.LegendPosition;
import org.apache.poi.xddf.usermodel.chart.XDDFBarChartData;
import org.apache.poi.xddf.usermodel.chart.XDDFCategoryAxis;
import org.apache.poi.xddf.usermodel.chart.XDDFChartData;
import org.apache.poi.xddf.usermodel.chart.XDDFDataSource;
import org.apache.poi.xddf.usermodel.chart.XDDFDataSourcesFactory;
import org.apache.poi.xddf.usermodel.chart.XDDFNumericalDataSource;
import org.apache.poi.xddf.usermodel.chart.XDDFValueAxis;
import org.apache.poi.xssf.usermodel.XSSFChart;
import org.apache.poi.xssf.usermodel.XSSFDrawing;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.xmlbeans.XmlCursor;
import paperbark.output.table.Table;
import paperbark.output.table.TableColumn;
import paperbark.output.table.WeeksTable;

/** The spreadsheet's own chart of money by week: a column a week, a layer a buyer. */
final class WeeksChart {
    /** Rows that the chart covers. */
    static final int HEIGHT_ROWS = 22;

    // With more weeks the chart is printed on a page of its own.
    private static final int WEEKS_ON_ONE_PAGE = 12;

    // Told apart in black and white too: each darker or lighter than its neighbour.
    private static final List<String> COLOURS =
            List.of("1F5C6B", "9CC3C9", "C77D2E", "F0CDA0", "5B6C3A", "C3CFA6", "6B4A6E", "CDB6CF");

    private final Placement place;
    private final XSSFSheet sheet;

    private WeeksChart(Placement place, XSSFSheet sheet) {
        this.place = place;
        this.sheet = sheet;
    }

    /** Draws the chart below the table; without a week there is none. */
    static void draw(XSSFSheet sheet, Placement place) {
        if (!place.table().rows().isEmpty()) {
            new WeeksChart(place, sheet).draw();
            if (place.table().rows().size() <= WEEKS_ON_ONE_PAGE) {
                sheet.getPrintSetup().setFitHeight((short) 1);
            } else {
                sheet.setRowBreak(place.afterRow());
            }
        }
    }

    private void draw() {
        XSSFDrawing drawing = sheet.createDrawingPatriarch();
        int top = place.afterRow() + 1;
        int width = place.table().columns().size();
        XSSFChart chart =
                drawing.createChart(
                        drawing.createAnchor(0, 0, 0, 0, 0, top, width, top + HEIGHT_ROWS));
        chart.setTitleText("Money due to the firm, by week and buyer");
        chart.setTitleOverlay(false);
        chart.getOrAddLegend().setPosition(LegendPosition.BOTTOM);
        XDDFCategoryAxis weeks = chart.createCategoryAxis(AxisPosition.BOTTOM);
        weeks.setTitle("In the week from");
        XDDFValueAxis dollars = chart.createValueAxis(AxisPosition.LEFT);
        dollars.setTitle("Dollars");
        dollars.setNumberFormat("$#,##0");
        dollars.setCrosses(AxisCrosses.AUTO_ZERO);
        XDDFBarChartData bars = (XDDFBarChartData) chart.createData(ChartTypes.BAR, weeks, dollars);
        bars.setBarDirection(BarDirection.COL);
        bars.setBarGrouping(BarGrouping.STACKED);
        bars.setVaryColors(false);
        List<TableColumn> buyers = WeeksTable.buyers(place.table());
        for (int i = 0; i < buyers.size(); i++) {
            layer(bars, buyers.get(i), COLOURS.get(i % COLOURS.size()));
        }
        chart.plot(bars);
        stack(chart);
    }

    /** Layers of one column stand on each other only if they overlap in full, in percent. */
    private static void stack(XSSFChart chart) {
        // Written as plain XML: the library leaves this number's type out of its schemas.
        try (XmlCursor overlap =
                chart.getCTChart().getPlotArea().getBarChartArray(0).addNewOverlap().newCursor()) {
            overlap.setAttributeText(new QName("val"), "100");
        }
    }

    private void layer(XDDFBarChartData bars, TableColumn buyer, String colour) {
        Table table = place.table();
        XDDFDataSource<String> weeks =
                XDDFDataSourcesFactory.fromArray(
                        table.rows().stream()
                                .map(row -> table.value(row, "week").shown())
                                .toArray(String[]::new),
                        range(table.column("week")));
        XDDFNumericalDataSource<Double> dollars =
                XDDFDataSourcesFactory.fromArray(
                        table.rows().stream()
                                .map(row -> table.value(row, buyer.key()).amount().doubleValue())
                                .toArray(Double[]::new),
                        range(table.column(buyer.key())));
        XDDFChartData.Series series = bars.addSeries(weeks, dollars);
        series.setTitle(
                buyer.heading(),
                new CellReference(
                        place.sheet(), place.headingRow(), table.column(buyer.key()), true, true));
        series.setFillProperties(new XDDFSolidFillProperties(XDDFColor.from(rgb(colour))));
    }

    private static byte[] rgb(String hex) {
        byte[] colour = new byte[3];
        for (int i = 0; i < 3; i++) {
            colour[i] = (byte) Integer.parseInt(hex.substring(2 * i, 2 * i + 2), 16);
        }
        return colour;
    }

    private String range(int column) {
        return new CellRangeAddress(place.firstRow(), place.lastRow(), column, column)
                .formatAsString(place.sheet(), true);
    }
}
