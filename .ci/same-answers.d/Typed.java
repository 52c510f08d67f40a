import castwell.web.cli.Castwell;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;

/**
 * Types the commands of a list into the program on the class path, all of them in one process since a
 * start each takes minutes: java -cp JAR Typed.java LIST FOLDER. The folder gets a file for each.
 */
class Typed {
  private static final Pattern WORD = Pattern.compile("'([^']*)'|\\S+");

  public static void main(String[] args) throws IOException {
    List<String> commands =
        Files.readAllLines(Path.of(args[0])).stream()
            .filter(line -> !line.isBlank() && !line.startsWith("#"))
            .toList();
    for (int i = 0; i < commands.size(); i++) {
      String name = commands.get(i).replaceAll("[^A-Za-z0-9.=?&,-]+", " ");
      Path answer = Path.of(args[1], "%03d %.70s".formatted(i + 1, name));
      Files.write(answer, answer(commands.get(i)).toByteArray());
    }
    System.exit(0); // whatever threads are left
  }

  private static ByteArrayOutputStream answer(String command) throws IOException {
    ByteArrayOutputStream said = new ByteArrayOutputStream();
    ByteArrayOutputStream complained = new ByteArrayOutputStream();
    System.setOut(new PrintStream(said, true));
    System.setErr(new PrintStream(complained, true));
    String[] words =
        WORD.matcher(command)
            .results()
            .map(word -> word.group(1) == null ? word.group() : word.group(1))
            .toArray(String[]::new);
    int code = Castwell.run(words);
    System.out.flush();
    String between = "--- exit code %d, and said of what went wrong:%n".formatted(code);
    ByteArrayOutputStream answer = new ByteArrayOutputStream();
    answer.writeBytes((command + System.lineSeparator()).getBytes());
    answer.writeBytes(said.toByteArray());
    answer.writeBytes(between.getBytes());
    answer.writeBytes(complained.toByteArray());
    return answer;
  }
}
