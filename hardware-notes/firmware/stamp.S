; The interrupts. The gates' read the timer as soon as one register is saved, since every cycle before
; that makes all stamps late. Nothing here waits or loops.

#define __SFR_OFFSET 0
#include <avr/io.h>

.section .bss
.global stamps, stamp_head, stamp_tail, stamp_losses, stamp_bank, stamp_lost, heard, heard_head
stamps:       .skip 256
stamp_lost:   .skip 32
heard:        .skip 32
stamp_head:   .skip 1
stamp_tail:   .skip 1
stamp_losses: .skip 1
stamp_bank:   .skip 1
heard_head:   .skip 1

.text

.macro gate_interrupt vector, gate
.global \vector
\vector:
  push r24
  lds  r24, TCNT1L
  push r25
  lds  r25, TCNT1H
  push r18
  in   r18, PIND
  push r19
  in   r19, SREG
  push r19
  push r30
  push r31
  lds  r30, stamp_head
  ldi  r31, 0
  subi r30, lo8(-(stamps))
  sbci r31, hi8(-(stamps))
  std  Z+3, r18
  in   r18, EIFR
  std  Z+4, r18
  in   r18, GPIOR0
  ori  r18, \gate
  rjmp note
.endm

gate_interrupt INT0_vect, 0
gate_interrupt INT1_vect, 1

; r24, r25: the ticks; r18: gate and whether a byte came in; Z: the stamp. The stamp at the head is
; never the main loop's, so it may be written before there is known to be room behind it.
note:
  std  Z+0, r24
  std  Z+1, r25
  std  Z+5, r18
  in   r19, GPIOR1
  sbis TIFR1, TOV1     ; an overflow that waits behind this interrupt is counted here
  rjmp counted
  sbi  TIFR1, TOV1
  inc  r19
  out  GPIOR1, r19
  sbrc r25, 7          ; but the ticks were read before it
  dec  r19
counted:
  std  Z+2, r19
  lds  r19, stamp_losses
  std  Z+7, r19
  lds  r18, stamp_head
  subi r18, -8
  lds  r19, stamp_tail
  cp   r18, r19
  breq full
  lds  r19, TCNT1L
  std  Z+6, r19
  sts  stamp_head, r18
leave:
  pop  r31
  pop  r30
  pop  r19
  out  SREG, r19
  pop  r19
  pop  r18
  pop  r25
  pop  r24
  reti

full:
  push r20
  ldd  r20, Z+2
  ldd  r18, Z+5
  andi r18, 1
  lds  r19, stamp_bank
  add  r18, r19
  lsl  r18
  lsl  r18
  lsl  r18
  ldi  r30, lo8(stamp_lost)
  ldi  r31, hi8(stamp_lost)
  add  r30, r18
  brcc in_page
  inc  r31
in_page:
  ldd  r18, Z+0
  ldd  r19, Z+1
  tst  r18
  brne not_first
  tst  r19
  brne not_first
  std  Z+2, r24
  std  Z+3, r25
  std  Z+4, r20
not_first:
  std  Z+5, r24
  std  Z+6, r25
  std  Z+7, r20
  subi r18, lo8(-1)
  sbci r19, hi8(-1)
  std  Z+0, r18
  std  Z+1, r19
  lds  r18, stamp_losses
  inc  r18
  sts  stamp_losses, r18
  pop  r20
  rjmp leave

.global TIMER1_OVF_vect
TIMER1_OVF_vect:
  push r24
  in   r24, SREG
  push r24
  in   r24, GPIOR1
  inc  r24
  out  GPIOR1, r24
  pop  r24
  out  SREG, r24
  pop  r24
  reti

; Wakes the main loop, every 4.096 ms.
.global TIMER0_OVF_vect
TIMER0_OVF_vect:
  reti

.global USART_RX_vect
USART_RX_vect:
  sbi  GPIOR0, 7
  push r24
  in   r24, SREG
  push r24
  push r30
  push r31
  lds  r24, UDR0
  lds  r30, heard_head
  ldi  r31, 0
  subi r30, lo8(-(heard))
  sbci r31, hi8(-(heard))
  st   Z, r24
  lds  r30, heard_head
  inc  r30
  andi r30, 31
  sts  heard_head, r30
  pop  r31
  pop  r30
  pop  r24
  out  SREG, r24
  pop  r24
  reti
