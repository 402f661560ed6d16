// How long a test of a huge or nasty file may take: milliseconds.
//
// Each takes well under a second on an idle machine; a reader that looks at the letters again for each letter would need
// minutes. In between lies whatever else the machine is doing.
export const patience = 20_000;
