package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.Seed;
import castwell.capture.Until;
import castwell.capture.store.Decisions.Decided;
import castwell.web.FeedReader.Event;
import castwell.web.cli.Castwell;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.stream.LongStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Server-sent events over real sockets: nothing missed, nothing twice, nobody waited for. */
@Tag("slow")
@Timeout(300)
class LiveFeedTest {
  @TempDir Path folder;
  private Served served;
  private URI live;
  private String shotId;

  @BeforeEach
  void serveFiveShots() {
    Recordings.replayInto(folder);
    served = Served.withoutBoard(folder, Recordings.STATION);
    live = served.at("/api/live");
    shotId = Asked.get(served.at("/api/range")).json().path("last").path("shot_id").asText();
  }

  @AfterEach
  void end() {
    served.close();
  }

  private long lastEvent() {
    return served.store().read(t -> t.feed().last());
  }

  private void happen(int times, String reason) {
    for (int i = 0; i < times; i++) {
      Decided decided = i % 2 == 0 ? Decided.SET_ASIDE : Decided.BROUGHT_BACK;
      served.commands().decide(shotId, decided, i + reason, "test");
    }
  }

  @Test
  void aReaderThatIsCutOffAgainAndAgainMissesNothingAndHearsNothingTwice() throws Exception {
    long seed = Seed.of(LiveFeedTest.class);
    Random random = new Random(seed);
    long before = lastEvent();
    ExecutorService other = Executors.newSingleThreadExecutor();
    Future<?> happening = other.submit(() -> happen(500, ""));
    List<Long> heard = new ArrayList<>();
    long last = before;
    while (heard.size() < 500) {
      try (FeedReader reader =
          random.nextBoolean() ? FeedReader.after(live, last) : FeedReader.resumed(live, last)) {
        for (int left = random.nextInt(40); left >= 0 && heard.size() < 500; left--) {
          long next = reader.next().id().orElseThrow();
          assertThat(next).isEqualTo(last + 1); // no hole, no repeat
          last = next;
          heard.add(last);
        }
      }
    }
    happening.get();
    other.shutdown();
    assertThat(heard).isEqualTo(LongStream.rangeClosed(before + 1, before + 500).boxed().toList());
  }

  @Test
  void aShotIsToldByTheColumnsOfTheExport() throws Exception {
    Path table = folder.resolve("shots.csv");
    int exported = Castwell.run("export", "--data", folder.toString(), "--out", table.toString());
    assertThat(exported).isZero();
    String header = Files.readAllLines(table).get(0);
    try (FeedReader reader = FeedReader.after(live, lastEvent())) {
      happen(1, "");
      Event event = reader.next();
      assertThat(event.kind()).isEqualTo("shot");
      List<String> keys = event.data().properties().stream().map(Map.Entry::getKey).toList();
      assertThat(String.join(",", keys)).isEqualTo(header);
      assertThat(event.data().path("shot_id").asText()).isEqualTo(shotId);
    }
  }

  @Test
  void itIsAnEventStreamThatNobodyKeeps() throws Exception {
    HttpResponse<InputStream> answer =
        HttpClient.newHttpClient()
            .send(HttpRequest.newBuilder(live).build(), BodyHandlers.ofInputStream());
    answer.body().close();
    assertThat(answer.statusCode()).isEqualTo(200);
    assertThat(answer.headers().firstValue("Content-Type").orElse(""))
        .startsWith("text/event-stream");
    assertThat(answer.headers().firstValue("Cache-Control")).hasValue("no-store");
  }

  @Test
  void whatElseHappensIsToldByItsKind() throws Exception {
    try (FeedReader reader = FeedReader.after(live, lastEvent())) {
      served.commands().bows().add("Rowan", Instant.EPOCH, 230, 0.69, "");
      assertThat(reader.next().kind()).isEqualTo("rack");
      served.commands().tag(Recordings.STATION, Optional.of("Rowan"), Optional.empty(), "test");
      Event tags = reader.next();
      assertThat(tags.kind()).isEqualTo("tags");
      assertThat(tags.data().path("bow").asText()).isEqualTo("Rowan");
      served.commands().beginSession(Recordings.STATION, "test");
      assertThat(reader.next().kind()).isEqualTo("refresh");
    }
  }

  @Test
  void whoeverKnowsAnotherFoldersFeedGoesOnFromThisOnes() throws Exception {
    try (FeedReader reader = FeedReader.resumed(live, lastEvent() + 1000)) {
      reader.awaitAnswer(); // or it may be asked for after what happens next
      long next = lastEvent() + 1;
      happen(1, "");
      assertThat(reader.next().id()).hasValue(next);
    }
  }

  @Test
  void fortyReadersGetEverythingWhileTenNeverRead() throws Exception {
    int events = 1600;
    long before = lastEvent();
    List<FeedReader> stuck = new ArrayList<>();
    for (int i = 0; i < 10; i++) {
      stuck.add(FeedReader.after(live, before)); // and never read
    }
    ExecutorService threads = Executors.newFixedThreadPool(40);
    List<Future<List<Long>>> reading = new ArrayList<>();
    for (int i = 0; i < 40; i++) {
      FeedReader reader = FeedReader.after(live, before);
      reading.add(threads.submit(read(reader, events)));
    }
    happen(events, "界".repeat(450)); // 4 MB, more than the kernel keeps for who never reads
    List<Long> all = LongStream.rangeClosed(before + 1, before + events).boxed().toList();
    for (Future<List<Long>> heard : reading) {
      assertThat(heard.get(Until.PATIENCE.toSeconds(), TimeUnit.SECONDS)).isEqualTo(all);
    }
    threads.shutdown();
    // A stuck one that wakes goes on from its own place.
    assertThat(woken(stuck.get(0), before, events)).isEqualTo(all);
    for (FeedReader reader : stuck) {
      reader.close();
    }
  }

  /** On a slow machine the server has left it by then: it asks again, as a browser does. */
  private List<Long> woken(FeedReader stuck, long before, int events) throws IOException {
    List<Long> heard = new ArrayList<>();
    long last = before;
    FeedReader reader = stuck;
    while (heard.size() < events) {
      try {
        last = reader.next().id().orElseThrow();
        heard.add(last);
      } catch (IOException e) {
        reader.close();
        reader = FeedReader.resumed(live, last);
      }
    }
    reader.close();
    return heard;
  }

  private static Callable<List<Long>> read(FeedReader reader, int events) {
    return () -> {
      try (reader) {
        List<Long> heard = new ArrayList<>();
        while (heard.size() < events) {
          heard.add(reader.next().id().orElseThrow());
        }
        return heard;
      }
    };
  }
}
