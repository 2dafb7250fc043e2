/* json-scan-private.h: the place in the text and the parts of the scanner that share it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "file/file-error.h"
#include "file/json-scan.h"
#include "panel/i18n.h"

G_BEGIN_DECLS

typedef struct
{
  gboolean is_object;
  guint first_name;      /* in names, of this object */
  gsize first_character; /* in letters, likewise */
} PpJsonLevel;

typedef enum
{
  PP_JSON_EXPECT_VALUE,
  PP_JSON_EXPECT_FIRST_VALUE, /* or the end of the array */
  PP_JSON_EXPECT_NAME,
  PP_JSON_EXPECT_FIRST_NAME, /* or the end of the object */
  PP_JSON_EXPECT_COMMA,      /* or the end of what is open */
  PP_JSON_EXPECT_END,
} PpJsonExpect;

/* Names of the objects that are open stand one after the other; those of an object are dropped
 * when it closes. */
typedef struct
{
  const char *text; /* valid UTF-8 without zero bytes */
  gsize length;
  gsize at;
  PpJsonExpect expect;
  guint depth;
  PpJsonLevel levels[PP_JSON_MAX_DEPTH];
  GArray *names;
  GString *letters; /* the names, decoded, without anything between them */
  GError **error;
} PpJsonScan;

/* The byte that many places on, 0 past the end. */
static inline char
pp_json_scan_peek (const PpJsonScan *scan,
                   gsize             ahead)
{
  return scan->at + ahead < scan->length ? scan->text[scan->at + ahead] : '\0';
}

/* Sets the error to "Line, column: reason" for the byte at. Always FALSE. */
gboolean pp_json_scan_refuse (PpJsonScan *scan,
                              gsize       at,
                              PpFileError code,
                              const char *reason);

/* Each goes over one token from its first byte (a quotation mark; a digit or minus).
 * decoded: (nullable): what the text says is appended to it. */
gboolean pp_json_scan_string (PpJsonScan *scan,
                              GString    *decoded);
gboolean pp_json_scan_number (PpJsonScan *scan);

/* Scans a name and remembers it for the innermost object. */
gboolean pp_json_scan_name (PpJsonScan *scan);

/* Whether no name of the innermost object stands twice; forgets them. */
gboolean pp_json_scan_end_names (PpJsonScan *scan);

GArray *pp_json_scan_new_names (void);

G_END_DECLS
