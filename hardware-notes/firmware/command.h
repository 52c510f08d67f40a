// What the host asks: "?" for the identity, "R,boot,edge" for edges again.
#pragma once

#include <stdbool.h>
#include <stdint.h>

// Reads what has come in. True where the identity is to be said.
bool command_poll(uint16_t boot);
