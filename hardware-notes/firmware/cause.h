// Why the board started: P power, B brown-out, W watchdog, E reset pin, U unknown.
#pragma once

char cause_of_start(void);
