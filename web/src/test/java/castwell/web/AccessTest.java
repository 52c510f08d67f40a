package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.web.RawHttp.Answer;
import castwell.web.http.guard.Refusals.Kind;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Told to listen to others, nobody gets in without the key. */
@Tag("slow")
@Timeout(300)
class AccessTest {
  private static final String ARROW = "{\"name\":\"Intruder\",\"mass_gr\":500}";
  private static final String NOT_THE_KEY = "0000-0000-0000-0000-0000-0000-0000";

  @TempDir Path folder;
  private Served served;

  @AfterEach
  void end() {
    served.close();
  }

  private void serve(String http) {
    served = Served.forOthers(folder, http);
  }

  private Answer get(String path, String... more) {
    return ask("GET", path, "", more);
  }

  private Answer addArrow(String... more) {
    return ask("POST", "/api/arrows", ARROW, more);
  }

  private Answer ask(String method, String path, String body, String... more) {
    String json = body.isEmpty() ? "Accept: */*" : "Content-Type: application/json";
    return RawHttp.ask(
        served.httpPort(),
        body,
        Stream.concat(
                Stream.of(method + " " + path + " HTTP/1.1", "Host: range.local:8017", json),
                Stream.of(more))
            .toArray(String[]::new));
  }

  private Answer enter(String key) {
    return ask("POST", "/api/admission", "{\"key\":\"" + key + "\"}");
  }

  /** What a browser sends back. */
  private String cookie() {
    Answer entered = enter(served.key());
    assertThat(entered.status()).isEqualTo(201);
    return "Cookie: " + entered.header("Set-Cookie").orElseThrow().split(";")[0];
  }

  private void assertNothingCameIn() {
    assertThat(served.store().<Integer>read(t -> t.rack().arrows().size())).isZero();
  }

  @Test
  void withoutTheKeyNothingIsToldOfAnybodysShots() {
    serve("");
    for (String path :
        List.of(
            "/api/range",
            "/api/live",
            "/api/bows",
            "/api/reports/ranking",
            "/api/nothing",
            "/metrics",
            "/nothing",
            "/api/admission/",
            "//api/range",
            "/enter/../api/range",
            "/range.js;/../api/range",
            "/api/range?x=/range.js",
            "/castwell.db")) {
      Answer answer = get(path);
      assertThat(answer.status()).as(path).isIn(400, 401);
      assertThat(answer.json().path("detail").asText()).matches("[^\\n]{10,200}\\.");
    }
  }

  @Test
  void withoutTheKeyThePageItselfAndTheWayInAreThere() {
    serve("");
    for (String path : List.of("/", "/enter", "/range.js", "/range.css", "/icon.svg")) {
      assertThat(get(path).status()).as(path).isEqualTo(200);
    }
    assertThat(get("/api/admission").json().toString())
        .contains("\"may_watch\":false", "\"may_change\":false", "\"entered\":false");
  }

  @Test
  void withoutTheKeyNothingIsChangedByWhateverMethod() {
    serve("watch = \"open\"");
    List<String> methods =
        List.of("POST", "PUT", "PATCH", "DELETE", "OPTIONS", "TRACE", "PROPFIND");
    for (String method : methods) {
      Answer answer = ask(method, "/api/arrows", ARROW);
      assertThat(answer.status()).as(method).isEqualTo(401);
      // RFC 9110, 15.5.2: a 401 says how to authenticate
      assertThat(answer.header("WWW-Authenticate")).hasValue("Bearer realm=\"castwell\"");
    }
    assertThat(served.refused(Kind.NO_KEY)).isEqualTo(methods.size());
    assertNothingCameIn();
  }

  @Test
  void theKeyLetsABrowserInAndItsCookieIsOutOfReachOfScriptsAndOtherSites() {
    serve("");
    Answer entered = enter(served.key().toLowerCase().replace("-", " "));
    assertThat(entered.status()).isEqualTo(201);
    // RFC 6265bis
    assertThat(entered.header("Set-Cookie").orElseThrow())
        .matches("castwell-\\d+=[A-Za-z0-9_-]{43};.*")
        .contains("Path=/", "Max-Age=15552000", "HttpOnly", "SameSite=Strict")
        .doesNotContain("Domain");
    String cookie = "Cookie: " + entered.header("Set-Cookie").orElseThrow().split(";")[0];
    assertThat(get("/api/range", cookie).status()).isEqualTo(200);
    assertThat(get("/api/admission", cookie).json().toString())
        .contains("\"may_watch\":true", "\"may_change\":true", "\"entered\":true");
    assertThat(addArrow(cookie).status()).isEqualTo(201);
  }

  @Test
  void aWrongKeyLetsNobodyIn() {
    serve("");
    Answer answer = enter(NOT_THE_KEY);
    assertThat(answer.status()).isEqualTo(401);
    assertThat(answer.header("Set-Cookie")).isEmpty();
    assertThat(addArrow("Authorization: Bearer " + NOT_THE_KEY).status()).isEqualTo(401);
    assertThat(addArrow("Authorization: Bearer ").status()).isEqualTo(401);
    assertThat(addArrow("Authorization: Basic " + served.key()).status()).isEqualTo(401);
    assertThat(addArrow("Cookie: castwell-" + served.httpPort() + "=" + served.key()).status())
        .isEqualTo(401);
    assertThat(served.refused(Kind.WRONG_KEY)).isEqualTo(2);
    assertNothingCameIn();
  }

