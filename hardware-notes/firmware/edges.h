// Stamps become edges: which kind, how late at most, and whether they are an arrow's at all.
#pragma once

#include <stdbool.h>
#include <stdint.h>

// Called before the gates' interrupts are let in.
void edges_start(void);

// Makes an edge of one stamp, if one waits.
void edges_collect(void);
bool edges_waiting(void);

uint32_t edges_merged(void);

// 'B' or 'C', now.
char edges_level(uint8_t gate);
