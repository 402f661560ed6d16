// What screens are made of. Props stand in each file; words of people go into `<bdi>`.
export { AddByName, type AddByNameProps } from "./AddByName.tsx";
export { Button, type ButtonProps } from "./Button.tsx";
export { Choice, type ChoiceProps, type Option } from "./Choice.tsx";
export { DayField, type DayFieldProps } from "./DayField.tsx";
export { Drop, type DropProps } from "./Drop.tsx";
export { monthName, shortDay, shortWeekday } from "./days.ts";
export { Field, type FieldProps } from "./Field.tsx";
export { LastAct, type LastActProps } from "./LastAct.tsx";
export { Message, type MessageProps, Problem, type ProblemProps } from "./Message.tsx";
export { Nothing, type NothingProps } from "./Nothing.tsx";
export { Page, type PageProps } from "./Page.tsx";
export { ProgressRuler, type ProgressRulerProps } from "./ProgressRuler.tsx";
export { Row, type RowProps } from "./Row.tsx";
export { type Head, Table, type TableProps } from "./Table.tsx";
export { TextLink, type TextLinkProps } from "./TextLink.tsx";
export { Tick, type TickProps } from "./Tick.tsx";
export { LineMark, lineOf, Verdict, type VerdictProps } from "./Verdict.tsx";
