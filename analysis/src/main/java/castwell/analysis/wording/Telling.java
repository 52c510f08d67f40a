package castwell.analysis.wording;

/** What can be told to a person: why something wasn't done, for one. */
public interface Telling {

  Phrase phrase();
}
