/* json-write.c: what is written is JSON, reads back exactly and is laid out to be read.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The judge of reading back is json-glib, behind the scanner.
 */
#include "file/file-error.h"
#include "file/json-layout.h"
#include "file/json-scan.h"
#include "file/json-write.h"
#include "comma-locale.h"

#include <float.h>
#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

typedef struct
{
  const char *name;
  double number;
  const char *text;
} NumberRow;

/* Texts by the shortest decimal that rounds to the double. */
static const NumberRow number_rows[] = {
  { "zero", 0, "0" },
  { "minus-zero", -0.0, "0" },
  { "one", 1, "1" },
  { "minus-one", -1, "-1" },
  { "whole", 300, "300" },
  { "largest-plain", 999999999999999, "999999999999999" },
  { "smallest-with-exponent", 1e15, "1e+15" },
  { "whole-of-16-digits", 1234567890123456, "1234567890123456" },
  { "two-to-53", 9007199254740992, "9007199254740992" },
  { "large", 1e22, "1e+22" },
  { "tenth", 0.1, "0.1" },
  { "minus-half", -0.5, "-0.5" },
  { "expansion", 9.0e-6, "9e-06" },
  { "third", 1.0 / 3, "0.3333333333333333" },
  { "sum-of-tenths", 0.1 + 0.2, "0.30000000000000004" },
  { "pi", G_PI, "3.141592653589793" },
  { "greatest", DBL_MAX, "1.7976931348623157e+308" },
  { "least-normal", DBL_MIN, "2.2250738585072014e-308" },
};

static char *
number_to_text (double number)
{
  g_autoptr (GString) text = g_string_new (NULL);

  pp_json_append_number (text, number);
  return g_strdup (text->str);
}

static void
test_number (gconstpointer data)
{
  const NumberRow *row = data;
  g_autofree char *text = number_to_text (row->number);

  g_assert_cmpstr (text, ==, row->text);
  g_assert_cmpfloat (g_ascii_strtod (text, NULL), ==, row->number);
}

static double
random_double (GRand *random)
{
  union { guint64 bits; double number; } u;

  do
    u.bits = (guint64) g_rand_int (random) << 32 | g_rand_int (random);
  while (!isfinite (u.number));
  return u.number;
}

static GString *
write_doubles (const double *numbers,
               guint         n)
{
  g_autoptr (PpJsonWriter) writer = pp_json_writer_new ();

  pp_json_write_begin_array (writer, NULL);
  for (guint i = 0; i < n; i++)
    pp_json_write_number (writer, NULL, numbers[i]);
  pp_json_write_end_array (writer);
  return pp_json_writer_finish (writer);
}

/* Half of them have any bits at all, half are lengths in mm with some digits. */
static void
check_many_doubles (void)
{
  enum { N = 100000 };
  g_autofree double *numbers = g_new (double, N);
  g_autoptr (GRand) random = g_rand_new_with_seed (20260502);
  g_autoptr (GString) text = NULL;
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_autoptr (GError) error = NULL;
  JsonArray *array;

  for (guint i = 0; i < N; i++)
    numbers[i] = i % 2 == 0 ? random_double (random) : g_rand_double_range (random, -3000, 3000);
  text = write_doubles (numbers, N);
  g_assert_true (pp_json_scan (text->str, text->len, &error));
  g_assert_no_error (error);
  g_assert_true (json_parser_load_from_data (parser, text->str, text->len, &error));
  g_assert_no_error (error);
  array = json_node_get_array (json_parser_get_root (parser));
  g_assert_cmpuint (json_array_get_length (array), ==, N);
  for (guint i = 0; i < N; i++)
    g_assert_cmpfloat (json_array_get_double_element (array, i), ==, numbers[i]);
}

static void
test_many_doubles (void)
{
  check_many_doubles ();
}

static void
check_number_rows (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (number_rows); i++)
    test_number (&number_rows[i]);
}

static void
check_numbers (void)
{
  check_number_rows ();
  check_many_doubles ();
}

static void
test_comma_locale (void)
{
  comma_locale_run (check_numbers);
}

typedef struct
{
  const char *name;
  const char *string;
  const char *text;
} StringRow;

