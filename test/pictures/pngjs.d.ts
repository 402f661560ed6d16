// What the tests use of pngjs, which brings no types.
declare module "pngjs" {
  export class PNG {
    constructor(size: { width: number; height: number });
    readonly width: number;
    readonly height: number;
    readonly data: Buffer;
    static bitblt(from: PNG, to: PNG, x: number, y: number, width: number, height: number, toX: number, toY: number): void;
    static sync: { read(data: Buffer): PNG; write(png: PNG, options?: object): Buffer };
  }
}
