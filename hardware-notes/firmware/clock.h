// One counter at 2 MHz: Timer1, its overflows counted to 48 bits.
#pragma once

#include <stdint.h>

#define HZ 2000000UL

void clock_start(void);

// The counter now. Called at least every 8 s, or overflows are lost: the watchdog sees to that.
uint64_t clock_now(void);

// How often the timer had overflowed when it had done so this often, modulo 256, lately.
uint32_t clock_overflows(uint8_t low_byte);