static const StringRow string_rows[] = {
  { "empty", "", "\"\"" },
  { "plain", "Flag iris", "\"Flag iris\"" },
  { "quotation-mark", "3\" across", "\"3\\\" across\"" },
  { "backslash", "a\\b\\", "\"a\\\\b\\\\\"" },
  { "slash", "</svg>", "\"</svg>\"" },
  { "short-escapes", "\b\f\n\r\t", "\"\\b\\f\\n\\r\\t\"" },
  { "other-controls", "\001\037", "\"\\u0001\\u001f\"" },
  { "delete", "\177", "\"\177\"" },
  { "letters", "é € 🌼", "\"é € 🌼\"" },
  { "line-separator", "\xe2\x80\xa8", "\"\xe2\x80\xa8\"" },
  { "brackets", "[{", "\"[{\"" },
};

static void
test_string (gconstpointer data)
{
  const StringRow *row = data;
  g_autoptr (GString) text = g_string_new (NULL);
  g_autoptr (JsonNode) node = NULL;
  g_autoptr (GError) error = NULL;

  pp_json_append_string (text, row->string);
  g_assert_cmpstr (text->str, ==, row->text);
  g_assert_true (pp_json_scan (text->str, text->len, &error));
  g_assert_no_error (error);
  node = json_from_string (text->str, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (json_node_get_string (node), ==, row->string);
}

static void
test_builder (void)
{
  g_autoptr (PpJsonWriter) writer = pp_json_writer_new ();
  g_autoptr (GString) text = NULL;

  pp_json_write_begin_object (writer, NULL);
  pp_json_write_string (writer, "title", "Towpath [");
  pp_json_write_begin_object (writer, "empty");
  pp_json_write_end_object (writer);
  pp_json_write_begin_array (writer, "none");
  pp_json_write_end_array (writer);
  pp_json_write_begin_array (writer, "holes");
  pp_json_write_begin_object (writer, NULL);
  pp_json_write_number (writer, "x", 90.5);
  pp_json_write_boolean (writer, "drilled", FALSE);
  pp_json_write_end_object (writer);
  pp_json_write_begin_object (writer, NULL);
  pp_json_write_null (writer, "a \"name\"");
  pp_json_write_integer (writer, "whole", G_MININT64);
  pp_json_write_end_object (writer);
  pp_json_write_end_array (writer);
  pp_json_write_begin_array (writer, "about");
  pp_json_write_string (writer, NULL, "p1");
  pp_json_write_boolean (writer, NULL, TRUE);
  pp_json_write_null (writer, NULL);
  pp_json_write_number (writer, NULL, -0.25);
  pp_json_write_end_array (writer);
  pp_json_write_members (writer, NULL);
  pp_json_write_members (writer, "");
  pp_json_write_members (writer, "\"kiln\": 7, \"shelf\":\"low\"");
  pp_json_write_end_object (writer);
  text = pp_json_writer_finish (writer);
  g_assert_cmpstr (text->str, ==,
                   "{\n"
                   "  \"title\": \"Towpath [\",\n"
                   "  \"empty\": {},\n"
                   "  \"none\": [],\n"
                   "  \"holes\": [\n"
                   "    {\n"
                   "      \"x\": 90.5,\n"
                   "      \"drilled\": false\n"
                   "    },\n"
                   "    {\n"
                   "      \"a \\\"name\\\"\": null,\n"
                   "      \"whole\": -9223372036854775808\n"
                   "    }\n"
                   "  ],\n"
                   "  \"about\": [\"p1\", true, null, -0.25],\n"
                   "  \"kiln\": 7,\n"
                   "  \"shelf\": \"low\"\n"
                   "}\n");
}

static void
test_members_first (void)
{
  g_autoptr (PpJsonWriter) writer = pp_json_writer_new ();
  g_autoptr (GString) text = NULL;

  pp_json_write_begin_object (writer, NULL);
  pp_json_write_members (writer, "\"kiln\":7");
  pp_json_write_number (writer, "x", 1);
  pp_json_write_end_object (writer);
  text = pp_json_writer_finish (writer);
  g_assert_cmpstr (text->str, ==, "{\n  \"kiln\": 7,\n  \"x\": 1\n}\n");
}

typedef struct
{
  const char *name;
  const char *json;
  const char *expected;
} LayoutRow;

#define TEN "1111111111, "
static const LayoutRow layout_rows[] = {
  { "scalar", " 17 ", "17\n" },
  { "empty-ones", "[ [ ] , { } ]", "[\n  [],\n  {}\n]\n" },
  { "numbers", "[1,2,[3,4]]", "[1, 2, [3, 4]]\n" },
  { "ring", "{\"c\":[[[0,0],[9,0],[9,9],[0,0]]]}",
    "{\n  \"c\": [[[0, 0], [9, 0], [9, 9], [0, 0]]]\n}\n" },
  { "text-with-signs", "[\"a,b:c]\",\"{ \\\" }\"]", "[\"a,b:c]\", \"{ \\\" }\"]\n" },
  { "object-deep-inside",
    "[[1,[{}]],[2]]", "[\n  [\n    1,\n    [\n      {}\n    ]\n  ],\n  [2]\n]\n" },
  { "object-in-text-only", "[[\"{\"]]", "[[\"{\"]]\n" },
  /* 1 + 8 * 12 + 2 + 1 = 100 columns, then one more */
  { "line-just-full", "[" TEN TEN TEN TEN TEN TEN TEN TEN "22]",
    "[" TEN TEN TEN TEN TEN TEN TEN TEN "22]\n" },
  { "line-one-too-long", "[" TEN TEN TEN TEN TEN TEN TEN TEN "222]",
    "[" TEN TEN TEN TEN TEN TEN TEN "1111111111,\n  222]\n" },
  /* 1 + 7 * 12 + 8 + 7 = 100 columns with the space inside the pair, then one more */
  { "pair-just-fits", "[" TEN TEN TEN TEN TEN TEN TEN "666666, [1,2]]",
    "[" TEN TEN TEN TEN TEN TEN TEN "666666, [1, 2]]\n" },
  { "pair-one-too-long", "[" TEN TEN TEN TEN TEN TEN TEN "7777777, [1,2]]",
    "[" TEN TEN TEN TEN TEN TEN TEN "7777777,\n  [1, 2]]\n" },
  { "pair-moves-whole", "[" TEN TEN TEN TEN TEN TEN TEN TEN "[1,2]]",
    "[" TEN TEN TEN TEN TEN TEN TEN "1111111111,\n  [1, 2]]\n" },
};

static void
test_layout (gconstpointer data)
{
  const LayoutRow *row = data;
  g_autoptr (GString) text = pp_json_layout (row->json);
  g_autoptr (GString) again = pp_json_layout (text->str);

  g_assert_cmpstr (text->str, ==, row->expected);
  g_assert_cmpstr (again->str, ==, row->expected);
  g_assert_cmpuint (text->len, ==, strlen (text->str));
}

/* A height field of 40 rows with 60 heights each, two levels down: no line is too long. */
static void
test_long_arrays (void)
{
  g_autoptr (PpJsonWriter) writer = pp_json_writer_new ();
  g_autoptr (GString) text = NULL;
  g_auto (GStrv) lines = NULL;

  pp_json_write_begin_object (writer, NULL);
  pp_json_write_begin_array (writer, "heights");
  for (guint i = 0; i < 40; i++)
    {
      pp_json_write_begin_array (writer, NULL);
      for (guint j = 0; j < 60; j++)
        pp_json_write_number (writer, NULL, sqrt (60 * i + j));
      pp_json_write_end_array (writer);
    }
  pp_json_write_end_array (writer);
  pp_json_write_end_object (writer);
  text = pp_json_writer_finish (writer);
  g_assert_true (pp_json_scan (text->str, text->len, NULL));
  lines = g_strsplit (text->str, "\n", -1);
  for (guint i = 0; lines[i] != NULL; i++)
    g_assert_cmpuint (strlen (lines[i]), <=, PP_JSON_LINE);
  g_assert_cmpuint (g_strv_length (lines), <, 40 * 60 / 3); /* and few lines are short */
}

/* Reading what was written and writing it again changes nothing, nor does the order. */
static void
test_node (void)
{
  static const char json[] = "{\"z\":[1,2.5,-3e-7,1e22,true,null,\"é\\n\\\"\"],\"a\":{\"b\":{}},"
                             "\"m\":9007199254740993,\"\":[],"
                             "\"n\":[[{\"x\":-9223372036854775808}]],"
                             "\"half\":0.5,\"f\":false}";
  g_autoptr (JsonNode) node = json_from_string (json, NULL);
  g_autoptr (JsonNode) again = NULL;
  g_autoptr (GString) compact = g_string_new (NULL);

  pp_json_append_node (compact, NULL);
  g_assert_cmpstr (compact->str, ==, "null");
  g_string_truncate (compact, 0);
  pp_json_append_node (compact, node);
  g_assert_true (pp_json_scan (compact->str, compact->len, NULL));
  again = json_from_string (compact->str, NULL);
  g_assert_true (json_node_equal (node, again));
  g_assert_cmpstr (compact->str, ==,
                   "{\"z\":[1,2.5,-3e-07,1e+22,true,null,\"é\\n\\\"\"],\"a\":{\"b\":{}},"
                   "\"m\":9007199254740993,\"\":[],\"n\":[[{\"x\":-9223372036854775808}]],"
                   "\"half\":0.5,\"f\":false}");
}

static void
test_once_more (void)
{
  g_autoptr (PpJsonWriter) writer = pp_json_writer_new ();
  g_autoptr (GString) text = NULL;
  g_autoptr (GString) again = NULL;

  pp_json_write_null (writer, NULL);
  text = pp_json_writer_finish (writer);
  g_assert_cmpstr (text->str, ==, "null\n");
  pp_json_write_boolean (writer, NULL, TRUE); /* the writer is empty again */
  again = pp_json_writer_finish (writer);
  g_assert_cmpstr (again->str, ==, "true\n");
}

/* Each of these is a bug of the caller: told, and there is no text to save; the next one is. */
static void
test_misuse (void)
{
  const char *const expected[] = { "*can_begin*", "*isfinite*", "*isfinite*", "*utf8*",
                                   "*can_begin*", "*is_in*",    "*can_begin*" };
  g_autoptr (PpJsonWriter) writer = pp_json_writer_new ();
  g_autoptr (GString) text = NULL;
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (expected); i++)
    g_test_expect_message (NULL, G_LOG_LEVEL_CRITICAL, expected[i]);
  pp_json_write_number (writer, "x", 1); /* a name outside an object */
  pp_json_write_begin_object (writer, NULL);
  pp_json_write_number (writer, "nan", (double) NAN);
  pp_json_write_number (writer, "infinite", HUGE_VAL);
  pp_json_write_string (writer, "bad", "\xff");
  pp_json_write_null (writer, NULL); /* no name inside one */
  pp_json_write_end_array (writer);
  pp_json_write_end_object (writer);
  pp_json_write_null (writer, NULL); /* a second value */
  g_test_assert_expected_messages ();
  g_assert_null (pp_json_writer_finish (writer));
  g_assert_false (pp_json_was_written (NULL, &error));
  g_assert_error (error, PP_FILE_ERROR, PP_FILE_ERROR_VALUE);
  pp_json_write_null (writer, NULL);
  text = pp_json_writer_finish (writer);
  g_assert_cmpstr (text->str, ==, "null\n");
}

static void
add_row (const char    *group,
         const char    *name,
         gconstpointer  row,
         GTestDataFunc  test)
{
  g_autofree char *path = g_strdup_printf ("/json-write/%s/%s", group, name);

  g_test_add_data_func (path, row, test);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (number_rows); i++)
    add_row ("number", number_rows[i].name, &number_rows[i], test_number);
  for (guint i = 0; i < G_N_ELEMENTS (string_rows); i++)
    add_row ("string", string_rows[i].name, &string_rows[i], test_string);
  for (guint i = 0; i < G_N_ELEMENTS (layout_rows); i++)
    add_row ("layout", layout_rows[i].name, &layout_rows[i], test_layout);
  g_test_add_func ("/json-write/many-doubles", test_many_doubles);
  g_test_add_func ("/json-write/comma-locale", test_comma_locale);
  g_test_add_func ("/json-write/builder", test_builder);
  g_test_add_func ("/json-write/members-first", test_members_first);
  g_test_add_func ("/json-write/long-arrays", test_long_arrays);
  g_test_add_func ("/json-write/node", test_node);
  g_test_add_func ("/json-write/once-more", test_once_more);
  g_test_add_func ("/json-write/misuse", test_misuse);
  return g_test_run ();
}
