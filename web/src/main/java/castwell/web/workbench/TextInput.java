package castwell.web.workbench;

/**
 * Words to be filled in.
 *
 * @param name the API's
 * @param value as it is now, "" if none is known
 */
public record TextInput(String name, String label, String value) {}
