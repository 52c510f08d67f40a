// The count of starts, kept without power.
#pragma once

#include <stdint.h>

// One up; it is in the EEPROM when this returns. Takes up to 14 ms.
uint16_t boot_count_next(void);
