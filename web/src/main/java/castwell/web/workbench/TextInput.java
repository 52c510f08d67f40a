package castwell.web.workbench;

/**
 * A field for words.
 *
 * @param name the API's name
 * @param value the present words, "" where none are known
 */
public record TextInput(String name, String label, String value) {}
