// The sheets themselves, at their size; on a narrow screen smaller, so that nothing has to be pushed aside.
//
// They are drawn twice: here to be looked at, and at the end of the page for the printer alone, so that the browser's own print
// gives exactly these sheets, however it is called.
// Does not know: what stands on a sheet.
import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import { useSay } from "../../session/useSession.ts";
import { drawSheets, dressPage } from "./drawSheets.ts";
import { readSheets } from "./readSheets.ts";

export interface PreviewProps {
  readonly html: string;
  readonly title: string;
  /** Whether the sheets stand there for the printer. */
  readonly onReady: (canPrint: boolean) => void;
}

/** Width of A4, and of Letter within a few millimetres; the sheets stand in its middle. */
const widthMm = 212;
const pixelsPerMm = 96 / 25.4;
const width = widthMm * pixelsPerMm;

export function Preview({ html, title, onReady }: PreviewProps) {
  const say = useSay();
  const box = useRef<HTMLDivElement>(null);
  const shown = useRef<HTMLDivElement>(null);
  const [scale, setScale] = useState(1);
  const [height, setHeight] = useState(0);
  const paper = useMemo(() => readSheets(html), [html]);

  useEffect(() => {
    if (paper === null) return onReady(false);
    const printed = document.createElement("div");
    printed.className = "for-print";
    drawSheets(printed, paper);
    if (shown.current) drawSheets(shown.current, paper);
    document.body.append(printed);
    const undress = dressPage(paper);
    setHeight(shown.current?.offsetHeight ?? 0);
    onReady(true);
    return () => {
      undress();
      printed.remove();
    };
  }, [paper]);

  useEffect(() => {
    const measure = () => setScale(Math.min(1, (box.current?.clientWidth ?? width) / width));
    measure();
    const watch = new ResizeObserver(measure);
    if (box.current) watch.observe(box.current);
    return () => watch.disconnect();
  }, []);

  return (
    <>
      <p class="unseen">{say("printPage.preview", { title })}</p>
      {/* A picture of paper: who cannot see it reads the same in the file that can be saved. */}
      <div class="preview" ref={box} aria-hidden="true" style={{ blockSize: `${Math.ceil(height * scale)}px` }}>
        <div ref={shown} style={{ inlineSize: `${width}px`, transform: `scale(${scale})` }} />
      </div>
    </>
  );
}
