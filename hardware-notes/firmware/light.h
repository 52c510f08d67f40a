// How much light the gates get, the supply and the chip's warmth, measured one after the other.
#pragma once

#include <stdint.h>

void light_start(void);
void light_poll(uint32_t now);

uint16_t light_level(uint8_t gate);
uint16_t light_supply_mv(void);     // 0: not known yet
int16_t light_chip_centidegrees(void);
