package castwell.web.rig;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The firmware's machine code, function by function, as binutils reads it. */
final class Disassembly {
  private static final Pattern LABEL = Pattern.compile("^[0-9a-f]{8} <([^>]+)>:$");
  private static final Pattern LINE = Pattern.compile("^\\s+([0-9a-f]+):\\t[0-9a-f ]+\\t(.*)$");
  private static final Pattern TARGET =
      Pattern.compile("; 0x([0-9a-f]+) <([^+>]+)(\\+0x[0-9a-f]+)?>");

  private final Map<String, List<Instruction>> functions = new LinkedHashMap<>();
  private final Map<String, Integer> frames = new HashMap<>();

  /**
   * @param target where it goes, if anywhere
   * @param into the function where that is
   */
  record Instruction(long address, String words, long target, String into) {
    String verb() {
      return words.split("\\s")[0];
    }

    /** Calls that come back here; "rcall .+0" only makes room on the stack. */
    boolean calls() {
      return verb().matches("r?call|[ie]*icall") && !words.matches("rcall\\s+\\.\\+0\\b.*");
    }

    boolean jumps() {
      return verb().matches("r?jmp|br..") && target >= 0;
    }
  }

  private Disassembly() {}

  static Disassembly ofFirmware() {
    Disassembly all = new Disassembly();
    List<Instruction> into = new ArrayList<>();
    for (String line : Firmware.run("avr-objdump", "-d", Firmware.elf().toString()).split("\n")) {
      Matcher label = LABEL.matcher(line);
      Matcher code = LINE.matcher(line);
      if (label.matches()) {
        into = new ArrayList<>();
        all.functions.put(label.group(1), into);
      } else if (code.matches()) {
        Matcher target = TARGET.matcher(code.group(2));
        boolean goes = target.find();
        into.add(
            new Instruction(
                Long.parseLong(code.group(1), 16),
                code.group(2),
                goes ? Long.parseLong(target.group(1), 16) : -1,
                goes ? target.group(2) : ""));
      }
    }
    for (String use : Firmware.stackUses()) {
      String[] columns = use.split("\t");
      String name = columns[0].substring(columns[0].lastIndexOf(':') + 1);
      all.frames.merge(name, Integer.parseInt(columns[1]), Math::max);
    }
    return all;
  }

  List<Instruction> function(String name) {
    return functions.get(name);
  }

  /** All instructions that can come after entering there, by jumps alone. */
  List<Instruction> reachedFrom(String name) {
    return reachedFrom(functions.get(name).get(0).address);
  }

  List<Instruction> reachedFrom(long start) {
    Map<Long, Instruction> byAddress = new HashMap<>();
    Map<Long, Long> next = new HashMap<>();
    functions
        .values()
        .forEach(
            code -> {
              for (int i = 0; i < code.size(); i++) {
                byAddress.put(code.get(i).address, code.get(i));
                if (i > 0) {
                  next.put(code.get(i - 1).address, code.get(i).address);
                }
              }
            });
    functions.forEach(
        (label, code) -> {
          if (!code.isEmpty()) { // from the end of one label's code to the next one's
            Instruction last = code.get(code.size() - 1);
            byAddress.keySet().stream()
                .filter(a -> a > last.address && a <= last.address + 4)
                .min(Long::compare)
                .ifPresent(a -> next.putIfAbsent(last.address, a));
          }
        });
    Map<Long, Instruction> reached = new LinkedHashMap<>();
    List<Long> open = new ArrayList<>(List.of(start));
    while (!open.isEmpty()) {
      long address = open.remove(open.size() - 1);
      Instruction it = byAddress.get(address);
      if (it == null || reached.putIfAbsent(address, it) != null || it.verb().equals("reti")) {
        continue;
      }
      if (it.jumps()) {
        open.add(it.target);
      }
      if (!it.verb().matches("r?jmp")) {
        open.add(next.get(address));
        if (it.verb().matches("sb[ir][cs]|cpse")) { // they skip one
          open.add(next.get(next.get(address)));
        }
      }
    }
    return List.copyOf(reached.values());
  }

  /** What main does in its loop, and all that is called from there, by address. */
  List<Instruction> afterTheStart() {
    List<Instruction> main = functions.get("main");
    Instruction back =
        main.stream()
            .filter(it -> it.verb().matches("r?jmp") && it.target < it.address)
            .reduce((first, second) -> second)
            .orElseThrow();
    Set<String> called = new HashSet<>();
    List<Instruction> all = new ArrayList<>();
    List<Instruction> open =
        new ArrayList<>(main.stream().filter(it -> it.address >= back.target).toList());
    while (!open.isEmpty()) {
      Instruction it = open.remove(open.size() - 1);
      all.add(it);
      boolean elsewhere = it.calls() || it.jumps() && !it.into.equals("main");
      if (elsewhere && functions.containsKey(it.into) && called.add(it.into)) {
        open.addAll(functions.get(it.into));
      }
    }
    return all.stream().sorted(Comparator.comparingLong(Instruction::address)).toList();
  }

  /** The most stack that a function and all it calls take, with the returns' addresses. */
  int deepestStack(String name) {
    return deepest(name, new HashSet<>());
  }

  private int deepest(String name, Set<String> above) {
    if (!above.add(name)) {
      throw new AssertionError(name + " calls itself, so its stack has no bound: " + above);
    }
    List<Instruction> code = functions.get(name);
    int pushes = (int) code.stream().filter(it -> it.verb().equals("push")).count();
    int below = 0;
    for (Instruction it : code) {
      if (it.verb().matches("[ie]*icall|[ie]*ijmp")) {
        throw new AssertionError(name + " calls what only it knows: " + it);
      }
      boolean leaves = it.jumps() && !it.into.equals(name) && functions.containsKey(it.into);
      if (it.calls() || leaves && !above.contains(it.into)) {
        below = Math.max(below, deepest(it.into, above));
      }
    }
    above.remove(name);
    return below + frames.getOrDefault(name, 2 + pushes);
  }
}
