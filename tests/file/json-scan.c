/* json-scan.c: what is JSON by RFC 8259 and what is not.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Whether a row is JSON is read off the grammar of RFC 8259; each text that passes is also given
 * to json-glib, which must read it.
 */
#include "file/file-error.h"
#include "file/json-scan.h"

#include <json-glib/json-glib.h>
#include <stdio.h>
#include <string.h>

typedef struct
{
  const char *name;
  const char *text;
} GoodRow;

static const GoodRow good_rows[] = {
  { "empty-object", "{}" },
  { "empty-array", "[]" },
  { "space-around", " \t\r\n[ \n1 , 2\t]\r\n " },
  { "single-text", "\"fern\"" },
  { "single-number", "17" },
  { "single-null", "null" },
  { "words", "[true, false, null]" },
  { "nested", "{\"a\":{\"a\":[{\"a\":{}}]}}" },
  { "same-name-in-siblings", "[{\"x\":1},{\"x\":2}]" },
  { "same-name-inside", "{\"x\":{\"x\":1},\"y\":{\"x\":1}}" },
  { "name-after-object", "{\"a\":{\"b\":1,\"c\":2},\"b\":1,\"c\":2}" },
  { "empty-name", "{\"\":1}" },
  { "names-of-one-beginning",
    "{\"cornflower\":1,\"cornflowe\":2,\"cornflowers\":3,\"cornfloweR\":4}" },
  { "name-case", "{\"a\":1,\"A\":2}" },
  { "zero", "[0,-0,0.0,-0.0,0e0,0E+1,0e-1]" },
  { "numbers", "[1,-1,10,1.5,-1.5,0.001,1e2,1E2,1e+2,1e-2,1.25E-3,1e05]" },
  { "greatest-whole", "[9223372036854775807]" },
  { "least-whole", "[-9223372036854775808]" },
  { "large-with-exponent", "[1e30, 1.7976931348623157e308, 99999999999999999999999.0]" },
  { "too-small-for-a-double", "[1e-400]" },
  { "zero-with-large-exponent", "[0e999]" },
  { "escapes", "[\"\\\"\\\\\\/\\b\\f\\n\\r\\t\"]" },
  { "unicode-escape", "[\"\\u0041\\u00e9\\u20AC\"]" },
  { "least-unicode-escape", "[\"\\u0001\"]" },
  { "pair", "[\"\\ud83c\\udf3c\"]" },
  { "first-pair", "[\"\\ud800\\udc00\"]" },
  { "last-pair", "[\"\\uDBFF\\uDFFF\"]" },
  { "around-the-halves", "[\"\\ud7ff\\ue000\"]" },
  { "delete-character", "[\"\x7f\"]" },
  { "letters-beyond-ascii", "[\"é € 𐍈\"]" },
  { "line-separator", "[\"\xe2\x80\xa8\"]" },
  { "mark-inside-a-text", "[\"\xef\xbb\xbf\"]" },
  { "comment-inside-a-text", "[\"/* // # */\"]" },
  { "brackets-inside-a-text", "[\"]}[{\",1]" },
  { "escaped-quotation-mark", "{\"a\\\"b\":\"\\\\\"}" },
};

typedef struct
{
  const char *name;
  const char *text;
  int code;
  guint line, column; /* 0: the sentence names no place */
} BadRow;

#define SYNTAX PP_FILE_ERROR_SYNTAX
#define VALUE PP_FILE_ERROR_VALUE

