// The sheets themselves, at their size; on a narrow screen smaller, so that nothing has to be pushed aside.
//
// They stand in a frame of their own without scripts, from a blob of this page, so that their style and ours do not meet.
// Does not know: what stands on a sheet, how it is printed.
import { useEffect, useRef, useState } from "preact/hooks";
import { useSay } from "../../session/useSession.ts";
import { layOutForPrint } from "./layOutForPrint.ts";

export interface PreviewProps {
  readonly html: string;
  readonly title: string;
  /** Whether the browser's print gives these sheets: false where a frame cannot be looked into (the page in a frame itself). */
  readonly onReady: (canPrint: boolean) => void;
}

/** Width of A4, and of Letter within a few millimetres; the sheets stand in its middle. */
const widthMm = 212;
const pixelsPerMm = 96 / 25.4;

export function Preview({ html, title, onReady }: PreviewProps) {
  const say = useSay();
  const box = useRef<HTMLDivElement>(null);
  const frame = useRef<HTMLIFrameElement>(null);
  const [height, setHeight] = useState(1100);
  const [scale, setScale] = useState(1);
  const [address, setAddress] = useState<string | null>(null);
  const takeAway = useRef<(() => void) | null>(null);

  useEffect(() => {
    const made = URL.createObjectURL(new Blob([html], { type: "text/html" }));
    setAddress(made);
    return () => {
      URL.revokeObjectURL(made);
      takeAway.current?.();
      takeAway.current = null;
    };
  }, [html]);

  useEffect(() => {
    const measure = () => setScale(Math.min(1, (box.current?.clientWidth ?? 800) / (widthMm * pixelsPerMm)));
    measure();
    const watch = new ResizeObserver(measure);
    if (box.current) watch.observe(box.current);
    return () => watch.disconnect();
  }, []);

  const loaded = () => {
    const paper = frame.current?.contentDocument ?? null;
    takeAway.current?.();
    takeAway.current = null;
    if (paper === null || paper.querySelector("article.sheet") === null) return onReady(false);
    setHeight(paper.documentElement.scrollHeight);
    takeAway.current = layOutForPrint(paper);
    onReady(true);
  };
  const width = widthMm * pixelsPerMm;
  return (
    <div class="preview" ref={box} style={{ blockSize: `${Math.ceil(height * scale)}px` }}>
      {address !== null && (
        <iframe
          ref={frame}
          title={say("printPage.preview", { title })}
          sandbox="allow-same-origin"
          src={address}
          onLoad={loaded}
          style={{ inlineSize: `${width}px`, blockSize: `${height}px`, transform: `scale(${scale})` }}
        />
      )}
    </div>
  );
}
