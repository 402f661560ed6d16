// The names that the board's header and the C headers behind it bring, beside those that programs here can run with.
//
// They matter for telling what is undeclared: a program that calls printf is not run here, and compiles all the same.
// Source: the functions that avr-libc declares in stdio.h, stdlib.h, string.h, math.h and ctype.h.
// Does not know: what they do.
const functions =
  "abort abs acos asin atan atan2 atof atoi atol bsearch calloc cbrt ceil copysign cos cosh div dtostre dtostrf exit exp fabs fclose fdim feof ffs fflush fgetc fgets floor fma fmax fmin fmod fopen fprintf fputc fputs fread free frexp fscanf fwrite getc getchar gets hypot isalnum isalpha isascii isblank iscntrl isdigit isfinite isgraph isinf islower isnan isprint ispunct isspace isupper isxdigit itoa labs ldexp ldiv log log10 lrint lround ltoa malloc memccpy memchr memcmp memcpy memmem memmove memrchr memset modf perror pow printf putc putchar puts qsort rand random realloc rewind round scanf setbuf signbit sin sinh snprintf sprintf sqrt square srand srandom sscanf strcasecmp strcasestr strcat strchr strcmp strcoll strcpy strcspn strdup strerror strlcat strlcpy strlen strlwr strncasecmp strncat strncmp strncpy strnlen strpbrk strrchr strrev strsep strspn strstr strtod strtok strtok_r strtol strtoul strupr system tan tanh toascii tolower toupper trunc ultoa ungetc utoa vprintf vsnprintf vsprintf stderr stdin stdout";

export const cNames: ReadonlySet<string> = new Set(functions.split(" "));

/** Names of types beside those in read/words.ts. */
export const cTypes: ReadonlySet<string> = new Set(
  "FILE va_list div_t ldiv_t intptr_t intmax_t uintmax_t int_least8_t uint_least8_t int_least16_t uint_least16_t int_least32_t uint_least32_t int_fast8_t uint_fast8_t int_fast16_t uint_fast16_t int_fast32_t uint_fast32_t ptrdiff_t".split(
    " ",
  ),
);