static const BadRow bad_rows[] = {
  { "nothing", "", SYNTAX, 0, 0 },
  { "space-only", " \n\t", SYNTAX, 0, 0 },
  { "mark", "\xef\xbb\xbf{}", SYNTAX, 1, 1 },
  { "mark-of-16-bits", "\xff\xfe[", SYNTAX, 1, 1 },
  { "lone-continuation", "[\"\x80\"]", SYNTAX, 1, 3 },
  { "overlong", "[\"\xc0\xaf\"]", SYNTAX, 1, 3 },
  { "half-in-bytes", "[\"\xed\xa0\x80\"]", SYNTAX, 1, 3 },
  { "beyond-unicode", "[\"\xf4\x90\x80\x80\"]", SYNTAX, 1, 3 },
  { "cut-off-character", "[\"\xe2\x82", SYNTAX, 1, 3 },
  { "latin-1", "[\"caf\xe9\"]", SYNTAX, 1, 6 },
  { "second-document", "{} {}", SYNTAX, 1, 4 },
  { "second-bracket", "[1]]", SYNTAX, 1, 4 },
  { "comma-after-the-end", "{},", SYNTAX, 1, 3 },
  { "word-after-the-end", "[]x", SYNTAX, 1, 3 },
  { "comma-last-in-array", "[1,]", SYNTAX, 1, 4 },
  { "comma-last-in-object", "{\"a\":1,}", SYNTAX, 1, 8 },
  { "comma-first", "[,1]", SYNTAX, 1, 2 },
  { "comma-alone", "[,]", SYNTAX, 1, 2 },
  { "comma-first-in-object", "{,\"a\":1}", SYNTAX, 1, 2 },
  { "two-commas", "[1,,2]", SYNTAX, 1, 4 },
  { "no-comma", "[1 2]", SYNTAX, 1, 4 },
  { "no-comma-in-object", "{\"a\":1 \"b\":2}", SYNTAX, 1, 8 },
  { "colon-for-comma", "[1:2]", SYNTAX, 1, 3 },
  { "comma-for-colon", "{\"a\",1}", SYNTAX, 1, 5 },
  { "two-colons", "{\"a\"::1}", SYNTAX, 1, 6 },
  { "no-value", "{\"a\":}", SYNTAX, 1, 6 },
  { "no-colon", "{\"a\"}", SYNTAX, 1, 5 },
  { "no-name", "{:1}", SYNTAX, 1, 2 },
  { "name-without-quotes", "{a:1}", SYNTAX, 1, 2 },
  { "number-as-name", "{1:1}", SYNTAX, 1, 2 },
  { "null-as-name", "{null:1}", SYNTAX, 1, 2 },
  { "value-as-name", "{[]:1}", SYNTAX, 1, 2 },
  { "wrong-end-of-array", "[1}", SYNTAX, 1, 3 },
  { "wrong-end-of-object", "{\"a\":1]", SYNTAX, 1, 7 },
  { "end-without-begin", "]", SYNTAX, 1, 1 },
  { "wrong-end-of-empty-array", "[}", SYNTAX, 1, 2 },
  { "wrong-end-of-empty-object", "{]", SYNTAX, 1, 2 },
  { "open-array", "[1", SYNTAX, 1, 3 },
  { "open-array-after-comma", "[1,", SYNTAX, 1, 4 },
  { "open-object", "{", SYNTAX, 1, 2 },
  { "open-object-after-name", "{\"a\"", SYNTAX, 1, 5 },
  { "open-object-after-colon", "{\"a\":", SYNTAX, 1, 6 },
  { "open-object-after-comma", "{\"a\":1,", SYNTAX, 1, 8 },
  { "open-text", "[\"fern", SYNTAX, 1, 2 },
  { "open-text-after-backslash", "[\"fern\\", SYNTAX, 1, 7 },
  { "open-text-in-escape", "[\"\\u00", SYNTAX, 1, 3 },
  { "quotation-mark-alone", "\"", SYNTAX, 1, 1 },
  { "block-comment", "[1, /* two */ 2]", SYNTAX, 1, 5 },
  { "line-comment", "// panel\n{}", SYNTAX, 1, 1 },
  { "comment-at-the-end", "{} // panel", SYNTAX, 1, 4 },
  { "comment-before-name", "{ /**/ \"a\":1}", SYNTAX, 1, 3 },
  { "comment-before-comma", "[1 # one\n]", SYNTAX, 1, 4 },
  { "single-quotes", "['fern']", SYNTAX, 1, 2 },
  { "single-quotes-for-name", "{'a':1}", SYNTAX, 1, 2 },
  { "assignment", "var x = {};", SYNTAX, 1, 1 },
  { "leading-zero", "[012]", SYNTAX, 1, 2 },
  { "leading-zero-after-minus", "[-01]", SYNTAX, 1, 3 },
  { "two-zeros", "[00]", SYNTAX, 1, 2 },
  { "leading-zero-before-point", "[00.5]", SYNTAX, 1, 2 },
  { "plus", "[+1]", SYNTAX, 1, 2 },
  { "no-digit-before-point", "[.5]", SYNTAX, 1, 2 },
  { "no-digit-before-point-after-minus", "[-.5]", SYNTAX, 1, 3 },
  { "no-digit-after-point", "[5.]", SYNTAX, 1, 4 },
  { "no-digit-between-point-and-exponent", "[5.e1]", SYNTAX, 1, 4 },
  { "no-digit-in-exponent", "[5e]", SYNTAX, 1, 4 },
  { "no-digit-after-sign-of-exponent", "[5e+]", SYNTAX, 1, 5 },
  { "point-in-exponent", "[5e1.5]", SYNTAX, 1, 5 },
  { "two-points", "[1.2.3]", SYNTAX, 1, 5 },
  { "two-minuses", "[--1]", SYNTAX, 1, 3 },
  { "minus-alone", "[-]", SYNTAX, 1, 3 },
  { "minus-at-the-end", "-", SYNTAX, 1, 2 },
  { "space-after-minus", "[- 1]", SYNTAX, 1, 3 },
  { "decimal-comma-as-number", "{\"a\":1,5}", SYNTAX, 1, 8 },
  { "sum", "[1+2]", SYNTAX, 1, 3 },
  { "digits-of-another-script", "[\xd9\xa1]", SYNTAX, 1, 2 },
  { "hexadecimal", "[0x1F]", SYNTAX, 1, 3 },
  { "grouped-digits", "[1_000]", SYNTAX, 1, 3 },
  { "not-a-number", "[NaN]", SYNTAX, 1, 2 },
  { "infinity", "[Infinity]", SYNTAX, 1, 2 },
  { "minus-infinity", "[-Infinity]", SYNTAX, 1, 3 },
  { "word-in-capitals", "[True]", SYNTAX, 1, 2 },
  { "word-too-short", "[tru]", SYNTAX, 1, 2 },
  { "word-cut-off", "nul", SYNTAX, 1, 1 },
  { "word-too-long", "[nullx]", SYNTAX, 1, 6 },
  { "unknown-word", "[undefined]", SYNTAX, 1, 2 },
  { "line-break-in-text", "[\"a\nb\"]", SYNTAX, 1, 4 },
  { "tab-in-text", "[\"\t\"]", SYNTAX, 1, 3 },
  { "control-in-text", "[\"\x1f\"]", SYNTAX, 1, 3 },
  { "control-in-name", "{\"\x01\":1}", SYNTAX, 1, 3 },
  { "no-break-space", "[\xc2\xa0 1]", SYNTAX, 1, 2 },
  { "form-feed-as-space", "[\f1]", SYNTAX, 1, 2 },
  { "unknown-escape", "[\"\\q\"]", SYNTAX, 1, 3 },
  { "escape-of-single-quote", "[\"\\'\"]", SYNTAX, 1, 3 },
  { "escape-of-line-break", "[\"\\\n\"]", SYNTAX, 1, 3 },
  { "escape-by-hexadecimal", "[\"\\x41\"]", SYNTAX, 1, 3 },
  { "capital-u", "[\"\\U0041\"]", SYNTAX, 1, 3 },
  { "short-unicode-escape", "[\"\\u041\"]", SYNTAX, 1, 3 },
  { "bad-digit-in-unicode-escape", "[\"\\u00g1\"]", SYNTAX, 1, 3 },
  { "sign-in-unicode-escape", "[\"\\u+041\"]", SYNTAX, 1, 3 },
  { "high-half-alone", "[\"\\ud83c\"]", VALUE, 1, 3 },
  { "first-high-half-alone", "[\"\\ud800\"]", VALUE, 1, 3 },
  { "last-high-half-alone", "[\"\\udbff\"]", VALUE, 1, 3 },
  { "first-low-half-alone", "[\"\\udc00\"]", VALUE, 1, 3 },
  { "high-half-before-letter", "[\"\\ud83cx\"]", VALUE, 1, 3 },
  { "high-half-before-other-escape", "[\"\\ud83c\\n\"]", VALUE, 1, 3 },
  { "high-half-before-other-character", "[\"\\ud83c\\u0041\"]", VALUE, 1, 3 },
  { "two-high-halves", "[\"\\ud83c\\ud83c\"]", VALUE, 1, 3 },
  { "low-half-alone", "[\"a\\udf3c\"]", VALUE, 1, 4 },
  { "reversed-pair", "[\"\\udf3c\\ud83c\"]", VALUE, 1, 3 },
  { "half-in-name", "{\"\\udfff\":1}", VALUE, 1, 3 },
  { "half-after-pair", "[\"\\ud83c\\udf3c\\udf3c\"]", VALUE, 1, 15 },
  { "zero-character", "[\"a\\u0000b\"]", VALUE, 1, 4 },
  { "zero-character-in-name", "{\"\\u0000\":1}", VALUE, 1, 3 },
  { "name-twice", "{\"a\":1,\"a\":2}", VALUE, 1, 8 },
  { "name-twice-apart", "{\"a\":1,\"b\":[{}],\"c\":{\"a\":3},\"a\":2}", VALUE, 1, 29 },
  { "name-twice-escaped", "{\"a\":1,\"\\u0061\":2}", VALUE, 1, 8 },
  { "name-twice-as-pair", "{\"\\ud83c\\udf3c\":1,\n\"🌼\":2}", VALUE, 2, 1 },
  { "empty-name-twice", "{\"\":1,\"\":2}", VALUE, 1, 7 },
  { "long-name-twice", "{\"walled-garden\":1,\"b\":2,\"walled-garden\":1}", VALUE, 1, 26 },
  { "name-twice-inside", "[{\"b\":{\"a\":1,\"a\":2}}]", VALUE, 1, 14 },
  { "name-thrice", "{\"b\":0,\"a\":1,\"b\":2,\"a\":3,\"b\":4}", VALUE, 1, 14 },
  { "whole-too-large", "[9223372036854775808]", VALUE, 1, 2 },
  { "whole-too-small", "[-9223372036854775809]", VALUE, 1, 2 },
  { "whole-of-20-digits", "[10000000000000000000]", VALUE, 1, 2 },
  { "whole-of-23-digits", "[1,\n 99999999999999999999999]", VALUE, 2, 2 },
  { "infinite", "[1e400]", VALUE, 1, 2 },
  { "minus-infinite", "[-1e400]", VALUE, 1, 2 },
  { "just-infinite", "[1.7976931348623159e308]", VALUE, 1, 2 },
  { "large-exponent", "[1e99999999999999999999]", VALUE, 1, 2 },
  { "number-at-the-very-end", "1e400", VALUE, 1, 1 },
  { "column-counts-characters", "[\"é€🌼\" 1]", SYNTAX, 1, 8 },
  { "lines-of-one-byte", "[\n1,\n\n2 x]", SYNTAX, 4, 3 },
  { "lines-of-two-bytes", "[\r\n1,\r\n2 x]", SYNTAX, 3, 3 },
  { "lines-of-carriage-returns", "[\r1,\r2 x]", SYNTAX, 3, 3 },
};

