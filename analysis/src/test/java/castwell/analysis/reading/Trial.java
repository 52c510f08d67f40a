package castwell.analysis.reading;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.analysis.shot.Passage;
import castwell.analysis.speed.Flight;
import castwell.analysis.speed.StampLatency;
import castwell.analysis.speed.TickRate;
import castwell.analysis.verdict.Assessment;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * A scene as the program reads it: its edges cut to clusters, arrows separated, each passage
 * assessed. Of a third of the arrows the length is known by their tags, of a quarter the cell's
 * speed.
 */
record Trial(List<Scene.Shot> shots, List<Judged> passages) {
  private static final TickRate RATE = new TickRate(Flight.HZ, 0);
  private static final double SCATTER_M = 1e-3;
  private static final long SECOND = (long) Flight.HZ;
  private static final double TAG_U_M = 0.003;

  /** What may be a stray, and so tells how many there are about. */
  private static final Set<Part> STRAYS = Set.of(Part.OTHER, Part.UNKNOWN, Part.LAMP);

  /** A passage with what was found in it. */
  record Judged(Passage passage, Assessment assessment) {}

  static Trial of(Disturbance disturbance, Random random) {
    return of(disturbance, random, Limits.defaults());
  }

  static Trial of(Disturbance disturbance, Random random, Limits limits) {
    Scene scene = new Scene(random, SCATTER_M);
    disturbance.making().accept(scene);
    List<Edge> edges = scene.edges();
    return new Trial(scene.shots, read(edges, knowledge(scene, limits)));
  }

  private static Knowledge knowledge(Scene scene, Limits limits) {
    double draw = scene.random.nextDouble();
    double untagged =
        scene.shots.isEmpty() ? scene.uniform(0.62, 0.86) : scene.shots.get(0).lengthM();
    boolean forced = !Double.isNaN(scene.taggedM());
    double length = (forced ? scene.taggedM() : untagged) + scene.random.nextGaussian() * TAG_U_M;
    Optional<Known> tag =
        forced || draw < 0.35 ? Optional.of(new Known(length, TAG_U_M)) : Optional.empty();
    Optional<Known> cell = Optional.empty();
    if (draw > 0.25 && draw < 0.5 && scene.shots.size() == 1) {
      double v = scene.shots.get(0).speedMps();
      cell = Optional.of(new Known(v * (1 + 0.01 * scene.random.nextGaussian()), 0.012 * v));
    }
    return new Knowledge(Flight.CALIBRATION, limits, 0, tag, cell, 0, 0);
  }

  /** Reads a stream of edges, each passage with how many strays there were in the second before. */
  static List<Judged> read(List<Edge> edges, Knowledge knowledge) {
    List<Judged> read = new ArrayList<>();
    List<Edge> strays = new ArrayList<>();
    ClusterCut cut =
        new ClusterCut(
            knowledge.calibration().spacingM(), knowledge.limits(), ClusterCut.USUAL_QUIET_S);
    for (List<Edge> cluster : Clusters.of(cut, edges, Flight.HZ)) {
      Knowledge here = withRecent(knowledge, strays, cluster.get(0).ticks());
      Passage whole = new Passage(cluster, lost(cluster), false);
      for (Passage passage : Separation.separate(whole, here, RATE, StampLatency.NONE)) {
        Assessment assessment = Assessment.of(passage, here, RATE, StampLatency.NONE);
        read.add(new Judged(passage, assessment));
        passage.edges().stream()
            .filter(edge -> edge.kind() != EdgeKind.CLEAR)
            .filter(edge -> STRAYS.contains(assessment.reading().parts().get(edge.number())))
            .forEach(strays::add);
      }
    }
    return read;
  }

  private static Knowledge withRecent(Knowledge k, List<Edge> strays, long ticks) {
    int[] recent = new int[2];
    for (Edge stray : strays) {
      if (stray.ticks() >= ticks - SECOND && stray.ticks() < ticks) {
        recent[stray.gate() == Gate.A ? 0 : 1]++;
      }
    }
    return new Knowledge(
        k.calibration(),
        k.limits(),
        k.residualM(),
        k.taggedLengthM(),
        k.cellSpeedMps(),
        recent[0],
        recent[1]);
  }

  private static List<Integer> lost(List<Edge> cluster) {
    Set<Integer> arrived = new HashSet<>();
    cluster.forEach(edge -> arrived.add(edge.number()));
    int first = cluster.stream().mapToInt(Edge::number).min().orElseThrow();
    int last = cluster.stream().mapToInt(Edge::number).max().orElseThrow();
    return IntStream.range(first, last).filter(n -> !arrived.contains(n)).boxed().toList();
  }
}
