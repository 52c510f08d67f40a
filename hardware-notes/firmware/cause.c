#include "cause.h"

#include <avr/io.h>
#include <avr/wdt.h>
#include <stdint.h>

static uint8_t flags __attribute__((section(".noinit")));

// Before anything else: after the watchdog's reset it goes on, at its shortest time.
void cause_read(void) __attribute__((naked, used, section(".init3")));

void cause_read(void) {
  flags = MCUSR;
  MCUSR = 0;
  wdt_disable();
}

char cause_of_start(void) {
  return flags & _BV(PORF)    ? 'P'
         : flags & _BV(BORF)  ? 'B'
         : flags & _BV(WDRF)  ? 'W'
         : flags & _BV(EXTRF) ? 'E'
                              : 'U';
}