/* A copy of exactly that many bytes, so that a read past its end is noticed. */
static gboolean
scan_copy (const char *text,
           gsize       length,
           GError    **error)
{
  g_autofree char *copy = g_memdup2 (text, length);

  return pp_json_scan (copy, length, error);
}

static void
test_good (gconstpointer data)
{
  const GoodRow *row = data;
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_autoptr (GError) error = NULL;

  g_assert_true (scan_copy (row->text, strlen (row->text), &error));
  g_assert_no_error (error);
  g_assert_true (json_parser_load_from_data (parser, row->text, -1, &error));
  g_assert_no_error (error);
}

static void
test_bad (gconstpointer data)
{
  const BadRow *row = data;
  g_autoptr (GError) error = NULL;
  guint line = 0, column = 0;

  g_assert_false (scan_copy (row->text, strlen (row->text), &error));
  g_assert_error (error, PP_FILE_ERROR, row->code);
  g_test_message ("%s", error->message);
  g_assert_cmpint (sscanf (error->message, "Line %u, column %u: ", &line, &column), ==,
                   row->line > 0 ? 2 : 0);
  g_assert_cmpuint (line, ==, row->line);
  g_assert_cmpuint (column, ==, row->column);
  g_assert_true (g_str_has_suffix (error->message, "."));
  g_assert_null (strchr (error->message, '\n'));
}

