/* json-write.h: JSON written to the letter.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * json-glib writes 1e22 as "1e+22.0" and not-a-number as "nan.0", which nothing reads. A writer
 * of our own takes values one by one, in the order of the calls:
 *
 *   g_autoptr (PpJsonWriter) w = pp_json_writer_new ();
 *
 *   pp_json_write_begin_object (w, NULL);
 *   pp_json_write_number (w, "width", 300);
 *   pp_json_write_begin_array (w, "ratio");
 *   pp_json_write_number (w, NULL, 1);
 *   pp_json_write_end_array (w);
 *   pp_json_write_end_object (w);
 *   text = pp_json_writer_finish (w);
 *
 * The name goes with the value so that neither can be forgotten: inside an object name is
 * required, elsewhere it is NULL. A call that breaks the rules below is a bug of the caller; it
 * is reported, and then there is no text in the end, so that nobody saves half of what he has.
 */
#pragma once

#include "file/json-append.h"

G_BEGIN_DECLS

typedef struct _PpJsonWriter PpJsonWriter;

PpJsonWriter *pp_json_writer_new (void);
void pp_json_writer_free (PpJsonWriter *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PpJsonWriter, pp_json_writer_free)

/* name, string: UTF-8. Name is (nullable) as told above. */
void pp_json_write_begin_object (PpJsonWriter *self,
                                 const char   *name);
void pp_json_write_end_object (PpJsonWriter *self);
void pp_json_write_begin_array (PpJsonWriter *self,
                                const char   *name);
void pp_json_write_end_array (PpJsonWriter *self);
void pp_json_write_string (PpJsonWriter *self,
                           const char   *name,
                           const char   *string);

/* number: finite. */
void pp_json_write_number (PpJsonWriter *self,
                           const char   *name,
                           double        number);

/* All 64 bits are kept. */
void pp_json_write_integer (PpJsonWriter *self,
                            const char   *name,
                            gint64        integer);
void pp_json_write_boolean (PpJsonWriter *self,
                            const char   *name,
                            gboolean      boolean);
void pp_json_write_null (PpJsonWriter *self,
                         const char   *name);

/* members: (nullable) members of the object that is open, as '"a": 1, "b": []', which pp_json_scan
 * would pass inside braces; none of their names may be written besides. */
void pp_json_write_members (PpJsonWriter *self,
                            const char   *members);

/* The text, laid out by pp_json_layout; the writer is empty again. Everything begun must have been
 * ended. NULL where a call broke the rules. (transfer full) */
GString *pp_json_writer_finish (PpJsonWriter *self);

/* Whether there is a text to save. Errors: PP_FILE_ERROR_VALUE. */
gboolean pp_json_was_written (const GString *text,
                              GError       **error);

G_END_DECLS
