package castwell.capture.publish;

/** What is said where, of one station. */
public record Topics(String station) {

  /** Shots, new and changed. */
  public String shot() {
    return of("shot");
  }

  /** That figures of earlier shots were derived anew. */
  public String refresh() {
    return of("refresh");
  }

  public String status() {
    return of("status");
  }

  /** Who shoots what. */
  public String tags() {
    return of("tags");
  }

  /** Where others say who shoots what. */
  public String tagsToSet() {
    return of("tags/set");
  }

  /** Why what they said couldn't be. */
  public String tagsRefused() {
    return of("tags/refused");
  }

  public String health() {
    return of("health");
  }

  public String plan() {
    return of("plan");
  }

  /** The board's bytes, and what is said to it. */
  public String wire() {
    return of("wire");
  }

  private String of(String what) {
    return "castwell/" + station + "/" + what;
  }
}
