// Start n is written to place n modulo 256, so a cell is written at every 256th start alone. Each
// byte has its complement beside it: a write that lost its power leaves a place that doesn't hold,
// and the places before it still do.
#include "boot_count.h"

#include <avr/eeprom.h>
#include <stdbool.h>

#define PLACES 256
#define TRIES 8

struct place {
  uint8_t low, high, not_low, not_high;
};

static struct place places[PLACES] EEMEM;

static bool read(uint16_t index, uint16_t *count) {
  struct place place;
  eeprom_read_block(&place, &places[index], sizeof place);
  *count = (uint16_t)(place.high << 8 | place.low);
  return place.low == index && (place.low ^ place.not_low) == 0xFF &&
         (place.high ^ place.not_high) == 0xFF;
}

static void write(uint16_t count) {
  const struct place place = {(uint8_t)count, (uint8_t)(count >> 8), (uint8_t)~count,
                              (uint8_t)(~count >> 8)};
  eeprom_update_block(&place, &places[count % PLACES], sizeof place);
}

uint16_t boot_count_next(void) {
  bool any = false;
  uint16_t latest = 0;
  for (uint16_t index = 0; index < PLACES; index++) {
    uint16_t count;
    if (read(index, &count) && (!any || (int16_t)(count - latest) > 0)) {
      latest = count;
      any = true;
    }
  }
  uint16_t next = any ? latest + 1 : 0;
  for (uint8_t i = 0; i < TRIES; i++, next++) { // past a place that is worn out
    uint16_t count;
    write(next);
    if (read(next % PLACES, &count) && count == next) {
      break;
    }
  }
  return next;
}
