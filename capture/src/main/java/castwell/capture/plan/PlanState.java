package castwell.capture.plan;

import castwell.capture.store.Plans.Event;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * The state of a plan, which follows from its events alone. Skipped turns are left out until
 * somebody goes back to them; after a turn comes the first later one that is neither shot nor
 * skipped.
 *
 * @param turns how many there are, numbered from 1
 * @param shots the passages of each turn that was shot; a repeated turn has several
 * @param skipped the turns that are left out
 * @param lastShot the turn that was shot last
 */
public record PlanState(
    int turns,
    PlanProgress progress,
    Map<Integer, List<Long>> shots,
    Set<Integer> skipped,
    OptionalInt lastShot) {

  /**
   * @param events in the order they happened
   */
  public static PlanState of(int turns, List<Event> events) {
    return new Told(turns).all(events);
  }

  /** The turn to be shot next, or when the plan is resumed; empty when none is left. */
  public OptionalInt turn() {
    if (progress instanceof PlanProgress.Running running) {
      return OptionalInt.of(running.turn());
    }
    if (progress instanceof PlanProgress.Paused paused) {
      return OptionalInt.of(paused.turn());
    }
    return progress instanceof PlanProgress.Ended ended ? ended.turn() : OptionalInt.of(1);
  }

  /** Whether the plan has begun and not ended. */
  public boolean isGoingOn() {
    return progress instanceof PlanProgress.Running || progress instanceof PlanProgress.Paused;
  }

  public int done() {
    return shots.size();
  }

  /** The turn to be shot after another, if any is left. */
  public OptionalInt after(int turn) {
    return next(turns, turn, shots.keySet(), skipped);
  }

  private static OptionalInt next(int turns, int after, Set<Integer> shot, Set<Integer> skipped) {
    for (int turn = after + 1; turn <= turns; turn++) {
      if (!shot.contains(turn) && !skipped.contains(turn)) {
        return OptionalInt.of(turn);
      }
    }
    return OptionalInt.empty();
  }

  /** Builds the state up, event by event. */
  private static final class Told {
    private final int turns;
    private final Map<Integer, List<Long>> shots = new TreeMap<>();
    private final Set<Integer> skipped = new TreeSet<>();
    private OptionalInt lastShot = OptionalInt.empty();
    private PlanProgress progress = new PlanProgress.Ready();

    Told(int turns) {
      this.turns = turns;
    }

    PlanState all(List<Event> events) {
      events.forEach(this::take);
      return new PlanState(
          turns,
          progress,
          Collections.unmodifiableMap(shots),
          Collections.unmodifiableSet(skipped),
          lastShot);
    }

    private void take(Event event) {
      int turn = event.turn();
      progress =
          switch (event.happened()) {
            case START, RESUME -> new PlanProgress.Running(turn, event.at());
            case REPEAT, BACK -> goTo(event);
            case SHOT -> shot(event);
            case SKIP -> skip(event);
            case PAUSE -> new PlanProgress.Paused(turn, false, event.by());
            case TAGS_CHANGED -> new PlanProgress.Paused(turn, true, event.by());
            case END -> new PlanProgress.Ended(OptionalInt.of(turn));
          };
    }

    /** A skipped turn that somebody goes back to is no longer left out. */
    private PlanProgress goTo(Event event) {
      skipped.remove(event.turn());
      return new PlanProgress.Running(event.turn(), event.at());
    }

    private PlanProgress shot(Event event) {
      int turn = event.turn();
      shots.computeIfAbsent(turn, t -> new ArrayList<>()).add(event.passageId().orElseThrow());
      lastShot = OptionalInt.of(turn);
      return goOn(turn, event.at());
    }

    /** A turn that was shot stays shot when its repeat is skipped. */
    private PlanProgress skip(Event event) {
      if (!shots.containsKey(event.turn())) {
        skipped.add(event.turn());
      }
      return goOn(event.turn(), event.at());
    }

    private PlanProgress goOn(int turn, Instant at) {
      OptionalInt next = next(turns, turn, shots.keySet(), skipped);
      return next.isPresent()
          ? new PlanProgress.Running(next.getAsInt(), at)
          : new PlanProgress.Ended(OptionalInt.empty());
    }
  }
}