typedef struct
{
  const char *name;
  const char *text;
  const char *sentence;
} SentenceRow;

/* What the maker reads where the reason is not the one that would come up anyway. */
static const SentenceRow sentence_rows[] = {
  { "empty", "", "The file is empty." },
  { "mark", "\xef\xbb\xbf{}",
    "Line 1, column 1: a byte order mark stands before the text: save it without." },
  { "cut-off", "{\"a\":[1,",
    "Line 1, column 9: the file ends too early, so a part of it is missing." },
  { "comma", "[1\n 2]",
    "Line 2, column 2: a comma is missing before this, or it does not belong here." },
  { "comment", "[ // one\n]", "Line 1, column 3: a comment stands here, and there can be none." },
  { "quotes", "['a']", "Line 1, column 2: a text must stand in double quotation marks." },
  { "bracket", "{\"a\":1]", "Line 1, column 7: a ] stands where a } is due." },
  { "line-break", "[\"a\n\"]",
    "Line 1, column 4: the line ends inside a text in quotation marks." },
  { "number", "[.5]", "Line 1, column 2: a number must begin with a digit or a minus." },
  { "twice", "{\"x\\n\":1,\"x\\n\":2}",
    "Line 1, column 10: the name “x\xef\xbf\xbd” stands twice in one object." },
};

