// Eight bits leave one by one, the highest first; the clock goes up and down for each.
// run 50 ms
// expect pins: D11 high 0, D12 high 0, D12 low 0, D11 low 0, D12 high 0, D12 low 0, D12 high 0, D12 low 0, D12 high 0, D12 low 0, D12 high 0, D12 low 0, D12 high 0, D12 low 0, D12 high 0, D12 low 0, D11 high 1, D12 high 1, D12 low 1
void setup() {
  pinMode(11, OUTPUT);
  pinMode(12, OUTPUT);
  shiftOut(11, 12, MSBFIRST, 0b10000001);
}
void loop() {}
