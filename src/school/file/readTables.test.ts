// Rosters, stock, kit lists and orders as teachers and spreadsheets write them: what is understood, and what is wrong where.
// A place's line is the line of the file, its column the number of the cell.
import { expect, test } from "vitest";
import type { Day } from "../../base/index.ts";
import type { ClassFile, Pupil } from "./classFile.ts";
import { orderCsv, readOrderCsv } from "./orderCsv.ts";
import { readClassFile } from "./readClassFile.ts";
import { readRoster } from "./readRoster.ts";
import { readKitList, readStockCsv } from "./readStockCsv.ts";
import { kitListCsv, rosterCsv, stockCsv } from "./writeTables.ts";

const pupil = (id: string, name: string, marks: Record<string, number> = {}): Pupil => ({ id, name, marks });

const rosters: [name: string, text: string, pupils: Pupil[], warnings?: string[]][] = [
  ["a pasted column", "Ana\nBo\nCleo", [pupil("p01", "Ana"), pupil("p02", "Bo"), pupil("p03", "Cleo")]],
  ["a pasted column with its header", "Name\r\nAna\r\nBo\r\n", [pupil("p01", "Ana"), pupil("p02", "Bo")]],
  ["a pasted column with a name near to a header", "Nami\nBo\n", [pupil("p01", "Nami"), pupil("p02", "Bo")]],
  ["two pasted columns", "name\treads\nAna\t2\n", [pupil("p01", "Ana", { reads: 2 })]],
  ["columns in another order", "reads,name,id\n2,Ana,a7\n", [pupil("a7", "Ana", { reads: 2 })]],
  ["semicolons and a decimal comma", "id;name;mark\n1;Ana;2,5\n", [pupil("1", "Ana", { mark: 2.5 })]],
  ["given and family names", "Last name;First name\nOkonjo;Amara\n", [pupil("p01", "Amara Okonjo")]],
  ["a French header", "N°;Nom complet;lecture\n1;Ana;3\n", [pupil("1", "Ana", { lecture: 3 })]],
  ["a German header", "Vorname;Nachname\nAna;Groß\n", [pupil("p01", "Ana Groß")]],
  ["an Arabic header", "الاسم,القراءة\nليلى,2\n", [pupil("p01", "ليلى", { القراءة: 2 })]],
  ["a title above the header", "Class 7b;;\n;;\nid;name;\n1;Ana;\n", [pupil("1", "Ana")]],
  [
    "names with a comma",
    "Okonjo, Amara\nHaddad, Bilal\n",
    [pupil("p01", "Okonjo, Amara"), pupil("p02", "Haddad, Bilal")],
    ["file.csvNamesJoined"],
  ],
  ["names with a comma under a header", "name\nOkonjo, Amara\nBo\n", [pupil("p01", "Okonjo, Amara"), pupil("p02", "Bo")]],
  ["names in quotes", 'name,reads\n"Okonjo, Amara",1\n', [pupil("p01", "Okonjo, Amara", { reads: 1 })]],
  ["a header misspelt", "nmae,reads\nAna,2\n", [pupil("p01", "Ana", { reads: 2 })], ["file.csvColumnGuessed"]],
  ["a column of words", "name,hobby\nAna,chess\n", [pupil("p01", "Ana")], ["file.csvColumnIgnored"]],
  ["a mark that one pupil lacks", "name,reads\nAna,2\nBo,\n", [pupil("p01", "Ana", { reads: 2 }), pupil("p02", "Bo")]],
  ["ids for those who have none", "id,name\np02,Ana\n,Bo\n", [pupil("p02", "Ana"), pupil("p02b", "Bo")]],
  ["the same name twice", "name\nAna\nana\n", [pupil("p01", "Ana"), pupil("p02", "ana")], ["file.csvSameName"]],
  ["a name that would turn the text round", "name\nA\u202ena\n", [pupil("p01", "Ana")], ["file.charactersLeftOut"]],
  ["a name on two lines", 'name,reads\n"Ana\nMaria",1\n', [pupil("p01", "Ana Maria", { reads: 1 })]],
  ["two spellings of one letter", "name\nJose\u0301\n", [pupil("p01", "Jos\u00e9")]],
];
for (const [name, text, pupils, warnings = []] of rosters)
  test(`roster: ${name}`, () => {
    const { value, problems } = readRoster("roster.csv", text);
    expect(problems.map((p) => p.code)).toEqual(warnings);
    expect(value).toEqual(pupils);
  });

test("a roster of a spreadsheet in UTF-16, and one in the old code page", () => {
  const wide = Uint8Array.from([0xff, 0xfe, ...[..."name\tid\nJosé\t7"].flatMap((c) => [c.charCodeAt(0), 0])]);
  expect(readRoster("r.txt", wide).value).toEqual([pupil("7", "José")]);
  const old = Uint8Array.from([..."name;id\nJosé;7"].map((c) => c.charCodeAt(0)));
  const { value, understood } = readRoster("r.csv", old);
  expect(value).toEqual([pupil("7", "José")]);
  expect(understood).toMatchObject({ encoding: "windows-1252", separator: ";", headerLine: 1, rows: 1 });
});

