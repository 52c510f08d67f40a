// One sentence of the wire, field by field, straight to the serial line.
#pragma once

#include <stdbool.h>
#include <stdint.h>

#define SENTENCE_BYTES 120

void sentence_begin(char type);
void sentence_number(uint32_t number);
void sentence_long(uint64_t number);
void sentence_signed(int16_t number);
void sentence_text(const char *text);
void sentence_character(char c);
void sentence_pair(char a, char b);
void sentence_unknown(void);
void sentence_end(void);
