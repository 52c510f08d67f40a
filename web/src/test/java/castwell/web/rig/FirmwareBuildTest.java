package castwell.web.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The firmware as it is built: no warning, room to spare, interrupts that can't wait. */
@Tag("rig")
@Timeout(300)
class FirmwareBuildTest {
  private static final int RAM = 2048; // ATmega328P data sheet
  private static final int FLASH_WITH_A_LOADER = 32_768 - 2048;
  private static final int SPARE_RAM = 128;

  /** 10 microseconds: what the second of two edges may wait. */
  private static final long CYCLES = 160;

  private static final Map<String, String> INTERRUPTS =
      Map.of(
          "__vector_1", "gate-A",
          "__vector_2", "gate-B",
          "__vector_13", "timer1-overflow",
          "__vector_16", "timer0-overflow",
          "__vector_18", "byte-in");

  @TempDir Path folder;

  @Test
  void theCompilersHaveNothingToSay() {
    assertThat(Firmware.said()).isEmpty();
  }

  @Test
  void noInterruptCallsOrGoesBack() {
    Disassembly code = Disassembly.ofFirmware();
    for (String interrupt : INTERRUPTS.keySet()) {
      List<Disassembly.Instruction> reached = code.reachedFrom(interrupt);
      assertThat(reached).anyMatch(it -> it.verb().equals("reti"));
      assertThat(reached).as(interrupt).noneMatch(Disassembly.Instruction::calls);
      assertThat(reached)
          .as("%s: a jump back that isn't the way out", interrupt)
          .noneMatch(it -> it.jumps() && it.target() <= it.address() && loops(code, it));
      assertThat(reached).noneMatch(it -> it.verb().matches("sei|sleep|ijmp"));
    }
  }

  /** Whether one can come from where it goes back to it. */
  private static boolean loops(Disassembly code, Disassembly.Instruction jump) {
    return code.reachedFrom(jump.target()).contains(jump);
  }

  /** Only where the compiler moves the stack's two bytes, which takes three cycles. */
  @Test
  void theMainLoopNeverForbidsInterruptsForLong() {
    List<Disassembly.Instruction> code = Disassembly.ofFirmware().afterTheStart();
    for (int i = 0; i < code.size(); i++) {
      if (code.get(i).verb().equals("cli")) {
        assertThat(code.get(i + 1).words()).startsWith("out\t0x3e");
        assertThat(code.get(i + 2).words()).startsWith("out\t0x3f");
      }
    }
  }

  @Test
  void flashAndRamHaveRoomForTheDeepestStack() {
    Map<String, Integer> sizes = sizes();
    int ram = sizes.get(".data") + sizes.get(".bss") + sizes.get(".noinit");
    int flash = sizes.get(".text") + sizes.get(".data");
    Disassembly code = Disassembly.ofFirmware();
    int interrupt = INTERRUPTS.keySet().stream().mapToInt(code::deepestStack).max().orElseThrow();
    int stack = code.deepestStack("main") + interrupt;
    RigRun run =
        RigRun.of(
            new Script()
                .flicker('A', 1, 3, 120)
                .flicker('B', 1, 3, 100)
                .at(3, "say ?")
                .at(5, "end"),
            folder);
    System.out.printf(
        "flash %d bytes; RAM %d and at most %d of stack (%d were used), %d spare%n",
        flash, ram, stack, run.measure("stack-bytes"), RAM - ram - stack);
    assertThat(flash).isLessThan(FLASH_WITH_A_LOADER);
    assertThat(RAM - ram - stack).isGreaterThan(SPARE_RAM);
    assertThat(run.measure("stack-bytes")).isBetween(40L, (long) stack);
  }

  private static Map<String, Integer> sizes() {
    return Arrays.stream(Firmware.run("avr-size", "-A", Firmware.elf().toString()).split("\n"))
        .filter(line -> line.startsWith("."))
        .map(line -> line.split("\\s+"))
        .collect(Collectors.toMap(words -> words[0], words -> Integer.parseInt(words[1])));
  }

  @Test
  void interruptsAreShort() {
    Script script = new Script();
    for (int i = 0; i < 2000; i++) { // as fast as they come, so that stamps find no room either
      script.at(1 + 7e-6 * i, "A " + (i % 2 == 0 ? "blocked" : "clear"));
      script.at(1 + 7e-6 * i, "B " + (i % 2 == 0 ? "blocked" : "clear"));
    }
    RigRun run = RigRun.of(script.at(1.005, "say R,0,1").at(3, "end"), folder);
    assertThat(run.last('H').number(7)).isPositive();
    INTERRUPTS.values().stream()
        .sorted()
        .forEach(
            name -> {
              long worst = run.measure(name + "-worst-cycles");
              System.out.printf("%s: at most %d cycles%n", name, worst);
              assertThat(run.measure(name + "-runs")).as(name).isPositive();
              assertThat(worst).as(name).isLessThanOrEqualTo(CYCLES);
            });
  }
}
