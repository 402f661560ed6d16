// Names of the chip's registers and their bits, which a program may write to past the board's functions.
//
// They are known so that such a program is told that it is not run here, and not that it has a typing error.
// ATmega328P data sheet, register summary.
// Does not know: what the registers do.

const whole =
  "PINB DDRB PORTB PINC DDRC PORTC PIND DDRD PORTD TIFR0 TIFR1 TIFR2 PCIFR EIFR EIMSK GPIOR0 EECR EEDR EEAR GTCCR TCCR0A TCCR0B TCNT0 OCR0A OCR0B SPCR SPSR SPDR ACSR SMCR MCUSR MCUCR SREG WDTCSR CLKPR PRR OSCCAL PCICR EICRA PCMSK0 PCMSK1 PCMSK2 TIMSK0 TIMSK1 TIMSK2 ADC ADCL ADCH ADCSRA ADCSRB ADMUX DIDR0 DIDR1 TCCR1A TCCR1B TCCR1C TCNT1 ICR1 OCR1A OCR1B TCCR2A TCCR2B TCNT2 OCR2A OCR2B ASSR TWBR TWSR TWAR TWDR TWCR UCSR0A UCSR0B UCSR0C UBRR0 UDR0";

const names: ReadonlySet<string> = new Set([...whole.split(" "), "INTERNAL", "_BV", "ISR", "EEPROM", "Wire", "SPI"]);

export function isChipName(name: string): boolean {
  return names.has(name);
}
