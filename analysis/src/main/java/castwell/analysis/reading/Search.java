package castwell.analysis.reading;

import static castwell.analysis.reading.Hypothesis.NONE;

import castwell.analysis.reading.Hypothesis.Candidate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Seeks every story of one arrow, of two, or of none. At each gate there are at most 210 whole
 * candidates and 40 halves, so at most 44,100 + 16,800 pairs of them are tried, by a few
 * subtractions each; what passes is weighed in full, and so are at most 66 pairs of the best.
 */
final class Search {
  private static final Comparator<Story> BY_COST = Comparator.comparingDouble(Story::costNats);

  private final GateEdges a;
  private final GateEdges b;
  private final Prior prior;
  private final Remainder restA;
  private final Remainder restB;
  private final List<Story> found = new ArrayList<>();
  private int tried;
  private int weighed;

  Search(GateEdges a, GateEdges b, Prior prior, Knowledge knowledge) {
    this.a = a;
    this.b = b;
    this.prior = prior;
    this.restA = new Remainder(a, 0, prior, knowledge.recentA());
    this.restB = new Remainder(b, 1, prior, knowledge.recentB());
    oneArrow();
    found.sort(BY_COST);
    twoArrows();
    found.add(noArrow(knowledge));
    found.sort(BY_COST);
  }

  /** All stories, the cheapest first. */
  List<Story> stories() {
    return found;
  }

  /** How many pairs of candidates were tried. */
  int tried() {
    return tried;
  }

  /** How many stories were weighed in full. */
  int weighed() {
    return weighed;
  }

  private void oneArrow() {
    List<Candidate> wholeA = whole(a);
    List<Candidate> wholeB = whole(b);
    tryAll(wholeA, wholeB);
    tryAll(wholeA, fronts(b));
    tryAll(wholeA, tails(b));
    tryAll(fronts(a), wholeB);
    tryAll(tails(a), wholeB);
  }

  /** All pairs of a front and a later tail, the time between them an arrow's. */
  private List<Candidate> whole(GateEdges gate) {
    List<Candidate> candidates = new ArrayList<>();
    for (Candidate front : fronts(gate)) {
      for (int tail = front.front() + 1; tail < gate.count(); tail++) {
        double seconds = gate.seconds[tail] - gate.seconds[front.front()];
        if (gate.isClear(tail) && prior.canBlock(seconds)) {
          candidates.add(new Candidate(front.front(), tail));
        }
      }
    }
    return candidates;
  }

  private static List<Candidate> fronts(GateEdges gate) {
    return IntStream.range(0, gate.count())
        .filter(i -> gate.blocked[i])
        .mapToObj(i -> new Candidate(i, NONE))
        .toList();
  }

  private static List<Candidate> tails(GateEdges gate) {
    return IntStream.range(0, gate.count())
        .filter(gate::isClear)
        .mapToObj(i -> new Candidate(NONE, i))
        .toList();
  }

  private void tryAll(List<Candidate> atA, List<Candidate> atB) {
    for (int i = 0; i < atA.size(); i++) {
      for (int j = 0; j < atB.size(); j++) {
        tried++;
        if (canBeAnArrow(atA.get(i), atB.get(j))) {
          weigh(new Hypothesis(a, atA.get(i), b, atB.get(j), prior));
        }
      }
    }
  }

  private boolean canBeAnArrow(Candidate atA, Candidate atB) {
    boolean fronts = atA.front() != NONE && atB.front() != NONE;
    boolean tails = atA.tail() != NONE && atB.tail() != NONE;
    double front = fronts ? b.seconds[atB.front()] - a.seconds[atA.front()] : 0;
    if (fronts && !prior.canCross(front)) {
      return false;
    }
    double tail = tails ? (b.seconds[atB.tail()] - a.seconds[atA.tail()]) * prior.tailFactor : 0;
    if (tails && !prior.canCross(tail)) {
      return false;
    }
    double residual = 2 * prior.spacingM * Math.abs(front - tail) / (front + tail);
    return !fronts || !tails || residual <= Assumed.MOST_SPOILT_M;
  }

  private void weigh(Hypothesis arrow) {
    if (arrow.sum > 0) {
      keep(List.of(arrow), StoryTold.Kind.ARROW);
    }
  }

  private void keep(List<Hypothesis> arrows, StoryTold.Kind kind) {
    weighed++;
    double cost = 0;
    for (int i = 0; i < arrows.size(); i++) {
      cost += arrows.get(i).cost;
    }
    Story story = new Story(arrows, cost + restA.cost(arrows) + restB.cost(arrows), kind);
    if (story.isPossible()) {
      found.add(story);
    }
  }

  /** Pairs of the best whole arrows of which one follows the other at both gates. */
  private void twoArrows() {
    List<Hypothesis> best =
        found.stream()
            .map(story -> story.arrows().get(0))
            .filter(Hypothesis::isWhole)
            .limit(Assumed.BEST_ARROWS)
            .toList();
    for (int i = 0; i < best.size(); i++) {
      for (int j = i + 1; j < best.size(); j++) {
        boolean inOrder = best.get(i).a.front() < best.get(j).a.front();
        Hypothesis first = best.get(inOrder ? i : j);
        Hypothesis second = best.get(inOrder ? j : i);
        if (first.a.tail() < second.a.front() && first.b.tail() < second.b.front()) {
          keep(List.of(first, second), StoryTold.Kind.TWO_ARROWS);
        }
      }
    }
  }

  private Story noArrow(Knowledge knowledge) {
    double straysA = restA.cost(List.of());
    double straysB = restB.cost(List.of());
    double lampA = Lamp.of(a).costNats();
    double lampB = Lamp.of(b).costNats();
    double cost = Math.min(straysA, lampA) + Math.min(straysB, lampB);
    if (lampA < straysA || lampB < straysB) {
      return new Story(List.of(), cost, StoryTold.Kind.LAMP);
    }
    double gain = OtherObjects.gain(a, b, prior, knowledge);
    return gain > 0
        ? new Story(List.of(), cost - gain, StoryTold.Kind.OTHER_OBJECTS)
        : new Story(List.of(), cost, StoryTold.Kind.STRAYS_ALONE);
  }

  Part[] parts(Story story, int gate) {
    Remainder rest = gate == 0 ? restA : restB;
    boolean lamp =
        story.kind() == StoryTold.Kind.LAMP
            && Lamp.of(gate == 0 ? a : b).costNats() < rest.cost(List.of());
    return lamp ? rest.lamp() : rest.parts(story.arrows());
  }
}
