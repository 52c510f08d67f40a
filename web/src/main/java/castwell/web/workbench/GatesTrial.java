package castwell.web.workbench;

import static castwell.web.unit.Dimension.FINE_LENGTH;
import static castwell.web.unit.Dimension.SPEED;

import castwell.analysis.cell.CellSummary;
import castwell.analysis.speed.Calibration;
import castwell.capture.command.Refused;
import castwell.capture.store.Calibrations;
import castwell.capture.store.Sessions.Session;
import castwell.capture.store.Shot;
import castwell.capture.store.Transaction;
import castwell.web.chart.FigureTable;
import castwell.web.report.session.SessionMeans;
import castwell.web.workbench.SessionPage.Gates;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * Shows what another measurement of a session's gates would change, before anybody agrees to it.
 */
public final class GatesTrial {
  private final PageRequest request;
  private final Session session;
  private final Optional<Calibrations.Entry> now;
  private final Instant from;
  private final Optional<Instant> to;
  private final OnTrial trial;

  /** Derives a station's shots anew under other gates, has them looked at, and undoes it. */
  public interface OnTrial {
    <T> T tryOut(
        String station,
        Instant from,
        Optional<Instant> to,
        Calibration gates,
        Function<Transaction, T> look);
  }

  GatesTrial(PageRequest request, Session session, List<Shot> shots, OnTrial trial) {
    this.request = request;
    this.session = session;
    this.now = SessionPage.inForce(request, session, shots);
    this.trial = trial;
    Instant first = shots.isEmpty() ? session.startedMs() : shots.get(0).fired();
    this.from = first.isBefore(session.startedMs()) ? first : session.startedMs();
    this.to = request.t().sessions().next(session).map(Session::startedMs);
  }

  Gates gates() {
    OptionalDouble spacing = request.quantity("spacing", FINE_LENGTH);
    OptionalDouble spacingU = request.quantity("spacing_u", FINE_LENGTH);
    Optional<Calibration> wanted = Optional.empty();
    String refused = "";
    Optional<FigureTable> trial = Optional.empty();
    try {
      if (spacing.isPresent() && now.isPresent()) {
        Calibration gates = now.get().calibration();
        wanted =
            Optional.of(gates.spaced(spacing.getAsDouble(), spacingU.orElse(gates.spacingUM())));
        trial = Optional.of(trial(wanted.get()));
      }
    } catch (IllegalArgumentException e) {
      refused = e.getMessage() + ".";
    } catch (Refused e) {
      refused = request.speech().say(e.phrase());
    }
    return new Gates(
        now.map(entry -> SessionPage.gates(request, entry.calibration())).orElse(List.of()),
        field("spacing", "gates.spacing", spacing, now.map(e -> e.calibration().spacingM())),
        field("spacing_u", "gates.spacing_u", spacingU, now.map(e -> e.calibration().spacingUM())),
        trial,
        refused,
        from.toString(),
        to.map(Instant::toString).orElse(""),
        wanted.map(gates -> String.valueOf(gates.spacingM() * 1e3)).orElse(""),
        wanted.map(gates -> String.valueOf(gates.spacingUM() * 1e3)).orElse(""));
  }

  private NumberInput field(String name, String key, OptionalDouble wanted, Optional<Double> now) {
    OptionalDouble value =
        wanted.isPresent() || now.isEmpty() ? wanted : OptionalDouble.of(now.get());
    return NumberInput.of(request.speech(), name, key, FINE_LENGTH, value);
  }

  private FigureTable trial(Calibration gates) {
    Map<String, CellSummary> before = SessionMeans.of(request.t(), request.zone(), session.name());
    Map<String, CellSummary> after =
        trial.tryOut(
            session.station(),
            from,
            to,
            gates,
            t -> SessionMeans.of(t, request.zone(), session.name()));
    FigureTable.Rows rows =
        new FigureTable.Rows(
            request.say("session.cell"),
            request.say("shots"),
            request.say("gates.was"),
            request.say("gates.becomes"),
            request.say("gates.by"));
    before.forEach(
        (name, was) -> {
          CellSummary is = after.get(name);
          boolean isAtBow = was.cell().atBow().isKnown();
          rows.add(
              name + ", " + request.say(isAtBow ? "speed.at_bow" : "speed.at_gates"),
              was.n() + " → " + (is == null ? 0 : is.n()),
              request.speech().figure(SPEED, was.meanMps()),
              is == null ? "–" : request.speech().figure(SPEED, is.meanMps()),
              is == null
                  ? "–"
                  : request.speech().plain(SPEED, is.meanMps().value() - was.meanMps().value()));
        });
    return rows.table();
  }
}
