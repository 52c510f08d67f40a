package castwell.capture.store;

import org.jdbi.v3.core.Handle;

/** One transaction's view of the store; each group of tables has its own class. */
public final class Transaction {
  private final Handle handle;
  private final Remembered remembered;

  Transaction(Handle handle, Remembered remembered) {
    this.handle = handle;
    this.remembered = remembered;
  }

  /** The handle is for this package and its tests only. */
  Handle handle() {
    return handle;
  }

  public Boards boards() {
    return new Boards(handle);
  }

  public RawFacts raw() {
    return new RawFacts(handle);
  }

  public Calibrations calibrations() {
    return new Calibrations(handle);
  }

  public Rack rack() {
    return new Rack(handle);
  }

  public Tags tags() {
    return new Tags(handle);
  }

  public Cells cells() {
    return new Cells(handle);
  }

  public KeptSeason season() {
    return new KeptSeason(handle);
  }

  /** What is worth remembering between transactions, since it takes long to work out. */
  public Remembered remembered() {
    return remembered;
  }

  public SessionNotes notes() {
    return new SessionNotes(handle);
  }

  public Retirements retirements() {
    return new Retirements(handle);
  }

  public Weighings weighings() {
    return new Weighings(handle);
  }

  public Sessions sessions() {
    return new Sessions(handle);
  }

  public Passages passages() {
    return new Passages(handle);
  }

  public Readings readings() {
    return new Readings(handle);
  }

  public ForceDraws forceDraws() {
    return new ForceDraws(handle);
  }

  public Weather weather() {
    return new Weather(handle);
  }

  public Figures figures() {
    return new Figures(handle);
  }

  public FrontsAndTails frontsAndTails() {
    return new FrontsAndTails(handle);
  }

  public Decisions decisions() {
    return new Decisions(handle);
  }

  public Shots shots() {
    return new Shots(handle);
  }

  /** The figures of what one board shot in one session. */
  public BoardFigures boardFigures(long sessionId, long boardId) {
    return new BoardFigures(handle, sessionId, boardId);
  }

  public FrontsDecisions frontsDecisions() {
    return new FrontsDecisions(handle);
  }

  public Renewals renewals() {
    return new Renewals(handle);
  }

  public BriefShots briefShots() {
    return new BriefShots(handle);
  }

  public StationBeats beats() {
    return new StationBeats(handle);
  }

  public Upkeep upkeep() {
    return new Upkeep(handle);
  }

  public Plans plans() {
    return new Plans(handle);
  }

  public Integrity integrity() {
    return new Integrity(handle);
  }

  public Holding holding() {
    return Holding.of(handle);
  }

  public Feed feed() {
    return new Feed(handle);
  }

  public Access access() {
    return new Access(handle);
  }
}
