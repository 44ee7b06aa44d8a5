package paperbark.outside;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.interactions.Actions;

/** A window of Chromium that a test looks into and types in; closed with {@link #close}. */
public final class Browser implements AutoCloseable {
    // Kept, or its level is forgotten; the driver warns of parts of the browser that are not used.
    private static final Logger LOG = Logger.getLogger("org.openqa.selenium");

    private final ChromeDriver driver;
    private boolean scripted = true;

    /** Opens a window that keeps its things in the folder. */
    public Browser(Path folder) {
        Outside.needs("chromium");
        Outside.needs("chromedriver");
        LOG.setLevel(Level.SEVERE);
        ChromeOptions options = new ChromeOptions();
        options.setBinary(onPath("chromium"));
        options.addArguments(
                "--headless",
                "--no-sandbox",
                "--disable-gpu",
                "--no-first-run",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
                "--user-data-dir=" + folder.resolve("profile"));
        driver =
                new ChromeDriver(
                        new ChromeDriverService.Builder()
                                .usingDriverExecutable(new File(onPath("chromedriver")))
                                .usingAnyFreePort()
                                .build(),
                        options);
        driver.manage().timeouts().scriptTimeout(Duration.ofSeconds(60));
        with("Emulation.setFocusEmulationEnabled", Map.of("enabled", true));
    }

    private static String onPath(String program) {
        for (String folder : System.getenv("PATH").split(File.pathSeparator)) {
            File file = new File(folder, program);
            if (file.canExecute()) {
                return file.getPath();
            }
        }
        throw new AssertionError(program + " is missing");
    }

    /** The window as wide and high as so many CSS pixels. */
    public Browser sized(int width, int height) {
        return with(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", false));
    }

    /** Asks pages for {@code light} or {@code dark} colours. */
    public Browser in(String colours) {
        return with(
                "Emulation.setEmulatedMedia",
                Map.of(
                        "features",
                        List.of(Map.of("name", "prefers-color-scheme", "value", colours))));
    }

    /** Pages opened from now on run no script of their own. */
    public Browser withoutScript() {
        scripted = false;
        return with("Emulation.setScriptExecutionDisabled", Map.of("value", true));
    }

    private Browser with(String command, Map<String, Object> parameters) {
        driver.executeCdpCommand(command, parameters);
        return this;
    }

    /** Opens a file. */
    public Browser open(Path page) {
        driver.get(page.toUri().toString());
        return painted();
    }

    private void reload() {
        driver.navigate().refresh();
        painted();
    }

    /**
     * Takes a step that the page keeps in mind and loads the page again, until that is known to it;
     * fails after twenty times. Chromium on a busy machine may lose what a page kept a moment
     * before it is loaded again.
     */
    public Browser reloadAfter(Runnable step, BooleanSupplier known) {
        for (int i = 0; i < 20; i++) {
            step.run();
            reload();
            if (known.getAsBoolean()) {
                return this;
            }
        }
        throw new AssertionError("the page does not remember");
    }

    /** A key that is pressed before the page was painted may get lost. */
    private Browser painted() {
        if (scripted) {
            driver.executeAsyncScript(
                    "const done = arguments[arguments.length - 1];"
                            + "requestAnimationFrame(() => requestAnimationFrame(() => done()));");
        }
        return this;
    }

    /** What an expression of the page's language says. */
    public Object ask(String expression) {
        return driver.executeScript("return " + expression);
    }

    /** The elements that a selector finds. */
    public List<WebElement> all(String selector) {
        return driver.findElements(By.cssSelector(selector));
    }

    /** The texts of those that are seen. */
    public List<String> seen(String selector) {
        return all(selector).stream()
                .filter(WebElement::isDisplayed)
                .map(WebElement::getText)
                .toList();
    }

    /** The same once there are so many, or after five seconds. */
    public List<String> seen(String selector, int howMany) {
        List<String> seen = seen(selector);
        for (int i = 0; i < 50 && seen.size() != howMany; i++) {
            LockSupport.parkNanos(100_000_000);
            seen = seen(selector);
        }
        return seen;
    }

    /** Presses keys one after another, wherever the page listens. */
    public Browser press(CharSequence... keys) {
        new Actions(driver).sendKeys(keys).perform();
        return this;
    }

    /** Presses the tabulator until what the selector finds listens; fails after 300 times. */
    public Browser tabTo(String selector) {
        for (int i = 0; i < 300; i++) {
            if (Boolean.TRUE.equals(ask("document.activeElement.matches(\"" + selector + "\")"))) {
                return this;
            }
            press(Keys.TAB);
        }
        throw new AssertionError("the keyboard does not reach " + selector);
    }

    /**
     * What axe-core finds wrong with the page by WCAG 2.1, levels A and AA, one line each; with
     * those of its good practices.
     */
    @SuppressWarnings("unchecked")
    public List<String> violations() {
        driver.executeScript(axe());
        Map<String, Object> result =
                (Map<String, Object>)
                        driver.executeAsyncScript(
                                "const done = arguments[arguments.length - 1];"
                                        + "axe.run(document, {runOnly: ['wcag2a', 'wcag2aa',"
                                        + " 'wcag21a', 'wcag21aa', 'best-practice']})"
                                        + ".then(r => done({checked: r.passes.length, wrong:"
                                        + " r.violations.flatMap(v => v.nodes.map(n => v.id + ': '"
                                        + " + n.html + ' ' + n.failureSummary))}));");
        if ((Long) result.get("checked") == 0) {
            throw new AssertionError("axe-core checked nothing");
        }
        return (List<String>) result.get("wrong");
    }

    private static String axe() {
        try (InputStream in = Browser.class.getResourceAsStream("/axe.min.js")) {
            return new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new AssertionError("axe-core cannot be read", e);
        }
    }

    @Override
    public void close() {
        driver.quit();
    }
}
