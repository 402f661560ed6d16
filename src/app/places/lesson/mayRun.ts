// Which lines of a program can be gone to: those that may hold a statement.
//
// A blank line, a comment, a brace or a line for the preprocessor never runs. Of the others some never run either, such as a
// constant above all functions; the walk then says that the line does not come.
// Does not know: C++.

/** @returns for each row whether a statement may begin there. */
export function mayRun(rows: readonly string[]): readonly boolean[] {
  let inComment = false;
  let depth = 0;
  return rows.map((row) => {
    let code = "";
    for (let i = 0; i < row.length; i += 1) {
      const pair = row.slice(i, i + 2);
      if (inComment) {
        if (pair === "*/") {
          inComment = false;
          i += 1;
        }
      } else if (pair === "/*") {
        inComment = true;
        i += 1;
      } else if (pair === "//") break;
      else code += row[i];
    }
    const plain = code.replace(/"(?:\\.|[^"\\])*"|'(?:\\.|[^'\\])*'/g, '""').trim();
    const inside = depth > 0;
    for (const sign of plain) depth += sign === "{" ? 1 : sign === "}" ? -1 : 0;
    return inside && !plain.startsWith("#") && /\w/.test(plain.replace(/^\}?\s*else\s*\{?$/, ""));
  });
}
