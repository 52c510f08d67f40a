package castwell.analysis.reading;

import static castwell.analysis.reading.Hypothesis.NONE;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.Gate;
import castwell.analysis.shot.Passage;
import castwell.analysis.speed.Ends;
import castwell.analysis.speed.StampLatency;
import castwell.analysis.speed.TickRate;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Reads a passage: which story explains its edges best, and how fast the arrow in it was. Of more
 * than 40 edges at one gate no story is sought, so that the work is bounded whatever comes.
 */
public final class Reader {
  private final GateEdges a;
  private final GateEdges b;
  private final Knowledge knowledge;

  private Reader(Passage passage, Knowledge knowledge, TickRate rate, StampLatency latency) {
    this.a = new GateEdges(passage, Gate.A, rate, latency);
    this.b = new GateEdges(passage, Gate.B, rate, latency);
    this.knowledge = knowledge;
  }

  public static Reading read(
      Passage passage, Knowledge knowledge, TickRate rate, StampLatency latency) {
    Reader reader = new Reader(passage, knowledge, rate, latency);
    return reader.a.isFlood() || reader.b.isFlood() ? reader.flood() : reader.search();
  }

  private Reading flood() {
    Map<Gate, Double> flicker = new EnumMap<>(Gate.class);
    Lamp.of(a).hz().ifPresent(hz -> flicker.put(Gate.A, hz));
    Lamp.of(b).hz().ifPresent(hz -> flicker.put(Gate.B, hz));
    Map<Integer, Part> parts = new TreeMap<>();
    a.edges.forEach(e -> parts.put(e.number(), part(flicker, Gate.A)));
    b.edges.forEach(e -> parts.put(e.number(), part(flicker, Gate.B)));
    StoryTold.Kind kind = flicker.isEmpty() ? StoryTold.Kind.FLOOD : StoryTold.Kind.LAMP;
    return new Reading(
        new StoryTold(kind, 0, List.of()),
        Optional.empty(),
        parts,
        List.of(),
        flicker,
        new Reading.Work(0, 0));
  }

  private static Part part(Map<Gate, Double> flicker, Gate gate) {
    return flicker.containsKey(gate) ? Part.LAMP : Part.UNKNOWN;
  }

  private Reading search() {
    Search search = new Search(a, b, new Prior(knowledge), knowledge);
    List<Story> stories = search.stories();
    Story best = stories.get(0);
    Map<Integer, Part> parts = new TreeMap<>();
    Map<Gate, Double> flicker = new EnumMap<>(Gate.class);
    for (Gate gate : Gate.values()) {
      GateEdges edges = gate == Gate.A ? a : b;
      Part[] told = search.parts(best, gate.ordinal());
      for (int i = 0; i < told.length; i++) {
        parts.put(edges.edges.get(i).number(), told[i]);
      }
      if (told.length > 0 && told[0] == Part.LAMP) {
        Lamp.of(edges).hz().ifPresent(hz -> flicker.put(gate, hz));
      }
    }
    return new Reading(
        best.told(),
        stories.stream().skip(1).filter(s -> !best.isLike(s)).findFirst().map(Story::told),
        parts,
        best.arrows().stream().map(arrow -> read(arrow, stories)).toList(),
        flicker,
        new Reading.Work(search.tried(), search.weighed()));
  }

  private ArrowRead read(Hypothesis arrow, List<Story> stories) {
    // The story without any arrow is always among them.
    Story rival = stories.stream().filter(s -> s.like(arrow) == null).findFirst().orElseThrow();
    return new ArrowRead(
        new Ends(
            edge(a, arrow.a.front()),
            edge(b, arrow.b.front()),
            edge(a, arrow.a.tail()),
            edge(b, arrow.b.tail())),
        Mixture.of(arrow, stories),
        rival.costNats() - stories.get(0).costNats(),
        rival.told());
  }

  private static Optional<Edge> edge(GateEdges gate, int index) {
    return index == NONE ? Optional.empty() : Optional.of(gate.edges.get(index));
  }
}