  @Test
  void aProgramShowsTheKeyWithEachRequest() {
    serve("");
    String bearer = "Authorization: Bearer " + served.key();
    for (int i = 0; i < 20; i++) {
      assertThat(get("/api/range", bearer).status()).isEqualTo(200);
    }
    assertThat(addArrow(bearer).status()).isEqualTo(201);
  }

  @Test
  void whatWasRefusedIsCountedForWhoeverKeepsFigures() {
    serve("");
    get("/api/range");
    enter(NOT_THE_KEY);
    assertThat(get("/metrics", "Authorization: Bearer " + served.key()).body())
        .contains("castwell_refused_total{kind=\"no_key\"} 1.0\n")
        .contains("castwell_refused_total{kind=\"wrong_key\"} 1.0\n")
        .contains("castwell_refused_total{kind=\"other_site\"} 0.0\n");
  }

  @Test
  void guessedKeysAreSlowedAndTheAnswerSaysUntilWhen() {
    serve("");
    for (int i = 0; i < 5; i++) {
      assertThat(enter("guess " + i).status()).isEqualTo(401);
    }
    for (Answer slowed :
        List.of(enter(served.key()), addArrow("Authorization: Bearer " + served.key()))) {
      assertThat(slowed.status()).isEqualTo(429);
      assertThat(Integer.parseInt(slowed.header("Retry-After").orElseThrow())).isBetween(1, 20);
      assertThat(slowed.json().path("detail").asText()).startsWith("Too many wrong keys");
    }
    assertThat(served.refused(Kind.TOO_MANY_TRIES)).isEqualTo(2);
    assertNothingCameIn();
  }

  @Test
  void whoIsInStaysInOverARestartAndTheKeyStaysTheSame() {
    serve("");
    String key = served.key();
    String port = String.valueOf(served.httpPort());
    String cookie = cookie();
    served.close();
    served = Served.withoutBoard(folder, "range");
    assertThat(served.madeKey()).isFalse();
    // The cookie is named after the port, which is another one here.
    String atThisPort = cookie.replace(port, String.valueOf(served.httpPort()));
    assertThat(get("/api/range", atThisPort).status()).isEqualTo(200);
    assertThat(get("/api/range", "Authorization: Bearer " + key).status()).isEqualTo(200);
  }

  @Test
  void whoLeavesIsOutWhateverTheyKept() {
    serve("");
    String cookie = cookie();
    Answer left = ask("DELETE", "/api/admission", "{}", cookie);
    assertThat(left.status()).isEqualTo(204);
    assertThat(left.header("Set-Cookie").orElseThrow()).contains("Expires=Thu, 01 Jan 1970");
    assertThat(get("/api/range", cookie).status()).isEqualTo(401);
  }

  @Test
  void aNewKeyEndsTheOldOneAndWhomItLetIn() {
    serve("");
    String old = served.key();
    String cookie = cookie();
    served.close();
    Program.Outcome made =
        Program.run("key", "--new", "--http", "0.0.0.0:9000", "--data", folder.toString());
    assertThat(made.exitCode()).as("%s", made).isZero();
    String link =
        made.out().lines().filter(line -> line.contains("/enter#")).findFirst().orElseThrow();
    assertThat(link).matches(" *http://[^/]+:9000/enter#[0-9A-Z-]{34}");
    String another = link.substring(link.indexOf('#') + 1);

    served = Served.withoutBoard(folder, "range");
    assertThat(get("/api/range", "Authorization: Bearer " + another).status()).isEqualTo(200);
    assertThat(get("/api/range", "Authorization: Bearer " + old).status()).isEqualTo(401);
    assertThat(served.store().<Integer>read(t -> t.access().admissions())).isZero();
    assertThat(get("/api/range", cookie).status()).isEqualTo(401);
  }

  @Test
  void neitherTheKeyNorACookieIsInTheDataFolder() throws Exception {
    serve("");
    String key = served.key();
    String token = cookie().split("=")[1];
    served.close();
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.toList()) {
        String content = Files.readString(file, StandardCharsets.ISO_8859_1);
        assertThat(content).as(file.toString()).doesNotContain(key, key.replace("-", ""), token);
      }
    }
    served = Served.withoutBoard(folder, "range");
    Program.Outcome told = Program.run("key", "--data", folder.toString());
    assertThat(told.out()).contains("1 browser is in").doesNotContain(key);
  }

  @Test
  void watchingMayBeOpenToAll() {
    serve("watch = \"open\"");
    assertThat(get("/api/range").status()).isEqualTo(200);
    assertThat(get("/api/admission").json().toString())
        .contains("\"may_watch\":true", "\"may_change\":false");
    assertThat(addArrow().status()).isEqualTo(401);
    assertThat(addArrow("Authorization: Bearer " + served.key()).status()).isEqualTo(201);
  }

  @Test
  void aProxyInFrontMakesTheKeyNeededThoughItComesFromHere() {
    served = Served.with(folder, "reached_at = \"https://range.example\"");
    assertThat(addArrow("X-Forwarded-For: 127.0.0.1").status()).isEqualTo(401);
    assertNothingCameIn();
  }
}