static void
test_sentence (gconstpointer data)
{
  const SentenceRow *row = data;
  g_autoptr (GError) error = NULL;

  g_assert_false (scan_copy (row->text, strlen (row->text), &error));
  g_assert_cmpstr (error->message, ==, row->sentence);
}

/* Each text that is JSON stops being it when it is cut anywhere: it must be refused, or be a
 * shorter number. Also shows that nothing is read past the end. */
static void
test_cut_off (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (good_rows); i++)
    {
      g_autofree char *text = g_strstrip (g_strdup (good_rows[i].text));

      for (gsize n = 0; n < strlen (text); n++)
        if (!g_ascii_isdigit (text[0]))
          g_assert_false (scan_copy (text, n, NULL));
    }
}

static void
test_zero_byte (void)
{
  static const char *const texts[] = { "[1\0]", "[\"\0\"]", "\0{}", "{}\0", "{\"\0\":1}" };
  static const gsize lengths[] = { 4, 5, 3, 3, 7 };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_false (scan_copy (texts[i], lengths[i], &error));
      g_assert_error (error, PP_FILE_ERROR, PP_FILE_ERROR_SYNTAX);
    }
}

static char *
repeat (const char *open,
        const char *middle,
        const char *close,
        guint       n)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < n; i++)
    g_string_append (text, open);
  g_string_append (text, middle);
  for (guint i = 0; i < n; i++)
    g_string_append (text, close);
  return g_string_free (text, FALSE);
}

