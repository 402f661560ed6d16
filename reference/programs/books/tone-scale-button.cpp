// run 1500 ms
// inputs [{"ms":0,"pin":"D2","level":"high"},{"ms":0,"pin":"D3","level":"high"},{"ms":100,"pin":"D2","level":"low"},{"ms":300,"pin":"D2","level":"high"},{"ms":500,"pin":"D3","level":"low"},{"ms":800,"pin":"D3","level":"high"}]
const byte keys[] = {2, 3};
const unsigned int pitches[] = {440, 523};
void setup() { for (byte k : keys) pinMode(k, INPUT_PULLUP); }
void loop() {
  bool any = false;
  for (byte i = 0; i < sizeof keys; i++)
    if (digitalRead(keys[i]) == LOW) { tone(8, pitches[i]); any = true; }
  if (!any) noTone(8);
  delay(10);
}
