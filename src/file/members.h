/* members.h: the members of a JSON object, by name and type, with the place in every complaint.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Reading is written straight down: a reader keeps the first error, after which every call does
 * nothing, and who reads asks once at the end. Each name asked for is taken; what is left over
 * are the members the program does not know, kept as text.
 *
 * A value is left as it was where the member is not there, so defaults are set beforehand. Null is
 * taken by the ..._or_null() calls alone, as NAN or NULL, and by pp_members_enter() where an object
 * may be null. Strings are borrowed from the JSON tree.
 */
#pragma once

#include "panel/outline.h"

#include <json-glib/json-glib.h>

G_BEGIN_DECLS

/* Holds the first error (PP_FILE_ERROR). */
typedef struct
{
  GError *error;
} PpReader;

typedef struct
{
  PpReader   *reader;
  JsonObject *object; /* NULL where there was none, or an error before */
  char       *path;   /* "tray[2].form"; "" for the whole file */
  GHashTable *taken;
} PpMembers;

typedef enum
{
  PP_MAY_LACK,
  PP_MUST_HAVE,
  PP_MAY_BE_NULL, /* or lack; of pp_members_enter() */
} PpNeed;

/* The members of `node`, which must be an object; `path` is copied. */
void       pp_members_init           (PpMembers  *self,
                                      PpReader   *reader,
                                      JsonNode   *node,
                                      const char *path);
void       pp_members_clear          (PpMembers  *self);
/* The members not taken, as JSON text without braces; NULL if none. (transfer full) */
char      *pp_members_dup_rest       (PpMembers  *self);
/* The path of a member, "tray[2].form.rise". (transfer full) */
char      *pp_members_dup_path       (PpMembers  *self,
                                      const char *name);

/* The node of a member, taken, or NULL. An error if it must be there and is not. */
JsonNode  *pp_members_get            (PpMembers  *self,
                                      const char *name,
                                      PpNeed      need);
void       pp_members_get_double     (PpMembers  *self,
                                      const char *name,
                                      PpNeed      need,
                                      double     *value);
void       pp_members_get_double_or_null (PpMembers *self,
                                      const char *name,
                                      double     *value);
void       pp_members_get_count      (PpMembers  *self,
                                      const char *name,
                                      guint      *value);
void       pp_members_get_boolean    (PpMembers  *self,
                                      const char *name,
                                      gboolean   *value);
void       pp_members_get_string     (PpMembers  *self,
                                      const char *name,
                                      PpNeed      need,
                                      const char **value);
void       pp_members_get_string_or_null (PpMembers *self,
                                      const char *name,
                                      const char **value);
/* A name out of a list, as `from_name` knows it; `from_name` writes an int-sized enum. */
typedef gboolean (*PpFromName)       (const char *name,
                                      int        *value);
void       pp_members_get_name       (PpMembers  *self,
                                      const char *name,
                                      PpNeed      need,
                                      PpFromName  from_name,
                                      int        *value);
/* The array of a member, or NULL. */
JsonArray *pp_members_get_array      (PpMembers  *self,
                                      const char *name,
                                      PpNeed      need);
/* Starts `child` on the object of a member: FALSE where it is not there or null (an error, if it
 * must be there); then `child` needs no clearing. */
gboolean   pp_members_enter          (PpMembers  *self,
                                      const char *name,
                                      PpNeed      need,
                                      PpMembers  *child);
/* A GeoJSON Polygon that crosses nowhere. (transfer full) or NULL. */
PpOutline *pp_members_get_outline    (PpMembers  *self,
                                      const char *name,
                                      PpNeed      need);
/* An array of strings, ended by NULL: (transfer container), never NULL. */
const char **pp_members_get_strings  (PpMembers  *self,
                                      const char *name,
                                      PpNeed      need);

gboolean   pp_json_is_number         (JsonNode   *node);

gboolean   pp_reader_failed          (PpReader   *self);
/* Keeps a complaint about a place, if it is the first. */
void       pp_reader_complain        (PpReader   *self,
                                      int         code,
                                      const char *path,
                                      const char *format,
                                      ...) G_GNUC_PRINTF (4, 5);
/* Takes an error of panel/ (whose message begins with a member's path) about the object at
 * `path`; `error` NULL: nothing. */
void       pp_reader_take            (PpReader   *self,
                                      const char *path,
                                      GError     *error);

G_END_DECLS