test("what was understood is told before it is taken", () => {
  expect(readRoster("r.csv", "Class 7b;;;\nNo;Full Name;reads;hobby\n1;Ana;2;chess\n").understood).toEqual({
    encoding: null,
    separator: ";",
    headerLine: 2,
    columns: [
      { found: "No", understood: "id" },
      { found: "Full Name", understood: "name" },
      { found: "reads", understood: "reads" },
      { found: "hobby", understood: null },
    ],
    rows: 1,
  });
});

type Wrong = [name: string, text: string, code: string, line: number, column: number, data?: Record<string, unknown>];

const wrongRosters: Wrong[] = [
  ["nothing", "", "file.csvEmpty", 1, 1],
  ["a header and nobody", "id,name\n", "file.csvEmpty", 1, 1],
  ["no column that is named", "1,Ana,2\n2,Bo,3\n", "file.csvNoHeader", 1, 1, { expected: "name" }],
  ["no name", "id,reads\n1,2\n", "file.csvMissingColumn", 1, 1, { expected: "name" }],
  ["two columns of names", "name,id,pupil\nAna,1,Bo\n", "file.csvColumnTwice", 1, 3, { firstColumn: 1 }],
  ["a row without a name", "id,name\n1,Ana\n2,\n", "file.csvEmptyCell", 3, 2],
  ["a row with too many cells", "name,reads\nAna,2,5\n", "file.csvTooManyCells", 2, 3, { found: 3, expected: 2 }],
  ["the same id twice", "id,name\n7,Ana\n8,Bo\n7,Cleo\n", "file.sameId", 4, 1, { what: "pupil", firstLine: 2 }],
  ["an id with a slash", "id,name\n7/b,Ana\n", "file.csvBadId", 2, 1, { found: "7/b" }],
  ["a mark that is a word", "name,reads\nAna,2\nBo,well\nCleo,3\n", "file.csvNotANumber", 3, 2, { found: "well" }],
  ["a mark that may be a thousand", "name;points\nAna;1.250\n", "file.csvUnclearNumber", 2, 2, { found: "1.250" }],
  ["an open quote", 'name,reads\n"Ana,2\n', "file.csvQuoteOpen", 2, 1],
];
for (const [name, text, code, line, column, data] of wrongRosters)
  test(`roster with ${name}: ${code}`, () => {
    const { value, problems } = readRoster("roster.csv", text);
    expect(value).toBe(null);
    expect(problems[0]).toMatchObject({ code, place: { file: "roster.csv", line, column }, ...data });
  });

test("stock in our words and in a shop's", () => {
  const { value, problems } = readStockCsv(
    "stock.csv",
    "Box;Part;Qty\nbox 3, a7;resistor 4.7k;1 200\n;220 Ω resistor;5\n;LED red;4,0\n",
  );
  expect(value).toEqual([
    { item: "resistor 4k7", count: 1200, box: "box 3, a7" },
    { item: "resistor 220", count: 5, box: "" },
    { item: "led red", count: 4, box: "" },
  ]);
  expect(problems.map((p) => [p.code, p.place?.line])).toEqual([
    ["file.csvItemGuessed", 3],
    ["file.csvItemGuessed", 4],
  ]);
});

test("stock copied from the cupboard's own page", () => {
  const { value, problems } = readStockCsv(
    "stock.csv",
    "thing\there\tin all\nLEDs, red\t12\t42\nmains adapter, 1 A\t2\t2\nresistors, 4.7 kΩ\t9\t9\n",
  );
  expect(value).toEqual([
    { item: "led red", count: 12, box: "" },
    { item: "adapter 1000mA", count: 2, box: "" },
    { item: "resistor 4k7", count: 9, box: "" },
  ]);
  expect(problems.every((p) => p.severity === "warning")).toBe(true);
});

test("a kit list adds up what stands twice", () => {
  const { value, problems } = readKitList("kit.csv", "item,count\nled red,5\nbutton,2\nled red,3\n");
  expect([...(value ?? [])]).toEqual([
    ["led red", 8],
    ["button", 2],
  ]);
  expect(problems).toMatchObject([{ code: "file.sameItem", severity: "warning", place: { line: 4, column: 1 }, firstLine: 2 }]);
});

