// libsimavr 1.6 does these otherwise than the chip.
#include "rig.h"

#include <simavr/avr_uart.h>
#include <string.h>

#define TIFR1 0x36
#define EIFR 0x3C
#define UBRR0L 0xC4
#define INT0_VECTOR 1
#define INT1_VECTOR 2
#define TIMER1_OVF_VECTOR 13
#define SLEEPING_CYCLES 7 // to wake takes 4 and to enter 4; the simulator counts one of them
#define RUNNING_CYCLES 4

static avr_io_write_t set_speed;
static void *set_speed_param;
static bool slept;

static avr_int_vector_t *vector(uint8_t number) {
  for (int i = 0; i < avr->interrupts.vector_count; i++) {
    if (avr->interrupts.vector[i]->vector == number) {
      return avr->interrupts.vector[i];
    }
  }
  fail("the simulator knows no interrupt %d.", number);
}

static void clear(uint8_t number) {
  avr_int_vector_t *it = vector(number);
  it->pending = 0;
  avr_regbit_clear(avr, it->raised);
}

// Writing a one clears that flag; the simulator clears all.
static void write_timer_flags(avr_t *chip, avr_io_addr_t address, uint8_t value, void *param) {
  (void)chip, (void)address, (void)param;
  if (value & 1) {
    clear(TIMER1_OVF_VECTOR);
  }
}

// The simulator would set the flags that are written.
static void write_edge_flags(avr_t *chip, avr_io_addr_t address, uint8_t value, void *param) {
  (void)chip, (void)address, (void)param;
  if (value & 1) {
    clear(INT0_VECTOR);
  }
  if (value & 2) {
    clear(INT1_VECTOR);
  }
}

static avr_uart_t *uart(void) {
  for (avr_io_t *part = avr->io_port; part != NULL; part = part->next) {
    if (strcmp(part->kind, "uart") == 0) {
      return (avr_uart_t *)part;
    }
  }
  fail("the simulator has no serial line.");
}

// Start, eight bits, stop: the simulator has a parity bit too.
static void write_speed(avr_t *chip, avr_io_addr_t address, uint8_t value, void *param) {
  (void)param;
  set_speed(chip, address, value, set_speed_param);
  uart()->cycles_per_byte = uart()->cycles_per_byte / 11 * 10;
}

// Entering an interrupt takes no time in the simulator.
static void enter(struct avr_irq_t *irq, uint32_t value, void *param) {
  (void)irq, (void)param;
  if (value) {
    avr->cycle += slept ? SLEEPING_CYCLES : RUNNING_CYCLES;
  }
}

static void dont_sleep(avr_t *chip, avr_cycle_count_t cycles) {
  (void)chip, (void)cycles;
}

void mend_asleep(bool asleep) {
  slept = asleep;
}

void mend_simulator(void) {
  avr->io[AVR_DATA_TO_IO(TIFR1)].w.c = write_timer_flags;
  avr->io[AVR_DATA_TO_IO(EIFR)].w.c = write_edge_flags;
  set_speed = avr->io[AVR_DATA_TO_IO(UBRR0L)].w.c;
  set_speed_param = avr->io[AVR_DATA_TO_IO(UBRR0L)].w.param;
  avr->io[AVR_DATA_TO_IO(UBRR0L)].w.c = write_speed;
  for (int i = 0; i < avr->interrupts.vector_count; i++) {
    avr_irq_register_notify(avr->interrupts.vector[i]->irq + AVR_INT_IRQ_RUNNING, enter, NULL);
  }
  avr->sleep = dont_sleep;
}

void mend_after_reset(void) {
  uint32_t flags = 0; // neither words on the console nor pauses while the firmware polls
  avr_ioctl(avr, AVR_IOCTL_UART_SET_FLAGS('0'), &flags);
}
