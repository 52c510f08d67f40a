package castwell.capture.publish;

/** The names of one station's topics. */
public record Topics(String station) {

  /** Carries shots, new and changed. */
  public String shot() {
    return of("shot");
  }

  /** Says that figures of earlier shots were derived anew. */
  public String refresh() {
    return of("refresh");
  }

  public String status() {
    return of("status");
  }

  /** Carries the tags: who shoots what. */
  public String tags() {
    return of("tags");
  }

  /** Takes wishes of others on the tags. */
  public String tagsToSet() {
    return of("tags/set");
  }

  /** Says why a wish on the tags was refused. */
  public String tagsRefused() {
    return of("tags/refused");
  }

  public String health() {
    return of("health");
  }

  public String plan() {
    return of("plan");
  }

  /** Carries the board's bytes, and what is sent to it. */
  public String wire() {
    return of("wire");
  }

  private String of(String what) {
    return "castwell/" + station + "/" + what;
  }
}