typedef struct
{
  const char *name, *open, *middle, *close;
  guint n;
  guint column; /* 0: passes */
} DepthRow;

static const DepthRow depth_rows[] = {
  { "arrays-64", "[", "", "]", 64, 0 },
  { "arrays-65", "[", "", "]", 65, 65 },
  { "objects-64", "{\"a\":", "1", "}", 64, 0 },
  { "objects-65", "{\"a\":", "1", "}", 65, 64 * 5 + 1 },
  { "mixed-64", "[{\"a\":", "1", "}]", 32, 0 },
  { "mixed-66", "[{\"a\":", "1", "}]", 33, 32 * 6 + 1 },
  { "arrays-million", "[", "", "", 1000000, 65 },
  { "objects-million", "{\"a\":", "", "", 1000000, 64 * 5 + 1 },
};

static void
test_depth (gconstpointer data)
{
  const DepthRow *row = data;
  g_autofree char *text = repeat (row->open, row->middle, row->close, row->n);
  g_autofree char *place = g_strdup_printf ("Line 1, column %u: ", row->column);
  g_autoptr (GError) error = NULL;

  if (row->column == 0)
    {
      g_assert_true (scan_copy (text, strlen (text), &error));
      return;
    }
  g_assert_false (scan_copy (text, strlen (text), &error));
  g_assert_error (error, PP_FILE_ERROR, PP_FILE_ERROR_LIMIT);
  g_assert_true (g_str_has_prefix (error->message, place));
}

/* Many digits before a point hide from a look at the exponent alone. */
static void
test_long_numbers (void)
{
  g_autofree char *zeros = g_strnfill (400, '0');
  g_autofree char *large = g_strdup_printf ("[1%s.5]", zeros);
  g_autofree char *small = g_strdup_printf ("[0.%s1, 1%.300s.5, 1%se-400]", zeros, zeros, zeros);
  g_autoptr (GError) error = NULL;

  g_assert_true (scan_copy (small, strlen (small), NULL));
  g_assert_false (scan_copy (large, strlen (large), &error));
  g_assert_error (error, PP_FILE_ERROR, PP_FILE_ERROR_VALUE);
}

/* Depth is what is open at a time, not what has been opened. */
static void
test_many_beside (void)
{
  g_autofree char *inside = repeat ("[{}],", "1", "", 1000);
  g_autofree char *text = g_strdup_printf ("[%s]", inside);

  g_assert_true (scan_copy (text, strlen (text), NULL));
}

static void
test_size (void)
{
  g_autofree char *text = g_malloc (PP_JSON_MAX_BYTES + 1);
  g_autoptr (GError) error = NULL;

  memset (text, ' ', PP_JSON_MAX_BYTES + 1);
  text[0] = '1';
  g_assert_true (pp_json_scan (text, PP_JSON_MAX_BYTES, &error));
  g_assert_no_error (error);
  g_assert_false (pp_json_scan (text, PP_JSON_MAX_BYTES + 1, &error));
  g_assert_error (error, PP_FILE_ERROR, PP_FILE_ERROR_LIMIT);
}

/* A million names, then the first one again: found, and before anybody tires of waiting. */
static void
test_many_names (void)
{
  g_autoptr (GString) text = g_string_new ("{");
  g_autoptr (GError) error = NULL;
  gint64 start = g_get_monotonic_time ();

  for (guint i = 0; i < 1000000; i++)
    g_string_append_printf (text, "\"sedge-%u\":%u,\n", i, i);
  g_string_append (text, "\"fern\":1}");
  g_assert_true (scan_copy (text->str, text->len, &error));
  g_assert_no_error (error);
  g_string_truncate (text, text->len - 1);
  g_string_append (text, ",\"sedge-0\":1}");
  g_assert_false (scan_copy (text->str, text->len, &error));
  g_assert_error (error, PP_FILE_ERROR, PP_FILE_ERROR_VALUE);
  g_assert_true (g_str_has_prefix (error->message, "Line 1000001, column 10: "));
  g_assert_nonnull (strstr (error->message, "“sedge-0”"));
  g_assert_cmpint (g_get_monotonic_time () - start, <, 60 * G_TIME_SPAN_SECOND);
}

