// What the interrupts leave for the main loop. They only note; the main loop thinks.
#pragma once

#include <stdint.h>

#define STAMPS_BYTES 256 // so that a byte holds the offset of every stamp

struct stamp {
  uint8_t ticks_low;
  uint8_t ticks_high;
  uint8_t overflows; // the low byte of how often the timer had overflowed
  uint8_t pins;      // port D, a few cycles after the ticks were read
  uint8_t flags;     // EIFR, a few cycles later still: has another edge come already?
  uint8_t gate;      // bit 0; and BYTES_IN while this edge may have waited for a byte's interrupt
  uint8_t end;       // low byte of the ticks when the interrupt was nearly over
  uint8_t losses;    // stamp_losses before this stamp
};

// Stamps for which there was no room, by gate.
struct stamp_loss {
  uint16_t count;
  uint8_t first[3]; // ticks low, ticks high, overflows
  uint8_t last[3];
};

extern struct stamp stamps[STAMPS_BYTES / sizeof(struct stamp)];
extern volatile uint8_t stamp_head;   // offset in bytes; the interrupts write it
extern volatile uint8_t stamp_tail;   // the main loop writes it
extern volatile uint8_t stamp_losses; // one up for each stamp without room
extern volatile uint8_t stamp_bank;   // 0 or 2: which two of stamp_lost the interrupts count in
extern struct stamp_loss stamp_lost[4];

// Bytes from the host, put there by the interrupt.
#define HEARD_BYTES 32
extern uint8_t heard[HEARD_BYTES];
extern volatile uint8_t heard_head;

#define OVERFLOWS GPIOR1          // counted by the interrupts
#define BYTE_IN _BV(7)            // in GPIOR0, set by the interrupt of a byte
#define BYTE_IN_BEFORE _BV(6)     // the same, one round of the main loop later
#define BYTES_IN (BYTE_IN | BYTE_IN_BEFORE)
