package castwell.capture.daemon;

import castwell.capture.Until;
import castwell.capture.recording.RecordedLine;
import castwell.capture.recording.Recording;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;

/** Plays a recording to a host over a cable that is pulled out and put back again and again. */
final class PulledCable {

  /** Pulled so often that nothing gets through, even a board that keeps 64 edges forgets some. */
  private static final int MOST_BEHIND = 24;

  /** The cable stays in for the last lines, so that the link is seen to be well again. */
  private static final int LINES_AFTER = 20;

  private final AnsweringPeer peer;
  private final List<byte[]> lines;
  private final Tables tables;
  private final String device;
  private final Random random;
  private final Set<String> said = new TreeSet<>();

  PulledCable(AnsweringPeer peer, Path recording, String device, Tables tables, long seed)
      throws Exception {
    this.peer = peer;
    this.lines = lines(recording);
    this.device = device;
    this.tables = tables;
    this.random = new Random(seed);
  }

  private static List<byte[]> lines(Path file) throws Exception {
    List<byte[]> lines = new ArrayList<>();
    try (Recording recording = Recording.open(file)) {
      for (Optional<RecordedLine> line = recording.next();
          line.isPresent();
          line = recording.next()) {
        lines.add(line.get().bytes());
      }
    }
    return lines;
  }

  /**
   * Says everything, with the cable pulled so many times at any moment but across a restart or
   * loss.
   */
  void play(int pulls) {
    Set<Integer> restarts = restarts();
    Set<Integer> moments = new TreeSet<>();
    while (moments.size() < pulls) {
      moments.add(random.nextInt(lines.size() - LINES_AFTER));
    }
    awaitHeard("?", 0);
    for (int i = 0; i < lines.size(); i++) {
      boolean restartAhead = isWithin(restarts, i, 8);
      if (restartAhead && !isWithin(restarts, i - 1, 8)) {
        awaitStored();
      }
      if (moments.contains(i) && !restartAhead && !isLossWithin(i, 12)) {
        i = pull(i, restarts);
      } else {
        say(lines.get(i));
      }
      if (restarts.contains(i)) {
        awaitStored();
      }
    }
    awaitStored();
  }

  /** Pulled in the middle of a line; back a few lines later. */
  private int pull(int at, Set<Integer> restarts) {
    if (said.size() - stored().size() > MOST_BEHIND) {
      awaitStored();
    }
    byte[] line = lines.get(at);
    note(line);
    peer.live(line);
    peer.pty().write(Arrays.copyOf(line, random.nextInt(line.length + 1)));
    peer.pty().hangUp();
    int last = at;
    for (int more = random.nextInt(12); more > 0; more--) {
      if (last + 1 < lines.size() && !isWithin(restarts, last + 1, 8)) {
        last++;
        note(lines.get(last));
        peer.live(lines.get(last));
      }
    }
    plugIn();
    return last;
  }

  /** Now and then it is out again before the host could ask for edges. */
  private void plugIn() {
    int questions = heard("?");
    int requests = heard("R");
    peer.pty().plugIn();
    awaitHeard("?", questions);
    if (random.nextInt(5) == 0) {
      peer.pty().hangUp();
      plugIn();
    } else {
      awaitHeard("R", requests);
    }
  }

  private void say(byte[] line) {
    note(line);
    peer.say(line);
  }

  /** Which edges the board has stamped, as far as its lines are sound. */
  private void note(byte[] line) {
    AnsweringPeer.edgeName(line).ifPresent(said::add);
  }

  /** How many lines the host has sent that begin so. */
  private int heard(String word) {
    return (int) peer.pty().heard().lines().filter(line -> line.startsWith(word)).count();
  }

  private void awaitHeard(String word, int before) {
    Until.holds("the host to say " + word, () -> heard(word) > before);
  }

  private void awaitStored() {
    try {
      Until.holds("all edges of " + device + " to be stored", () -> stored().equals(said));
    } catch (AssertionError e) {
      Set<String> missed = new TreeSet<>(said);
      missed.removeAll(stored());
      throw new AssertionError(
          e.getMessage() + ", missed " + missed + "; asked: " + peer.pty().heard(), e);
    }
  }

  private Set<String> stored() {
    return new TreeSet<>(
        tables.query(
            """
            SELECT boot || ',' || number FROM edge JOIN board ON board.id = board_id
            WHERE device = '%s'"""
                .formatted(device)));
  }

  /** The lines that are the first of a boot. */
  private Set<Integer> restarts() {
    Set<Integer> restarts = new TreeSet<>();
    for (int i = 1; i < lines.size(); i++) {
      if (new String(lines.get(i), StandardCharsets.ISO_8859_1).startsWith("$I,0,")) {
        restarts.add(i);
      }
    }
    return restarts;
  }

  /** A board says once that it dropped edges; unlike edges, that can't be asked for again. */
  private boolean isLossWithin(int at, int linesAhead) {
    return lines.subList(at, Math.min(at + linesAhead + 1, lines.size())).stream()
        .anyMatch(line -> new String(line, StandardCharsets.ISO_8859_1).startsWith("$L,"));
  }

  private static boolean isWithin(Set<Integer> restarts, int at, int linesAhead) {
    return restarts.stream().anyMatch(restart -> restart >= at && restart - at <= linesAhead);
  }
}
