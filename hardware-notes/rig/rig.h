// The parts of the rig and what they ask of each other. Times are cycles of 16 MHz since the start.
#pragma once

#include <simavr/sim_avr.h>
#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>

#define HZ 16000000ULL

// One sentence, and the end.
void fail(const char *format, ...) __attribute__((noreturn, format(printf, 1, 2)));

// script.c: what is to happen, in order.
enum deed { EDGE, KEY, LIGHT, SUPPLY, WARMTH, SKIP, RESET, HANG, UNPLUG, PLUG, SAY, END };

struct event {
  uint64_t at;
  enum deed deed;
  char who;       // gate of an edge or a light, cause of a reset
  int value;      // level of a pin, counts, millivolts
  const char *text;
};

void script_read(const char *path);
const struct event *script_next(void); // NULL where nothing is left
void script_done(void);

// board.c: the simulated chip.
extern avr_t *avr;
void board_start(const char *elf);
void board_run(void);

// mend.c: what the simulator does otherwise than the chip.
void mend_simulator(void);
void mend_after_reset(void);
void mend_asleep(bool asleep); // before each step

// eeprom.c: a write takes its time, and may be cut.
void eeprom_load(const char *path);
void eeprom_save(void);
void eeprom_watch(void);
void eeprom_cut(void);
void eeprom_after_reset(void);
unsigned eeprom_most_writes(void);
void eeprom_seed(unsigned seed);

// line.c: the serial line, byte by byte at the wire's speed.
void line_start(const char *recording);
void line_after_reset(void);
void line_say(const char *text, size_t length);
void line_end(void);

// cable.c: a pseudo-terminal as the host's port.
void cable_start(const char *link);
bool cable_wanted(void);
void cable_plug(void);
void cable_unplug(void);
void cable_byte(uint8_t byte); // from the board
void cable_poll(void);         // to the board
void cable_drain(void);

// measure.c
void measure_start(void);
void measure_step(void);
void measure_edge(const struct event *event);
void measure_truth(const char *path);
void measure_print(const char *path);