const wrongStock: Wrong[] = [
  ["an unknown item", "item,count\nled red,5\nleed red,2\n", "file.unknownItem", 3, 1, { near: "led red" }],
  ["no item", "item,count\n,5\n", "file.csvEmptyCell", 2, 1],
  ["no count", "item,count\nled red,\n", "file.csvEmptyCell", 2, 2],
  ["half a lamp", "item,count\nled red,2.5\n", "file.csvNotACount", 2, 2],
  ["fewer than none", "item,count\nled red,-2\n", "file.csvNotACount", 2, 2, { found: "-2" }],
  ["a dozen", "item,count\nled red,dozen\n", "file.csvNotACount", 2, 2],
  ["one or a thousand", "item;count\nled red;1.000\n", "file.csvUnclearNumber", 2, 2],
  ["no header", "led red,5\nbutton,2\n", "file.csvNoHeader", 1, 1, { expected: "item, count" }],
  ["no column of counts", "item,box\nled red,a1\n", "file.csvMissingColumn", 1, 1, { expected: "count" }],
  ["a comma in a text without quotes", "item,count,box\nled red,5,box 3, a7\n", "file.csvTooManyCells", 2, 4],
];
for (const [name, text, code, line, column, data] of wrongStock)
  test(`stock with ${name}: ${code}`, () => {
    const { value, problems } = readStockCsv("stock.csv", text);
    expect(value).toBe(null);
    expect(problems[0]).toMatchObject({ code, place: { file: "stock.csv", line, column }, ...data });
  });

const styles = [{ separator: "," }, { separator: ";", decimalMark: "," }, { separator: "\t" }] as const;
for (const style of styles) {
  test(`a roster goes out and comes back the same: ${JSON.stringify(style)}`, () => {
    const pupils = [
      pupil("p1", "=HYPERLINK(1)", { reads: 2, runs: -1.5 }),
      pupil("p2", 'Ann "Bo", jr', { reads: 1.234 }),
      pupil("p3", "'-Çelik", { runs: 1e21 }),
    ];
    expect(readRoster("r.csv", rosterCsv(pupils, style))).toMatchObject({ value: pupils, problems: [] });
  });
  test(`stock and a kit list go out and come back the same: ${JSON.stringify(style)}`, () => {
    const stock = [
      { item: "resistor 220", count: 12, box: "box 3, a7" },
      { item: "led red", count: 0, box: '-;"x"' },
    ];
    expect(readStockCsv("s.csv", stockCsv(stock, style))).toMatchObject({ value: stock, problems: [] });
    const contents = new Map([
      ["led red", 5],
      ["servo", 1],
    ]);
    expect(readKitList("k.csv", kitListCsv(contents, style)).value).toEqual(contents);
  });
}

const classFile = readClassFile(
  "class.json",
  `{"format":"benchday-class/1","currency":"EUR","classes":[{"id":"7b","pupils":[{"id":"1","name":"Ana"}]}],
  "suppliers":[{"id":"pier","offers":[{"id":"led-20","item":"led red","count":20,"price":"2.40"},{"id":"box","kit":"small","price":"30"}]}]}`,
).value as ClassFile;

test("an order says what each packet holds and what it costs, and comes back", () => {
  const lines = [
    { supplier: "pier", offer: "led-20", packets: 3 },
    { supplier: "pier", offer: "box", packets: 1 },
  ];
  const text = orderCsv(classFile, lines, { separator: ";", decimalMark: "," });
  expect(text).toBe(
    "\ufeffsupplier;offer;packets;contains;each;price;cost;currency\r\n" +
      "pier;led-20;3;led red;20;2,40;7,20;EUR\r\n" +
      "pier;box;1;small;1;30,00;30,00;EUR\r\n",
  );
  expect(readOrderCsv("o.csv", text, classFile)).toMatchObject({ value: lines, problems: [] });
});

test("an order whose days are known says by when, and comes back", () => {
  const dated = [
    { supplier: "pier", offer: "led-20", packets: 3, orderBy: "2027-02-10" as Day },
    { supplier: "pier", offer: "box", packets: 1 },
  ];
  const text = orderCsv(classFile, dated, { separator: "," });
  expect(text).toBe(
    "\ufeffsupplier,offer,packets,contains,each,price,cost,currency,order by\r\n" +
      "pier,led-20,3,led red,20,2.40,7.20,EUR,2027-02-10\r\n" +
      "pier,box,1,small,1,30.00,30.00,EUR,\r\n",
  );
  const back = readOrderCsv("o.csv", text, classFile);
  expect(back.value).toEqual(dated.map(({ supplier, offer, packets }) => ({ supplier, offer, packets })));
  expect(back.problems).toEqual([]);
});

const wrongOrders: Wrong[] = [
  ["an unknown offer", "supplier,offer,packets\npier,led-200,1\n", "file.csvUnknownOffer", 2, 2, { near: "led-20" }],
  ["an unknown supplier", "supplier,offer,packets\npeer,led-20,1\n", "file.csvUnknownOffer", 2, 1, { near: "pier" }],
  ["half a packet", "supplier,offer,packets\npier,led-20,0.5\n", "file.csvNotACount", 2, 3],
];
for (const [name, text, code, line, column, data] of wrongOrders)
  test(`order with ${name}: ${code}`, () =>
    expect(readOrderCsv("o.csv", text, classFile).problems).toMatchObject([
      { code, place: { file: "o.csv", line, column }, ...data },
    ]));
