// Stamps are taken by interrupts; everything else is this loop, which waits for nothing.
#include <avr/interrupt.h>
#include <avr/io.h>
#include <avr/sleep.h>
#include <avr/wdt.h>

#include "boot_count.h"
#include "clock.h"
#include "command.h"
#include "edges.h"
#include "key.h"
#include "light.h"
#include "said.h"
#include "stamp.h"
#include "uart.h"

// What comes between the question and the sleep is seen at the next of the timers' interrupts. To
// ask without interrupts would make stamps late.
static void idle(uint32_t now) {
  if (!edges_waiting() && uart_queued() == 0 && !said_soon(now)) {
    sleep_cpu();
  }
}

// Whenever a byte's interrupt comes amid this, one of its two marks stays for the edge that waited. Each
// assignment is one instruction.
static void age_byte_marks(void) {
  if (GPIOR0 & BYTE_IN) {
    GPIOR0 |= BYTE_IN_BEFORE;
    GPIOR0 &= (uint8_t)~BYTE_IN;
  } else {
    GPIOR0 &= (uint8_t)~BYTE_IN_BEFORE;
  }
}

int main(void) {
  wdt_enable(WDTO_500MS);
  key_start();
  clock_start();
  edges_start();
  uart_start();
  sei();
  light_start();
  set_sleep_mode(SLEEP_MODE_IDLE);
  sleep_enable();
  const uint16_t boot = boot_count_next();
  said_start(boot);
  for (;;) {
    age_byte_marks();
    wdt_reset();
    uart_poll();
    const uint64_t now = clock_now();
    edges_collect();
    uart_poll();
    if (command_poll(boot)) {
      said_identity_wanted();
    }
    key_poll((uint32_t)now);
    light_poll((uint32_t)now);
    uart_poll();
    said_poll(now);
    idle((uint32_t)now);
  }
}
