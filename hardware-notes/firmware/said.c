#include "said.h"

#include "cause.h"
#include "clock.h"
#include "edges.h"
#include "keep.h"
#include "key.h"
#include "light.h"
#include "losses.h"
#include "sentence.h"
#include "uart.h"

#define FIRMWARE "castwell-1"
#define LATENCY_NS 500 // on average: to wake, enter and read, less the tick that has begun
#define IDENTITY_TICKS (60 * HZ)
#define DITHER_TICKS (HZ / 1000 * 16)
#define WAKES 0x1FFF // the timer wakes the board where these low bits of the counter are 0

static uint16_t boot;
static uint16_t chance;
static bool identity_wanted = true;
static uint32_t identified_at;
static uint32_t beat_at;

void said_start(uint16_t this_boot) {
  boot = this_boot;
  chance = this_boot | 1;
  beat_at = (uint32_t)clock_now() + HZ / 5;
}

void said_identity_wanted(void) {
  identity_wanted = true;
}

static uint16_t dither(void) { // Marsaglia's xorshift with 7, 9, 8
  chance ^= chance << 7;
  chance ^= chance >> 9;
  chance ^= chance << 8;
  return chance % (DITHER_TICKS + 1);
}

static void say_identity(void) {
  sentence_begin('I');
  sentence_number(1);
  sentence_text(FIRMWARE);
  sentence_text(DEVICE);
  sentence_number(boot);
  sentence_number(HZ);
  sentence_number(2);
  sentence_number(LATENCY_NS);
  sentence_number(LATENCY_NS);
  sentence_number(KEEP);
  sentence_character(cause_of_start());
  sentence_end();
}

static void say_beat(void) {
  uint64_t now = clock_now();
  uint8_t queued = uart_queued();
  sentence_begin('H');
  sentence_number(boot);
  sentence_long(now);
  sentence_number(queued);
  sentence_number(keep_highest());
  sentence_number(edges_merged());
  sentence_number(losses_total());
  sentence_pair(edges_level(0), edges_level(1));
  sentence_number(light_level(0));
  sentence_number(light_level(1));
  if (light_supply_mv() == 0) {
    sentence_unknown();
  } else {
    sentence_number(light_supply_mv());
  }
  if (light_chip_centidegrees() == INT16_MIN) {
    sentence_unknown();
  } else {
    sentence_signed(light_chip_centidegrees());
  }
  sentence_unknown(); // this board has no sensor of the air
  sentence_unknown();
  sentence_end();
}

static void say_loss(uint8_t gate, const struct loss *loss) {
  sentence_begin('L');
  sentence_number(boot);
  sentence_character((char)('A' + gate));
  sentence_number(loss->first);
  sentence_number(loss->last);
  sentence_number(loss->count);
  sentence_end();
}

static void say_key(char press, uint32_t ticks) {
  sentence_begin('K');
  sentence_number(boot);
  sentence_number(1);
  sentence_character(press);
  sentence_number(ticks);
  sentence_end();
}

static void say_missing(uint32_t first, uint32_t last) {
  sentence_begin('M');
  sentence_number(boot);
  sentence_number(first);
  sentence_number(last);
  sentence_end();
}

static void say_edge(uint32_t number, const struct edge *edge) {
  sentence_begin('E');
  sentence_number(boot);
  sentence_number(number);
  sentence_character((char)('A' + (edge->what >> 7)));
  sentence_character((char)(edge->what & 0x7F));
  sentence_number(edge->ticks);
  sentence_number(edge->late);
  sentence_end();
}

void said_poll(uint64_t now48) {
  uint32_t now = (uint32_t)now48;
  uint32_t number, last;
  struct loss loss;
  struct edge edge;
  uint8_t gate;
  char press;
  if (uart_room() < SENTENCE_BYTES) {
    return;
  }
  if (identity_wanted || now - identified_at >= IDENTITY_TICKS) {
    identity_wanted = false;
    identified_at = now;
    say_identity();
  } else if ((int32_t)(now - beat_at) >= 0) {
    beat_at = now + HZ - DITHER_TICKS / 2 + dither();
    say_beat();
  } else if (losses_take(now, &gate, &loss)) {
    say_loss(gate, &loss);
  } else if (key_take(&press, &number)) {
    say_key(press, number);
  } else if (keep_take_missing(&number, &last)) {
    say_missing(number, last);
  } else if (keep_take(&number, &edge)) {
    say_edge(number, &edge);
  }
}

bool said_soon(uint32_t now) {
  return identity_wanted || keep_waiting() || (int32_t)((now | WAKES) + 0x80 - beat_at) >= 0;
}
