#include "clock.h"

#include <avr/interrupt.h>
#include <avr/io.h>

#include "stamp.h"

static uint32_t overflows;

void clock_start(void) {
  // Both timers start at once, so Timer0 interrupts only where Timer1's low 13 bits are 0: whoever
  // judges how late a stamp may be knows it by the stamp.
  GTCCR = _BV(TSM) | _BV(PSRSYNC);
  TCNT0 = 0;
  TCNT1 = 0;
  TIFR0 = _BV(TOV0);
  TIFR1 = _BV(TOV1);
  TIMSK0 = _BV(TOIE0);
  TIMSK1 = _BV(TOIE1);
  TCCR1A = 0;
  TCCR1B = _BV(CS11); // 16 MHz / 8
  TCCR0B = _BV(CS02); // 16 MHz / 256
  GTCCR = 0;
}

// Interrupts read the timer too, through the one register that holds its high byte meanwhile; so
// what was read counts only if none came.
uint64_t clock_now(void) {
  uint8_t head, losses, low_byte;
  uint16_t ticks;
  do {
    head = stamp_head;
    losses = stamp_losses;
    low_byte = OVERFLOWS;
    ticks = TCNT1;
    __asm__ volatile("nop"); // an overflow's interrupt comes in now, if it does
  } while (head != stamp_head || losses != stamp_losses || low_byte != OVERFLOWS);
  overflows += (uint8_t)(low_byte - (uint8_t)overflows);
  return (uint64_t)overflows << 16 | ticks;
}

uint32_t clock_overflows(uint8_t low_byte) {
  return overflows + (int8_t)(low_byte - (uint8_t)overflows);
}
