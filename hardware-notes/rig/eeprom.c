#include "rig.h"

#include <simavr/avr_eeprom.h>
#include <stdlib.h>
#include <string.h>

#define EECR 0x3F
#define EEMPE 4
#define EEPE 2
#define SIZE 1024
#define WRITE_CYCLES (HZ / 10000 * 34) // data sheet: 3.4 ms

static const char *file;
static uint8_t *cells;
static unsigned writes[SIZE];
static avr_io_write_t control;
static void *control_param;
static uint16_t place;
static uint64_t busy_until;
static uint8_t old;

static avr_cycle_count_t ready(avr_t *chip, avr_cycle_count_t when, void *param) {
  (void)when, (void)param;
  chip->data[EECR] &= (uint8_t)~EEPE;
  return 0;
}

static void write_control(avr_t *chip, avr_io_addr_t address, uint8_t value, void *param) {
  (void)param;
  bool writing = chip->data[EECR] & EEMPE && value & EEPE;
  uint16_t where = (uint16_t)(chip->data[0x41] | chip->data[0x42] << 8) % SIZE;
  uint8_t before = cells[where];
  uint8_t busy = chip->data[EECR] & EEPE;
  control(chip, address, value, control_param);
  if (writing) {
    place = where;
    old = before;
    writes[where]++;
    busy_until = chip->cycle + WRITE_CYCLES;
    busy = EEPE;
    avr_cycle_timer_register(chip, WRITE_CYCLES, ready, NULL);
  }
  chip->data[EECR] |= busy;
}

void eeprom_watch(void) {
  avr_eeprom_desc_t all = {NULL, 0, SIZE};
  avr_ioctl(avr, AVR_IOCTL_EEPROM_GET, &all);
  cells = all.ee;
  control = avr->io[AVR_DATA_TO_IO(EECR)].w.c;
  control_param = avr->io[AVR_DATA_TO_IO(EECR)].w.param;
  avr->io[AVR_DATA_TO_IO(EECR)].w.c = write_control;
  FILE *in = file == NULL ? NULL : fopen(file, "rb");
  if (in != NULL) {
    if (fread(cells, 1, SIZE, in) != SIZE) {
      fail("%s isn't an EEPROM's %d bytes.", file, SIZE);
    }
    fclose(in);
  }
}

void eeprom_load(const char *path) {
  file = path;
}

void eeprom_save(void) {
  if (file != NULL) {
    FILE *out = fopen(file, "wb");
    if (out == NULL || fwrite(cells, 1, SIZE, out) != SIZE || fclose(out) != 0) {
      fail("%s can't be written.", file);
    }
  }
}

void eeprom_seed(unsigned seed) {
  srandom(seed);
}

// A cell that loses its power amid a write holds the old, nothing, some of the new, or anything.
void eeprom_cut(void) {
  if (avr->cycle >= busy_until) {
    return;
  }
  uint8_t new = cells[place];
  switch (random() % 4) {
    case 0:
      cells[place] = old;
      break;
    case 1:
      cells[place] = 0xFF;
      break;
    case 2:
      cells[place] = new | (uint8_t)random();
      break;
    default:
      cells[place] = (uint8_t)random();
  }
  busy_until = 0;
}

void eeprom_after_reset(void) {
  if (avr->cycle < busy_until) { // another reset than the power's lets the write go on
    avr->data[EECR] |= EEPE;
    avr_cycle_timer_register(avr, busy_until - avr->cycle, ready, NULL);
  }
}

unsigned eeprom_most_writes(void) {
  unsigned most = 0;
  for (int i = 0; i < SIZE; i++) {
    most = writes[i] > most ? writes[i] : most;
  }
  return most;
}
