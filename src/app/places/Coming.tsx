// A place whose code is still being unpacked: it says so, and stands for a moment.
//
// Does not know: which place it is.
import { useEffect, useLayoutEffect, useState } from "preact/hooks";
import { fetchLater } from "../laterCode.ts";
import { Page } from "../pieces/index.ts";
import { useSay } from "../session/useSession.ts";

export function Coming() {
  const say = useSay();
  const [fault, setFault] = useState<unknown>(null);
  useEffect(() => {
    fetchLater().catch(setFault);
  }, []);
  useLayoutEffect(
    () => () => {
      // Whoever reads on by keyboard or by ear goes on at the heading of what came.
      if (document.activeElement?.tagName !== "H1") return;
      requestAnimationFrame(() => document.querySelector<HTMLElement>("h1")?.focus({ preventScroll: true }));
    },
    [],
  );
  // The guard around the place tells it, and offers the class as a file.
  if (fault !== null) throw fault;
  return <Page name={say("shell.opening")} class="coming" />;
}
