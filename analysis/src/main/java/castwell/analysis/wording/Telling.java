package castwell.analysis.wording;

/** Something that can be told to a person, such as why an action failed. */
public interface Telling {

  Phrase phrase();
}