/* Names of a megabyte that differ in the last letter only; the sentence stays short. */
static void
test_long_names (void)
{
  const guint long_name = 1000000;
  g_autofree char *letters = g_strnfill (long_name, 'm');
  g_autoptr (GString) text = g_string_new ("{");
  g_autoptr (GError) error = NULL;

  for (char c = 'a'; c <= 'z'; c++)
    g_string_append_printf (text, "\"%s%c\":1,", letters, c);
  g_string_append_printf (text, "\"%s\":1}", letters);
  g_assert_true (scan_copy (text->str, text->len, &error));
  g_string_truncate (text, text->len - 1);
  g_string_append_printf (text, ",\"%sq\":1}", letters);
  g_assert_false (scan_copy (text->str, text->len, &error));
  g_assert_error (error, PP_FILE_ERROR, PP_FILE_ERROR_VALUE);
  g_assert_cmpuint (strlen (error->message), <, 200);
}

/* What the scanner lets through is read by json-glib as it was meant. */
static void
test_meaning (void)
{
  static const char text[] = "[-9223372036854775808, 9223372036854775807,"
                             " \"\\ud83c\\udf3c\\u0001\","
                             " 1E5, 0e0, 1.7976931348623157e308, 1e+22, 1e-05]";
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonArray *array;

  g_assert_true (scan_copy (text, strlen (text), NULL));
  g_assert_true (json_parser_load_from_data (parser, text, -1, NULL));
  array = json_node_get_array (json_parser_get_root (parser));
  g_assert_cmpint (json_array_get_int_element (array, 0), ==, G_MININT64);
  g_assert_cmpint (json_array_get_int_element (array, 1), ==, G_MAXINT64);
  g_assert_cmpstr (json_array_get_string_element (array, 2), ==, "🌼\001");
  g_assert_cmpfloat (json_array_get_double_element (array, 3), ==, 100000);
  g_assert_cmpfloat (json_array_get_double_element (array, 4), ==, 0);
  g_assert_cmpfloat (json_array_get_double_element (array, 5), ==, G_MAXDOUBLE);
  g_assert_cmpfloat (json_array_get_double_element (array, 6), ==, 1e22);
  g_assert_cmpfloat (json_array_get_double_element (array, 7), ==, 0.00001);
}

static void
add_row (const char    *group,
         const char    *name,
         gconstpointer  row,
         GTestDataFunc  test)
{
  g_autofree char *path = g_strdup_printf ("/json-scan/%s/%s", group, name);

  g_test_add_data_func (path, row, test);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (good_rows); i++)
    add_row ("good", good_rows[i].name, &good_rows[i], test_good);
  for (guint i = 0; i < G_N_ELEMENTS (bad_rows); i++)
    add_row ("bad", bad_rows[i].name, &bad_rows[i], test_bad);
  for (guint i = 0; i < G_N_ELEMENTS (depth_rows); i++)
    add_row ("depth", depth_rows[i].name, &depth_rows[i], test_depth);
  for (guint i = 0; i < G_N_ELEMENTS (sentence_rows); i++)
    add_row ("sentence", sentence_rows[i].name, &sentence_rows[i], test_sentence);
  g_test_add_func ("/json-scan/long-numbers", test_long_numbers);
  g_test_add_func ("/json-scan/cut-off", test_cut_off);
  g_test_add_func ("/json-scan/zero-byte", test_zero_byte);
  g_test_add_func ("/json-scan/many-beside", test_many_beside);
  g_test_add_func ("/json-scan/size", test_size);
  g_test_add_func ("/json-scan/many-names", test_many_names);
  g_test_add_func ("/json-scan/long-names", test_long_names);
  g_test_add_func ("/json-scan/meaning", test_meaning);
  return g_test_run ();
}
