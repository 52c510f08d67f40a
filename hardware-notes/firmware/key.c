#include "key.h"

#include <avr/io.h>

#include "clock.h"

#define SAMPLE_TICKS (HZ / 100)
#define STEADY_SAMPLES 3
#define LONG_TICKS (HZ * 7 / 10)

static bool down;     // as told by steady samples
static uint8_t other; // samples in a row that say the contrary
static bool told;
static char waiting;
static uint32_t sampled_at, changing_since, down_since;

void key_start(void) {
  PORTD |= _BV(PORTD4);
}

void key_poll(uint32_t now) {
  if (now - sampled_at < SAMPLE_TICKS) {
    return;
  }
  sampled_at = now;
  bool closed = !(PIND & _BV(PIND4));
  if (closed == down) {
    other = 0;
  } else if (other++ == 0) {
    changing_since = now;
  } else if (other == STEADY_SAMPLES) {
    other = 0;
    down = closed;
    if (down) {
      down_since = changing_since;
      told = false;
    } else if (!told) {
      waiting = 'S';
    }
  }
  if (down && !told && now - down_since >= LONG_TICKS) {
    told = true;
    waiting = 'L';
  }
}

bool key_take(char *press, uint32_t *ticks) {
  if (waiting == 0) {
    return false;
  }
  *press = waiting;
  *ticks = down_since;
  waiting = 0;
  return true;
}
