/* json-scan-names.c: no name may stand twice in one object.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The names of an object are sorted when it closes and neighbours compared. A hash table was
 * weighed and left: a hostile file can make its names collide, while sorting takes n log n for any
 * file. The first eight bytes stand in the record itself, so that most comparisons touch no text.
 */
#include "file/json-scan-private.h"

#include "panel/shown.h"

#include <string.h>

/* 32 bits are enough below PP_JSON_MAX_BYTES, and a decoded name is never longer than written. */
typedef struct
{
  guint64 beginning; /* big endian, zeros after a shorter name */
  guint32 start;     /* in letters */
  guint32 length;
  guint32 at; /* of its quotation mark in the text */
} Name;

GArray *
pp_json_scan_new_names (void)
{
  return g_array_new (FALSE, FALSE, sizeof (Name));
}

gboolean
pp_json_scan_name (PpJsonScan *scan)
{
  Name name = { .start = scan->letters->len, .at = scan->at };

  if (!pp_json_scan_string (scan, scan->letters))
    return FALSE;
  name.length = scan->letters->len - name.start;
  memcpy (&name.beginning, scan->letters->str + name.start,
          MIN (name.length, sizeof name.beginning));
  name.beginning = GUINT64_FROM_BE (name.beginning);
  g_array_append_val (scan->names, name);
  return TRUE;
}

static int
compare_letters (const Name *a,
                 const Name *b,
                 const char *letters)
{
  if (a->beginning != b->beginning)
    return a->beginning < b->beginning ? -1 : 1;
  if (a->length != b->length)
    return a->length < b->length ? -1 : 1;
  return memcmp (letters + a->start, letters + b->start, a->length);
}

static int
compare_names (gconstpointer a,
               gconstpointer b,
               gpointer      letters)
{
  const Name *p = a, *q = b;
  int order = compare_letters (p, q, letters);

  return order != 0 ? order : p->at < q->at ? -1 : p->at > q->at;
}

/* Of all names that stand for the second time, the one that comes first; NULL if none does. */
static const Name *
find_repeated (Name       *names,
               guint       n,
               const char *letters)
{
  const Name *first = NULL;

  for (guint i = 1; i < n; i++)
    if (compare_letters (&names[i - 1], &names[i], letters) == 0
        && (first == NULL || names[i].at < first->at))
      first = &names[i];
  return first;
}

static gboolean
refuse_repeated (PpJsonScan *scan,
                 const Name *name)
{
  g_autofree char *whole = g_strndup (scan->letters->str + name->start, name->length);
  g_autofree char *shown = pp_shown (whole);
  /* Translators: %s is the name of a value in a file. */
  g_autofree char *reason = g_strdup_printf (_("the name “%s” stands twice in one object."),
                                             shown);

  return pp_json_scan_refuse (scan, name->at, PP_FILE_ERROR_VALUE, reason);
}

gboolean
pp_json_scan_end_names (PpJsonScan *scan)
{
  const PpJsonLevel *level = &scan->levels[scan->depth - 1];
  guint n = scan->names->len - level->first_name;

  if (n > 1)
    {
      Name *names = &g_array_index (scan->names, Name, level->first_name);
      const Name *repeated;

      g_qsort_with_data (names, n, sizeof *names, compare_names, scan->letters->str);
      repeated = find_repeated (names, n, scan->letters->str);
      if (repeated != NULL)
        return refuse_repeated (scan, repeated);
    }
  g_array_set_size (scan->names, level->first_name);
  g_string_truncate (scan->letters, level->first_character);
  return TRUE;
}
