// Numbers as text, exactly as the board writes them.
//
// Floats are written digit by digit in 32-bit arithmetic, so that 0.1 + 0.2 and 2.675 come out as on the chip.
// Does not know: where the text goes.

/** A whole number in a base from 2 to 36. Other bases count as 10, as on the board. */
export function writeInteger(value: number, base: number): string {
  return Math.trunc(value)
    .toString(base >= 2 && base <= 36 ? base : 10)
    .toUpperCase();
}

/**
 * A float as print writes it. It adds half of the last digit, cuts the whole part off, and takes one digit after the other; each
 * step is rounded to 32 bits. Beyond 4294967040 it gives up.
 */
export function writeFloat(value: number, digits: number): string {
  const f = Math.fround;
  if (Number.isNaN(value)) return "nan";
  if (!Number.isFinite(value)) return "inf";
  if (value > 4294967040 || value < -4294967040) return "ovf";
  let number = f(value);
  let text = "";
  if (number < 0) {
    text = "-";
    number = -number;
  }
  let half = f(0.5);
  for (let i = 0; i < digits; i += 1) half = f(half / 10);
  number = f(number + half);
  const whole = Math.trunc(number);
  let rest = f(number - f(whole));
  text += whole.toString();
  if (digits > 0) text += ".";
  for (let i = 0; i < digits; i += 1) {
    rest = f(rest * 10);
    const digit = Math.trunc(rest);
    text += digit.toString();
    rest = f(rest - digit);
  }
  return text;
}

/**
 * A float with a fixed number of decimals, as dtostrf writes it: rounded from its decimal value, of which avr-libc knows seven
 * digits behind the first; what follows is zero.
 */
export function writeFixed(value: number, decimals: number): string {
  if (Number.isNaN(value)) return "NAN";
  const sign = value < 0 || Object.is(value, -0) ? "-" : "";
  const magnitude = Math.abs(value);
  if (!Number.isFinite(value)) return `${sign}INF`;
  const exponent = magnitude === 0 ? 0 : Math.floor(Math.log10(magnitude));
  const significant = Math.min(8, exponent + 1 + decimals);
  if (significant > 0) return sign + spread(magnitude.toExponential(significant - 1), decimals);
  // Only the first digit behind the last place is left, to round with.
  const roundsUp = significant === 0 && magnitude.toExponential(7).charAt(0) >= "5";
  return sign + (roundsUp ? spread(`1e${-decimals}`, decimals) : spread("0e0", decimals));
}

/** "1.25e2" with that many decimals: "125.00". */
function spread(scientific: string, decimals: number): string {
  const [mantissa = "0", power = "0"] = scientific.split("e");
  const digits = mantissa.replace(".", "");
  const point = Number(power) + 1;
  const whole = point <= 0 ? "0" : digits.slice(0, point).padEnd(point, "0");
  const behind = point <= 0 ? "0".repeat(-point) + digits : digits.slice(point);
  return decimals === 0 ? whole : `${whole}.${behind.slice(0, decimals).padEnd(decimals, "0")}`;
}
