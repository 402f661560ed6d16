// The words of the language that are not free for names, and the names that are types from the start.
//
// The second kind (byte, String …) are ordinary names in C++: a variable may hide them, so the parser asks where they stand.
// Does not know: what a program declares.

/** Type words that are reserved, and the specifiers that may stand among them. */
export const typeKeywords: ReadonlySet<string> = new Set(
  "void bool char short int long float double signed unsigned auto".split(" "),
);
export const specifiers: ReadonlySet<string> = new Set(
  "const volatile static extern inline constexpr register mutable explicit virtual friend".split(" "),
);

/** Names of types that the board's header and the C headers bring, and the type they stand for. */
export const namedTypes: ReadonlyMap<string, string> = new Map([
  ["boolean", "bool"],
  ["byte", "unsigned char"],
  ["word", "unsigned int"],
  ["uint8_t", "unsigned char"],
  ["int8_t", "signed char"],
  ["uint16_t", "unsigned int"],
  ["int16_t", "int"],
  ["uint32_t", "unsigned long"],
  ["int32_t", "long"],
  ["uint64_t", "unsigned long long"],
  ["int64_t", "long long"],
  ["size_t", "unsigned int"],
  ["uintptr_t", "unsigned int"],
  ["String", "String"],
  ["__FlashStringHelper", "__FlashStringHelper"],
]);

/** Reserved words that begin something we do not run, with the feature's name. */
export const unsupportedWords: ReadonlyMap<string, string> = new Map([
  ["template", "template"],
  ["namespace", "namespace"],
  ["using", "using"],
  ["union", "union"],
  ["goto", "goto"],
  ["new", "new"],
  ["delete", "delete"],
  ["try", "try"],
  ["throw", "throw"],
  ["catch", "try"],
  ["operator", "operator"],
  ["asm", "asm"],
  ["virtual", "virtual"],
  ["friend", "friend"],
  ["typeid", "typeid"],
  ["decltype", "decltype"],
  ["static_assert", "static_assert"],
  ["dynamic_cast", "dynamic_cast"],
  ["reinterpret_cast", "reinterpret_cast"],
  ["const_cast", "const_cast"],
]);

const others =
  "if else for while do switch case default break continue return struct class enum typedef public private protected this true false nullptr sizeof static_cast typename alignas alignof noexcept thread_local wchar_t char16_t char32_t and or not xor bitand bitor compl and_eq or_eq xor_eq not_eq".split(
    " ",
  );

/** Every reserved word of C++11. */
export const reservedWords: ReadonlySet<string> = new Set([
  ...typeKeywords,
  ...specifiers,
  ...unsupportedWords.keys(),
  ...others,
]);

/** Words that only a statement inside a function can begin with. */
export const statementWords: ReadonlySet<string> = new Set(
  "if else for while do switch case default break continue return goto delete try".split(" "),
);
