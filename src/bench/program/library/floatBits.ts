// The bits of a 32-bit float (IEC 60559).
//
// Does not know: what they are for.

/** @returns the bits as a signed 32-bit number. */
export function fromFloat(value: number): number {
  return new Int32Array(new Float32Array([value]).buffer)[0]!;
}
