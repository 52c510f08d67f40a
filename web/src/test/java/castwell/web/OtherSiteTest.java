package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.web.RawHttp.Answer;
import castwell.web.http.guard.Refusals.Kind;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.sun.net.httpserver.HttpServer;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A page of somebody else's, open in a browser on this computer or in one that is in, can't do
 * anything here.
 */
@Tag("browser")
@Timeout(300)
class OtherSiteTest {
  private static final String ARROW = "{\"name\":\"Intruder\",\"mass_gr\":500}";

  @TempDir static Path folder;
  @TempDir static Path wideFolder;
  private static Served served;
  private static Served wide;

  @BeforeAll
  static void serve() {
    served = Served.withoutBoard(folder, "range");
    wide = Served.forOthers(wideFolder, "");
  }

  @AfterAll
  static void end() {
    served.close();
    wide.close();
  }

  private static Answer post(Served to, String... head) {
    return RawHttp.ask(
        to.httpPort(),
        ARROW,
        Stream.concat(
                Stream.of("POST /api/arrows HTTP/1.1", "Content-Type: application/json"),
                Stream.of(head))
            .toArray(String[]::new));
  }

  private static void assertNothingCameIn() {
    assertThat(arrows(served)).isZero();
    assertThat(arrows(wide)).isZero();
  }

  private static long arrows(Served of) {
    return of.store()
        .<Long>read(
            t -> t.rack().arrows().stream().filter(a -> a.name().equals("Intruder")).count());
  }

  /** A name of somebody's own that was made to point at 127.0.0.1 (DNS rebinding). */
  @ParameterizedTest
  @ValueSource(strings = {"evil.example:8017", "127.0.0.1.evil.example", "192.0.2.1", ""})
  void forThisComputerAloneItAnswersToItsOwnNamesAlone(String host) {
    long before = served.refused(Kind.OTHER_HOST);
    for (String path : new String[] {"/", "/api/range", "/range.js"}) {
      Answer read =
          RawHttp.ask(served.httpPort(), "", "GET " + path + " HTTP/1.1", "Host: " + host);
      // RFC 9110, 15.5.20: 421; RFC 9112, 3.2: 400 for a Host that is none
      assertThat(read.status()).isIn(400, 421);
    }
    assertThat(post(served, "Host: " + host).status()).isIn(400, 421);
    assertThat(served.refused(Kind.OTHER_HOST) - before).isIn(0L, 4L);
    assertNothingCameIn();
  }

  @ParameterizedTest
  @CsvSource({
    // The Fetch standard's Origin header, and Fetch Metadata's Sec-Fetch-Site
    "Origin: http://evil.example",
    "Origin: null",
    "Origin: http://localhost:1",
    "Origin: http://127.0.0.1.evil.example:8017",
    "Sec-Fetch-Site: cross-site",
    "Sec-Fetch-Site: same-site",
    "Sec-Fetch-Site: anything"
  })
  void whatABrowserSaysThatAnotherPageAskedIsRefused(String header) {
    for (Served to : new Served[] {served, wide}) {
      String[] more = {"Host: localhost:8017", header, "Authorization: Bearer " + wide.key()};
      Answer answer = post(to, more);
      assertThat(answer.status()).isEqualTo(403);
      assertThat(answer.json().path("detail").asText()).startsWith("Another site's page");
    }
    assertNothingCameIn();
  }

  @Test
  void itsOwnPageMay() {
    Answer answer =
        RawHttp.ask(
            served.httpPort(),
            ARROW.replace("Intruder", "Own"),
            "POST /api/arrows HTTP/1.1",
            "Host: localhost:8017",
            "Origin: http://localhost:8017",
            "Sec-Fetch-Site: same-origin",
            "Content-Type: application/json");
    assertThat(answer.status()).isEqualTo(201);
  }

  /** All that a page can try without being asked, in a browser that is in. */
  private static final String EVIL_PAGE =
      """
      <!doctype html><title>evil</title>
      <form id="f" target="t" method="post" action="%1$s/api/arrows" enctype="text/plain">
        <input name='{"name":"Intruder","mass_gr":500,"note":"' value='"}'></form>
      <iframe name="t"></iframe><iframe id="frame" src="%1$s/"></iframe>
      <script>
        window.said = [];
        const body = '{"name":"Intruder","mass_gr":500}';
        const tries = [
          () => fetch('%1$s/api/range', {credentials: 'include'}).then((r) => r.text()),
          () => fetch('%1$s/api/range', {credentials: 'include', mode: 'no-cors'}).then((r) => r.text()),
          () => fetch('%1$s/api/arrows', {method: 'POST', body, credentials: 'include', mode: 'no-cors'}),
          () => fetch('%1$s/api/arrows', {method: 'POST', body, credentials: 'include', headers: {'Content-Type': 'application/json'}}),
          () => new Promise((done) => { done(navigator.sendBeacon('%1$s/api/arrows', new Blob([body], {type: 'application/json'}))); }),
          () => new Promise((done, fail) => { const s = new EventSource('%1$s/api/live?after=0', {withCredentials: true}); s.onmessage = done; s.onerror = () => { s.close(); fail(); }; }),
          () => import('%1$s/api.js').then((m) => m.putTags('range', null, null)),
        ];
        (async () => {
          for (const attempt of tries) said.push(await attempt().then((x) => String(x?.length ?? x), () => 'refused'));
          f.submit();
          said.push('done');
        })();
      </script>
      """;

  @Test
  void aPageOfAnotherSiteGetsNothingAndChangesNothing() throws Exception {
    HttpServer evil = HttpServer.create(new InetSocketAddress("127.0.0.1", 0), 0);
    evil.createContext(
        "/",
        exchange -> {
          String at = exchange.getRequestURI().getQuery();
          byte[] page = EVIL_PAGE.formatted(at).getBytes(StandardCharsets.UTF_8);
          exchange.getResponseHeaders().add("Content-Type", "text/html");
          exchange.sendResponseHeaders(200, page.length);
          exchange.getResponseBody().write(page);
          exchange.close();
        });
    evil.start();
    try (Browser browser = new Browser();
        BrowserContext context = browser.chromium().newContext()) {
      Page own = context.newPage();
      own.navigate(wide.at("/enter#" + wide.key()).toString());
      own.waitForURL(wide.at("/").toString());
      for (String evilHost : new String[] {"127.0.0.1", "localhost"}) {
        for (Served to : new Served[] {served, wide}) {
          Page page = context.newPage();
          URI at = to.at("");
          page.navigate("http://" + evilHost + ":" + evil.getAddress().getPort() + "/?" + at);
          page.waitForFunction("said.includes('done')");
          page.waitForLoadState();
          assertThat(page.evaluate("said.slice(0, 7).join()"))
              .as("%s", page.evaluate("said.join()"))
              .asString()
              .matches(
                  "refused,(0|refused),(undefined|refused|\\[object Response]),refused,(true|false),refused,refused");
          page.close();
        }
      }
    } finally {
      evil.stop(0);
    }
    assertThat(served.refused(Kind.OTHER_SITE) + wide.refused(Kind.OTHER_SITE)).isPositive();
    assertNothingCameIn();
  }
}
