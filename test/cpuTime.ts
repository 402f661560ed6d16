// How long something keeps the processor busy. Tests measure this rather than the clock on the wall, which also counts what else
// the machine is doing.

/** @returns ms of processor time that `work` takes, in all threads of this process. */
export function cpuMilliseconds(work: () => void): number {
  const start = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000;
}
