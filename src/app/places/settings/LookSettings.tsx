// How the page looks on this computer: language, size of type, lines, paper.
//
// Does not know: how a look is put on the page (looksOf.ts).
import { languageFor, languageTags } from "../../../language/index.ts";
import { Choice, Row, Tick } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { looksOf, type PaperSize, type TypeSize, typeSizes } from "./looksOf.ts";

export function LookSettings() {
  const session = useSession();
  const say = useSay();
  const looks = looksOf(session);
  const tags = languageTags.filter((tag) => !/^x[a-z]$/.test(tag) || tag === session.language.value.tag);
  return (
    <Row as="section">
      <h2>{say("settings.look")}</h2>
      <Choice
        label={say("settings.language")}
        value={session.language.value.tag}
        options={tags.map((tag) => ({ value: tag, label: languageFor(tag).name }))}
        onChange={(tag) => session.chooseLanguage(tag)}
      />
      <Choice
        label={say("settings.typeSize")}
        value={looks.type.value}
        options={typeSizes.map((size) => ({ value: size, label: say(`typeSize.${size}`) }))}
        onChange={(size) => looks.setType(size as TypeSize)}
      />
      <Tick
        label={say("settings.strongLines")}
        note={say("settings.strongLinesNote")}
        ticked={looks.strongLines.value}
        onChange={(strong) => looks.setStrongLines(strong)}
      />
      <Choice
        label={say("settings.paper")}
        value={looks.paper.value}
        options={[
          { value: "A4", label: say("settings.a4") },
          { value: "Letter", label: say("settings.letter") },
        ]}
        onChange={(paper) => looks.setPaper(paper as PaperSize)}
      />
    </Row>
  );
}
