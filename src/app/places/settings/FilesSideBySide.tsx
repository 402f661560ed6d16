// What another state of the class holds beside the one that is open, what differs first.
//
// Does not know: where the other one came from.
import type { ClassFile } from "../../../school/file/index.ts";
import { Table } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { compareFiles } from "./lookInto.ts";

export function FilesSideBySide({ there, thereSays }: { readonly there: ClassFile; readonly thereSays: string }) {
  const session = useSession();
  const say = useSay();
  const here = session.classFile.value;
  if (here === null) return null;
  return (
    <Table
      caption={say("settings.sideBySide")}
      head={[
        { says: say("settings.what") },
        { says: thereSays, numeric: true },
        { says: say("settings.nowHead"), numeric: true },
      ]}
    >
      {compareFiles(there, here, session.today.value).map((row) => (
        <tr key={row.what}>
          <th scope="row" class={row.there === row.here ? "calm" : undefined}>
            {say(`fileHolds.${row.what}`)}
          </th>
          <td class="num">{row.there}</td>
          <td class="num">{row.here}</td>
        </tr>
      ))}
    </Table>
  );
}
